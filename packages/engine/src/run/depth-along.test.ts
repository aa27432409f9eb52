import { describe, expect, it } from 'vitest';
import { metalOf } from '../material/index.ts';
import type { PlanOutcome } from '../plan/index.ts';
import { publishedBelief, type RemovalBelief } from '../removal/index.ts';
import { type DepthAlong, depthAlong } from './depth-along.ts';
import type { PassRun, RunOutcome } from './outcome.ts';
import { type Judged, stretchesOf } from './stretches.ts';

const BELIEF = publishedBelief(metalOf('carbon_steel'), 'flat');
const LENGTH = 1;

/** Passes over the whole seam, all with the same energy per length. */
const passes = (count: number, to = LENGTH): PassRun[] =>
  Array.from(
    { length: count },
    (_, i) =>
      ({
        ...{ number: i + 1, planned: i + 1, from: 0, to, complete: true },
        placeOf: (way: number) => way,
        course: {
          start: 0,
          width: 0.01,
          time: new Float64Array(Math.round(100 * to)).fill(1),
          energy: new Float64Array(Math.round(100 * to)).fill(20_000),
        },
      }) as unknown as PassRun,
  );
const planOf = (layers: readonly number[]): PlanOutcome =>
  ({
    electrode: { diameter: 0.0127, jointed: true },
    pattern: { tracks: 1 },
    passes: layers.map((layer, i) => ({
      number: i + 1,
      layer,
      depth: { p50: 0.008 },
      current: 450,
      voltage: 40,
      pushAngle: Math.PI / 4,
    })),
  }) as unknown as PlanOutcome;
const along = (layers: readonly number[], belief: RemovalBelief = BELIEF, to = LENGTH): DepthAlong =>
  depthAlong(passes(layers.length, to), planOf(layers), belief, LENGTH, Math.PI / 4)!;

describe('the depth along a seam', () => {
  const [one] = [along([1])];
  const middle = Math.floor(one.cells / 2);

  it('is that of one pass for tracks side by side, and twice that for two layers', () => {
    expect(along([1, 1]).median(middle)).toBeCloseTo(one.median(middle), 9);
    expect(along([1, 2]).median(middle)).toBeCloseTo(2 * one.median(middle), 6);
  });

  it('is none where no pass came', () => {
    const half = along([1], BELIEF, 0.5);
    expect(half.median(Math.floor(0.9 * half.cells))).toBe(0);
    expect(half.chanceBelow(Math.floor(0.9 * half.cells), 0.001)).toBe(1);
    expect(half.median(Math.floor(0.3 * half.cells))).toBeCloseTo(one.median(middle), 9);
  });

  it('has percentiles in their order, and is spread by what is common to the job', () => {
    const width = (depth: DepthAlong): number => Math.log(depth.at(middle, 0.95) / depth.at(middle, 0.05));
    expect(one.at(middle, 0.05)).toBeLessThan(one.median(middle));
    expect(one.chanceBelow(middle, one.at(middle, 0.95))).toBeCloseTo(0.95, 4);
    const job = 0.6;
    const loose = {
      ...BELIEF,
      depth: BELIEF.depth.map((part) => ({ ...part, levels: { ...part.levels, job } })),
    };
    // 3.29 standard deviations lie between the two percentiles
    expect(width(along([1], loose)) / 3.29).toBeGreaterThan(job);
    expect(width(one) / 3.29).toBeLessThan(job);
  });
});

describe('stretches off the depth asked for', () => {
  const judged = {
    job: {
      groove: { ligament_least: 0.003, depth: { wanted: 0.01, plus: 0.002, minus: 0.001 } },
      seam: { length: LENGTH },
      plate: { thickness: 0.03 },
      plan: { seed: 1 },
      kit: { travel: { least: 0.001, most: 0.05 }, gauge: { stations_most: 5, reading_sd: 3e-4, time: 60 } },
    },
    plan: planOf([1]),
    belief: BELIEF,
    expected: { passes: [{ number: 1 }] },
  } as unknown as Judged;
  const outcome = { events: [], passes: passes(1) } as unknown as RunOutcome;
  const depths = (depthAt: (place: number) => number): DepthAlong => ({
    ...{
      cell: 0.01,
      cells: 100,
      layers: [[new Float64Array(100).fill(1e6)]],
      at: () => 0,
      chanceBelow: () => 0,
    },
    median: (cell) => depthAt((cell + 0.5) * 0.01),
  });

  it('are told from where the depth leaves the band to where it comes back, with the worst of it', () => {
    const shallow = depths((place) => (place > 0.2 && place < 0.3 ? 0.008 + 0.01 * (place - 0.2) : 0.01));
    const [found, ...rest] = stretchesOf(outcome, shallow, judged);
    expect(rest).toEqual([]);
    expect(found).toMatchObject({ kind: 'shallow', pass: undefined });
    expect([found!.from, found!.to]).toEqual([expect.closeTo(0.2, 9), expect.closeTo(0.3, 9)]);
    expect(found!.depth).toBeCloseTo(0.00805, 9);
    const deep = depths((place) => (place > 0.5 && place < 0.6 ? 0.0125 + 0.01 * (place - 0.5) : 0.0115));
    const [over, ...others] = stretchesOf(outcome, deep, judged);
    expect(others).toEqual([]);
    expect(over!.kind).toBe('deep');
    expect(over!.depth).toBeCloseTo(0.01345, 9);
  });
});
