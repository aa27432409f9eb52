/**
 * Check values of control charts and of outlier screens, and what of the review they bear on.
 *
 * Not held here, as Furrow has no such chart: the limits of EWMA charts (NIST/SEMATECH e-Handbook 6.3.2.4; Montgomery,
 * Statistical Quality Control, 30 points) and the average run length of a Shewhart chart. The drift of a run is found by
 * exact penalised change points (`change-points.test.ts`), on whose data the step of the e-Handbook's cusum example must
 * be found all the same; the entries of a shop are watched by a cusum (`scores.test.ts`).
 */
import { changePoints, noiseOf } from '@furrow/engine';
import { describe, expect, it } from 'vitest';

/** NIST/SEMATECH e-Handbook 6.3.2.3 (from memory): group means, of which those from the 13th on are higher. */
const CUSUM = [
  324.925, 324.675, 324.725, 324.35, 325.35, 325.225, 324.125, 324.525, 325.225, 324.6, 324.625, 325.15,
  328.325, 327.25, 327.825, 328.5, 326.675, 327.775, 326.875, 328.35,
];
/** NIST/SEMATECH e-Handbook 6.3.2.4 (from memory): an EWMA chart stays inside its limits all along. */
const EWMA = [
  52, 47, 53, 49.3, 50.1, 47, 51, 50.1, 51.2, 50.5, 49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6,
  52.1,
];

/** The penalty that the review of a run takes. */
function detect(values: readonly number[]): number[] {
  const series = Float64Array.from(values);
  return changePoints(series, 6 * noiseOf(series) ** 2 * Math.log(series.length), 2);
}

describe('the drift detector on series of control charts', () => {
  it('finds the step where the cusum of the handbook signals one group later', () => {
    let high = 0;
    const first = CUSUM.findIndex((x) => {
      high = Math.max(0, high + x - 325 - 0.3175);
      return high > 4.1959;
    });
    expect(first + 1).toBe(14);
    expect(detect(CUSUM)).toEqual([12]);
  });

  it('is silent where the chart has no group outside', () => {
    expect(detect(EWMA)).toEqual([]);
  });
});

describe('the robust spread', () => {
  /** Iglewicz and Hoaglin's cut-off, as in e-Handbook 1.3.5.17 (from memory): the sixth reading alone stands apart. */
  it('of differences is not moved by one wild reading, as the classical one is', () => {
    const readings = [8.1, 8.0, 8.2, 7.9, 8.1, 12.0, 8.0];
    const mean = readings.reduce((a, b) => a + b, 0) / 7;
    const sd = Math.sqrt(readings.reduce((a, b) => a + (b - mean) ** 2, 0) / 6);
    expect(mean).toBeCloseTo(8.614285714, 8);
    expect(sd).toBeCloseTo(1.496026483, 8);
    // no point of seven can stand three classical deviations apart; by the robust one this one does
    expect((12 - mean) / sd).toBeCloseTo(2.263137935, 8);
    const robust = noiseOf(Float64Array.from(readings));
    expect(robust).toBeLessThan(0.3);
    expect((12 - 8.1) / robust).toBeGreaterThan(3.5);
  });
});

/** Breakpoints as ruptures has them: the last is the number of values. */
type Breaks = readonly number[];

/** Greatest distance from a break of one to the nearest of the other. */
function hausdorff(one: Breaks, other: Breaks): number {
  const far = (a: Breaks, b: Breaks): number =>
    Math.max(...a.map((x) => Math.min(...b.map((y) => Math.abs(x - y)))));
  const inside = (breaks: Breaks): Breaks => breaks.slice(0, -1);
  return Math.max(far(inside(one), inside(other)), far(inside(other), inside(one)));
}

/** Share of pairs of values that both put into one segment, or both into two. */
function rand(one: Breaks, other: Breaks): number {
  const count = one.at(-1)!;
  const segment = (breaks: Breaks, at: number): number => breaks.findIndex((end) => at < end);
  let [same, all] = [0, 0];
  for (let i = 0; i < count; i += 1)
    for (let j = i + 1; j < count; j += 1) {
      all += 1;
      const together = (breaks: Breaks): boolean => segment(breaks, i) === segment(breaks, j);
      if (together(one) === together(other)) same += 1;
    }
  return same / all;
}

/** Precision and recall with a margin: a found break hits a true one that is nearer than the margin. */
function hits(truth: Breaks, found: Breaks, margin: number): { precision: number; recall: number } {
  const [a, b] = [truth.slice(0, -1), found.slice(0, -1)];
  const hit = b.filter((x) => a.some((y) => Math.abs(x - y) < margin)).length;
  return { precision: hit / b.length, recall: hit / a.length };
}

/** Scores of segmentations as the tests of ruptures (deepcharles/ruptures, BSD) have them, end point included. */
describe('segments scored as by ruptures', () => {
  const breaks = [100, 200, 300, 400, 500];

  it('are perfect against themselves', () => {
    expect(hausdorff(breaks, breaks)).toBe(0);
    expect(rand(breaks, breaks)).toBe(1);
    expect(hits(breaks, breaks, 10)).toEqual({ precision: 1, recall: 1 });
  });

  it('of the detector on five steps in noise are near perfect', () => {
    let state = 7;
    const uniform = (): number => {
      state = (state * 48_271) % 2_147_483_647;
      return state / 2_147_483_647;
    };
    const noise = (): number => Array.from({ length: 12 }, uniform).reduce((a, b) => a + b, -6);
    const levels = [40, 44, 38, 43, 39];
    const values = levels.flatMap((level) => Array.from({ length: 100 }, () => level + noise()));
    const found = [...detect(values), 500];
    expect(hausdorff(breaks, found)).toBeLessThanOrEqual(2);
    expect(rand(breaks, found)).toBeGreaterThan(0.99);
    expect(hits(breaks, found, 10)).toEqual({ precision: 1, recall: 1 });
  });
});
