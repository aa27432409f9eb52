import { readFileSync } from 'node:fs';
import { answerHazard, answerJob, readJob } from '@furrow/engine';
import { describe, expect, it } from 'vitest';
import { renderHazardText } from './render-hazard-text.ts';

const text = readFileSync(new URL('../../../../examples/penstock-seam.yaml', import.meta.url), 'utf8');
const read = readJob(text);
if (!read.ok) throw new Error('the demo job cannot be read');
const report = answerHazard(read.value, answerJob({ job: read.value, version: 'test' }));

describe('renderHazardText', () => {
  it('says first that nothing here permits work, and carries both lists in full', () => {
    const shown = renderHazardText(report, 'Job', 'metric');
    expect(shown.split('\n')[1]).toContain('Planning figures');
    const plain = shown.replace(/\s+/gu, ' ');
    for (const line of [...report.cautions, ...report.stop_work, report.defers])
      expect(plain).toContain(line);
  });

  it('tells each crew by both families, and every row with its wording', () => {
    const shown = renderHazardText(report, 'Job', 'metric');
    expect(shown.match(/5 dB family \(OSHA\)/gu)).toHaveLength(report.noise.length);
    expect(shown.match(/3 dB family \(NIOSH, EU\)/gu)).toHaveLength(report.noise.length);
    const plain = shown.replace(/\s+/gu, ' ');
    const rows = [...report.noise, ...report.sections].flatMap((part) => part.rows);
    for (const { rule, verdict } of rows) {
      expect(plain).toContain(rule);
      expect(plain).toContain(verdict);
    }
  });

  it('writes in the reader’s units', () => {
    expect(renderHazardText(report, 'Job', 'metric')).toContain('Zone all round: 10.67 m');
    expect(renderHazardText(report, 'Job', 'inch')).toContain('Zone all round: 35 ft');
  });

  it('writes no control characters of a title or a crew', () => {
    const noise = report.noise.map((crew) => ({ ...crew, name: 'Crew\u001b[31m' }));
    const shown = renderHazardText({ ...report, noise }, 'Job\u001b]0;x\u0007', 'metric');
    expect([...shown].some((sign) => sign < ' ' && sign !== '\n')).toBe(false);
  });
});
