import { answerJob, answerSurvey, type SurveyReport } from '@furrow/engine';
import { describe, expect, it } from 'vitest';
import { exampleJob } from '../sample-plan.test-data.ts';
import { renderSurveyText } from './render-survey-text.ts';

const read = exampleJob('penstock-seam');
const answer = answerJob({ job: read, version: '0.1.0' });

function surveyed(depths: Readonly<Record<string, number>>): SurveyReport {
  const rows = Object.entries(depths).map(([at, depth]) => `${at};${depth}`);
  const outcome = answerSurvey({
    files: [
      { name: 'gauge.csv', bytes: new TextEncoder().encode(['station (m);depth (mm)', ...rows].join('\n')) },
    ],
    job: { read, answer, knowledge: undefined },
    version: '0.1.0',
  });
  if (!outcome.ok) throw new Error(outcome.issues[0]?.message);
  return outcome.value;
}

const DOUBTED = surveyed({
  '0.3': 14.1,
  '0.9': 13.4,
  '1.5': 14.9,
  '2.1': 11.2,
  '2.7': 14.4,
  '4.2': 14,
  '5.4': 13.7,
});

describe('the text of a survey', () => {
  it.each(['metric', 'inch'] as const)(
    'begins with the verdict and stays within a hundred columns in %s',
    (units) => {
      const text = renderSurveyText(DOUBTED, units);
      expect(text.split('\n')[0]).toMatch(/^The groove is in doubt/u);
      expect(Math.max(...text.split('\n').map((line) => [...line].length))).toBeLessThanOrEqual(100);
      expect(text).not.toMatch(/NaN|undefined|Infinity/u);
    },
  );

  it('never tells that it is enough while a stretch is in doubt', () => {
    const settled = (report: SurveyReport, enough: boolean): SurveyReport => ({
      ...report,
      seam: { ...report.seam!, enough },
    });
    const text = renderSurveyText(settled(DOUBTED, true), 'metric').replace(/\s+/gu, ' ');
    expect(text).toContain('stays in doubt');
    expect(text).not.toContain('Enough:');
    const holds = { ...DOUBTED, seam: { ...DOUBTED.seam!, enough: true, stretches: [] } };
    expect(renderSurveyText(holds, 'metric')).toContain('Enough: no further reading');
  });

  it('tells width and plate left each by itself, in the units of the reader', () => {
    const text = renderSurveyText(DOUBTED, 'metric').replace(/\s+/gu, ' ');
    expect(text).toContain('Width wanted: 14.0 mm to 22.0 mm: holds over the whole seam, by the plan alone');
    expect(text).toContain('Plate left, at least 10.0 mm: ');
    expect(renderSurveyText(DOUBTED, 'inch').replace(/\s+/gu, ' ')).toContain(
      'Width wanted: 0.551 in to 0.866 in',
    );
  });
});
