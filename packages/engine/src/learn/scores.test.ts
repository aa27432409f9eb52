import { describe, expect, it } from 'vitest';
import { normalProbability } from '../numeric/index.ts';
import { crpsOfMixture } from './crps.ts';
import { driftOf, type ScoredEntry, scoreEntries, shiftOf } from './scores.ts';
import { gaugedJobs, trueShop } from './shop.test-support.ts';

const entry = (id: string, z: number): ScoredEntry => ({
  id,
  date: '',
  predicted: [0, 0, 0],
  measured: 0,
  place: normalProbability(z),
  crps: 0,
});

describe('scoreEntries', () => {
  const jobs = gaugedJobs(trueShop(5, 1), 12, 8);
  const scores = scoreEntries('yard', jobs);

  it('predicts each entry from those before alone', () => {
    expect(scores.slice(0, 5)).toEqual(scoreEntries('yard', jobs.slice(0, 5)));
  });

  it('has bands that narrow as entries come in, about what is measured', () => {
    const width = ({ predicted: [p05, , p95] }: ScoredEntry): number => Math.log(p95 / p05);
    expect(width(scores.at(-1)!)).toBeLessThan(0.5 * width(scores[0]!));
    expect(scores.filter(({ place }) => place > 0.05 && place < 0.95).length).toBeGreaterThanOrEqual(9);
  });
});

describe('driftOf', () => {
  const steady = Array.from({ length: 30 }, (_, i) => entry(`e${i}`, i % 2 === 0 ? 0.9 : -0.9));

  it('sees none where residuals change sign', () => {
    expect(driftOf(steady).since).toBeUndefined();
  });

  it.each([1.5, -1.5])('sees a shift of %d from the entry where it began', (shift) => {
    const shifted = steady.map((each, i) => (i < 15 ? each : entry(each.id, shift)));
    const { since, sum } = driftOf(shifted);
    expect(Math.sign(sum)).toBe(Math.sign(shift));
    expect(['e14', 'e15']).toContain(since);
  });

  it('is not alarmed by one entry far out', () => {
    expect(driftOf(steady.map((each, i) => (i === 9 ? entry('far', 5) : each))).since).toBeUndefined();
  });
});

describe('shiftOf', () => {
  const off = (by: number): ScoredEntry => ({ ...entry('e', 0), predicted: [0, 10, 20], measured: 10 + by });

  it('counts the latest entries on one side, and how far they are off on the mean', () => {
    expect(shiftOf([off(-3), off(1), off(2), off(3)])).toEqual({ entries: 3, by: 2 });
    expect(shiftOf([off(4), off(-1), off(-2)])).toEqual({ entries: 2, by: -1.5 });
    expect(shiftOf([off(2), off(4)])).toEqual({ entries: 2, by: 3 });
  });
});

describe('crpsOfMixture', () => {
  it('is least, on average, for the distribution that the values come from', () => {
    const values = Array.from({ length: 199 }, (_, i) => i / 200 + 1 / 200).map((share) => 2 * share - 1);
    const score = (mean: number, variance: number): number =>
      values.reduce((sum, value) => sum + crpsOfMixture([{ weight: 1, mean, variance }], value), 0);
    expect(score(0, 0.33)).toBeLessThan(score(0.3, 0.33));
    expect(score(0, 0.33)).toBeLessThan(score(0, 0.03));
    expect(score(0, 0.33)).toBeLessThan(score(0, 3));
  });
});
