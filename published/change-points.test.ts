import { readFileSync } from 'node:fs';
import { changePoints, noiseOf } from '@furrow/engine';
import { describe, expect, it } from 'vitest';

interface Annotated {
  readonly values: readonly number[];
  /** What each person marked: first value after a change. */
  readonly annotations: readonly (readonly number[])[];
}

/** Turing Change Point Dataset, MIT licence; see the file's own `source`. */
const SERIES: Readonly<Record<string, Annotated>> = JSON.parse(
  readFileSync(new URL('tcpd-quality-control.json', import.meta.url), 'utf8'),
).series;

/** The penalty that the review of a run takes. */
function detect(values: readonly number[]): number[] {
  const series = Float64Array.from(values);
  return changePoints(series, 6 * noiseOf(series) ** 2 * Math.log(series.length), 2);
}

function segmentsOf(changes: readonly number[], count: number): [number, number][] {
  const ends = [0, ...changes, count];
  return ends.slice(1).map((end, i) => [ends[i]!, end]);
}

/** Segmentation covering of the annotations, as the benchmark defines it: mean over people. */
function cover({ values, annotations }: Annotated, found: readonly number[]): number {
  const count = values.length;
  const mine = segmentsOf(found, count);
  const one = (theirs: readonly number[]): number =>
    segmentsOf(theirs, count).reduce((sum, [a, b]) => {
      const best = Math.max(
        ...mine.map(([c, d]) => {
          const both = Math.max(0, Math.min(b, d) - Math.max(a, c));
          return both / (b - a + (d - c) - both);
        }),
      );
      return sum + ((b - a) / count) * best;
    }, 0);
  return annotations.reduce((sum, each) => sum + one(each), 0) / annotations.length;
}

/** F1 with a margin of five values; the start counts as a change that all have found. */
function f1({ annotations }: Annotated, found: readonly number[]): number {
  const mine = [0, ...found];
  const hits = (theirs: readonly number[]): number => {
    const open = new Set(mine);
    let count = 0;
    for (const change of theirs) {
      const near = [...open].filter((at) => Math.abs(at - change) <= 5)[0];
      if (near === undefined) continue;
      open.delete(near);
      count += 1;
    }
    return count;
  };
  const all = [...new Set([0, ...annotations.flat()])];
  const matched = mine.filter((at) => all.some((each) => Math.abs(each - at) <= 5)).length;
  const precision = matched / mine.length;
  const recall =
    annotations.reduce((sum, each) => sum + hits([0, ...each]) / (each.length + 1), 0) / annotations.length;
  return (2 * precision * recall) / (precision + recall);
}

/** Scores of a general detector with its default settings on the same series: cover and F1. */
const TO_BEAT = [
  ['quality_control_1', 0.99238, 1],
  ['quality_control_2', 0.92232, 1],
  ['quality_control_3', 0.99565, 1],
  ['quality_control_5', 1, 1],
] as const;

describe('the annotated quality-control series', () => {
  it.each(TO_BEAT)('%s: covers at least %d, F1 at least %d', (name, coverLeast, f1Least) => {
    const series = SERIES[name]!;
    const found = detect(series.values);
    expect({ cover: cover(series, found) >= coverLeast - 5e-6, f1: f1(series, found) }, `${found}`).toEqual({
      cover: true,
      f1: f1Least,
    });
  });
});

/** Sum of squares about the segments' means plus the penalty per change. */
function objective(values: readonly number[], changes: readonly number[], penalty: number): number {
  return segmentsOf(changes, values.length).reduce((sum, [from, to]) => {
    const part = values.slice(from, to);
    const mean = part.reduce((a, b) => a + b, 0) / part.length;
    return sum + part.reduce((a, b) => a + (b - mean) ** 2, 0);
  }, penalty * changes.length);
}

describe('penalised change points', () => {
  const THREE_LEVELS = [10, 11, 10, 11, 20, 21, 20, 21, 15, 16, 15, 16];

  /** Killick, Fearnhead and Eckley (2012); numbers by exhaustive dynamic programming. */
  it.each([
    [5, [4, 8], 13],
    [100, [4], 153],
    [400, [], 203],
  ])('a penalty of %d leaves the changes %j', (penalty, changes, total) => {
    const found = changePoints(Float64Array.from(THREE_LEVELS), penalty);
    expect(found).toEqual(changes);
    expect(objective(THREE_LEVELS, found, penalty)).toBeCloseTo(total, 10);
  });

  /** Example input of a time-series library: fifty zeros, then fifty tens. */
  it('finds one step where it is', () => {
    const values = [...Array<number>(50).fill(0), ...Array<number>(50).fill(10)];
    expect(changePoints(Float64Array.from(values), 15)).toEqual([50]);
  });

  it('is exact: no other set of changes of a short series is cheaper', () => {
    const values = [3, 1, 4, 1, 5, 9, 2, 6, 5, 3, 5, 8];
    const found = changePoints(Float64Array.from(values), 6);
    const all = Array.from({ length: 2 ** (values.length - 1) }, (_, set) =>
      values.slice(1).flatMap((_each, i) => ((set >> i) & 1 ? [i + 1] : [])),
    );
    const least = Math.min(...all.map((changes) => objective(values, changes, 6)));
    expect(objective(values, found, 6)).toBeCloseTo(least, 10);
  });

  /** NIST StRD NumAcc4: values that differ in the ninth digit; sums of plain squares lose them. */
  it('keeps its digits where the level is large', () => {
    const values = [...Array<number>(40).fill(10_000_000.1), ...Array<number>(40).fill(10_000_000.3)];
    expect(changePoints(Float64Array.from(values), 0.01)).toEqual([40]);
  });
});
