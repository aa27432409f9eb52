import { describe, expect, test } from 'vitest';
import { exampleJob, sampleAnswer, samplePlan } from '../sample-plan.test-data.ts';
import { renderText } from './render-text.ts';

const read = exampleJob('penstock-seam');

describe('result as text', () => {
  const plan = samplePlan(read, { tracks: 1, layers: 2, gauge: true });
  const text = renderText(sampleAnswer(read, plan, ['Mind the jet.']), read, 'metric');

  test('tells settings, passes, readings, chances, margins, alternatives, cautions and defaults', () => {
    for (const part of [
      'PLAN: 2 layers of 1 track, gauge between layers',
      'Electrode            12.7 mm  (jointed)',
      'by gauge',
      'travel 640 mm/min',
      '- depth reached everywhere: 96 in 100',
      'tight',
      'Plans to choose from',
      '! Mind the jet.',
      'Floor width (groove.floor_width): 0 mm',
      `job revision ${read.revision.slice(0, 12)}, seed 1`,
      'the software never signs',
    ]) {
      expect(text).toContain(part);
    }
  });

  test('names each way in which a plan learns', () => {
    const told = (ways: typeof plan.ways): string =>
      /PLAN: .*/u.exec(renderText(sampleAnswer(read, { ...plan, ways }), read, 'metric'))?.[0] ?? '';
    expect(told(['trial'])).toMatch(/tracks?, trial first$/u);
    expect(told(['blind'])).toMatch(/, runs as set$/u);
    expect(told(['run_in', 'layers'])).toMatch(/, run-in first, gauge between layers$/u);
  });

  test('stays within a hundred columns', () => {
    for (const units of ['inch', 'metric'] as const) {
      const crowded = samplePlan(read, { tracks: 10, layers: 4, gauge: true, uneven: true });
      const lines = renderText(sampleAnswer(read, crowded, ['word '.repeat(60)]), read, units).split('\n');
      expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(100);
    }
  });

  test('lets no text of the job command the terminal', () => {
    const title = '\u001b[2J\u0007seam\r\n\u202eseven\u009b1m';
    const written = renderText(sampleAnswer(read, plan), { ...read, job: { ...read.job, title } }, 'inch');
    expect(written).not.toMatch(/(?!\n)[\p{Cc}\u202a-\u202e]/u);
    expect(written.split('\n')[0]).toBe('[2Jseam seven1m');
  });

  test('gives the refusal and its remedy, and no setting', () => {
    const refused = renderText(sampleAnswer(read, undefined), read, 'metric');
    expect(refused).toContain('NO PLAN');
    expect(refused).toMatch(/Shallower by at most +0\.00 mm +1\.0 mm +a depth that may fall short/u);
    expect(refused).not.toContain('Current ');
  });
});
