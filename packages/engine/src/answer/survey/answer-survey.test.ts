import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { type ReadJob, readJob } from '../../job/index.ts';
import type { Answer, SurveyReport } from '../../result/index.ts';
import { surveySchema } from '../../result/index.ts';
import { answerJob } from '../job/answer-job.ts';
import { answerSurvey } from './answer-survey.ts';

let read: ReadJob;
let answer: Answer;

beforeAll(() => {
  const outcome = readJob(
    readFileSync(new URL('../../../../../examples/penstock-seam.yaml', import.meta.url), 'utf8'),
  );
  if (!outcome.ok) throw new Error('the example cannot be read');
  read = outcome.value;
  answer = answerJob({ job: read, version: '0' });
}, 60_000);

function surveyed(text: string, name = 'gauge.csv'): SurveyReport {
  const outcome = answerSurvey({
    files: [{ name, bytes: new TextEncoder().encode(text) }],
    job: { read, answer, knowledge: undefined },
    version: '0',
  });
  if (!outcome.ok) throw new Error(outcome.issues[0]?.message);
  return outcome.value;
}

function table(rows: readonly (readonly [number, number])[]): string {
  return ['station (m);depth (mm)', ...rows.map(([at, depth]) => `${at};${depth}`)].join('\n');
}

const GOOD = [0.3, 1, 1.7, 2.4, 3.1, 3.8, 4.5, 5.2, 5.8].map((at) => [at, 15] as const);

describe('a survey of a job', () => {
  it('holds where the gauge says so, and obeys its schema', () => {
    const report = surveyed(table(GOOD));
    expect(report.seam!.verdict).toBe('holds');
    expect(report.seam!.curve[0]!.at_mm).toBe(0);
    expect(report.seam!.curve.at(-1)!.at_mm).toBeCloseTo(6000, 6);
    expect(report.seam!.limits).toEqual({
      least_mm: expect.closeTo(12, 9),
      most_mm: expect.closeTo(18, 9),
      plate_left_least_mm: expect.closeTo(10, 9),
    });
    const near = report.seam!.curve.find(({ at_mm }) => Math.abs(at_mm - 2400) < 1)!;
    expect(near.depth_mm.p50).toBeCloseTo(15, 0);
    // plate left is the thickness less the depth, its ends the other way round
    expect(near.remaining_mm.p05 + near.depth_mm.p95).toBeCloseTo(1000 * read.job.plate.thickness, 6);
    expect(surveySchema.safeParse(JSON.parse(JSON.stringify(report))).success).toBe(true);
    expect(report.seam!.readings[0]!.depth_mm).toEqual({
      value: expect.closeTo(15, 9),
      u95: expect.closeTo(0.784, 9),
    });
  });

  it('fails where it is shallow, with what mends it, and says where to measure next', () => {
    const { seam } = surveyed(table([...GOOD, [2.35, 9], [2.45, 9.1], [2.5, 9]]));
    expect(seam!.verdict).toBe('fails');
    const bad = seam!.stretches.find(({ verdict }) => verdict === 'fails')!;
    expect(bad.from_mm).toBeLessThan(2450);
    expect(bad.to_mm).toBeGreaterThan(2350);
    expect(bad.miss).toBe('shallow');
    expect(seam!.recut[0]!.from_mm).toBe(bad.from_mm);
    expect(seam!.enough).toBe(seam!.measure_next.length === 0);
    expect(seam!.risk_unit).toBe(read.job.rates.currency);
  });

  it('sets aside what a wrong unit or place explains, says what it would be, and counts the rest alone', () => {
    const { seam } = surveyed(table([...GOOD, [4, 15 / 25.4], [4.2, 150], [4.3, 0.015], [9, 15]]));
    const aside = seam!.readings.filter(({ used }) => !used);
    expect(aside.map(({ why }) => why)).toEqual([
      'inch_for_mm',
      'slipped_decimal',
      'thousandth',
      'outside_seam',
    ]);
    for (const { would_be_mm, why } of aside)
      if (why !== 'outside_seam') expect(would_be_mm).toBeCloseTo(15, 6);
    expect(seam!.verdict).toBe('holds');
  });

  it('takes a place where nothing was cut for what it is', () => {
    const { seam } = surveyed(table([...GOOD, [4, 0]]));
    expect(seam!.verdict).toBe('fails');
    expect(seam!.readings.at(-1)!.used).toBe(true);
    const gap = seam!.stretches.find(({ verdict }) => verdict === 'fails')!;
    expect([gap.from_mm, gap.to_mm, gap.miss]).toEqual([
      expect.closeTo(3900, 6),
      expect.closeTo(4125, 6),
      'shallow',
    ]);
    expect(gap.chance_wrong_reject).toBeLessThan(1e-6);
    expect(seam!.stretches.filter(({ verdict }) => verdict === 'fails')).toHaveLength(1);
  });

  it('says so of a groove of another job', () => {
    const { seam } = surveyed(table(GOOD.map(([at]) => [at, 4.1] as const)));
    expect(seam!.verdict).toBe('fails');
    expect(seam!.remarks.join(' ')).toMatch(/whether they are of this groove/u);
  });

  it('tells without a reading what the plan alone predicts', () => {
    const outcome = answerSurvey({ files: [], job: { read, answer, knowledge: undefined }, version: '0' });
    if (!outcome.ok) throw new Error('it was refused');
    expect(outcome.value.seam!.remarks.join(' ')).toMatch(/Nothing was measured/u);
  });

  it('refuses a file that holds nothing of a groove, by its name', () => {
    const outcome = answerSurvey({
      files: [{ name: 'notes.txt', bytes: new TextEncoder().encode('hello there\nworld\n') }],
      version: '0',
    });
    expect(outcome.ok).toBe(false);
    if (!outcome.ok)
      expect(outcome.issues[0]).toMatchObject({
        code: 'SURVEY_NOT_READABLE',
        message: expect.stringMatching(/^notes\.txt: /u),
      });
  });
});
