import { describe, expect, it } from 'vitest';
import { runPlan } from './run-plan.ts';
import type { Setup } from './setup.ts';
import { drawShops } from './shop-draws.ts';
import { posteriorOf, singleTrackTask } from './solve-task.test-support.ts';
import { testJob } from './test-job.test-support.ts';

const { job } = testJob();
const task = singleTrackTask(job, 900);
const draws = drawShops(posteriorOf(job), 300, 5);
const ENERGY = 0.3;

function setupOf(layers: Setup['layers'], tracks = 1): Setup {
  return { ...task.base, pattern: { tracks, spacing: tracks === 1 ? 0 : 9e-3 }, layers };
}

const set = { kind: 'set', logEnergy: ENERGY } as const;

describe('Running a set-up in shops', () => {
  it('gives the same outcomes for the same shops', () => {
    const again = drawShops(posteriorOf(job), 300, 5);
    expect(runPlan(setupOf([set, set], 3), task.run, again)).toEqual(
      runPlan(setupOf([set, set], 3), task.run, draws),
    );
  });

  it('digs the first pass as deep as the law of each shop says', () => {
    const { deepest } = runPlan(setupOf([set]), task.run, draws);
    const noise = draws.passNoise(0);
    for (let shop = 0; shop < draws.count; shop += 1) {
      const lnDepth = draws.level[shop]! + draws.slope[shop]! * ENERGY + draws.spread[shop]! * noise[shop]!;
      expect(deepest[shop]).toBeCloseTo(task.base.electrode.diameter * Math.exp(lnDepth), 12);
    }
  });

  it('digs deeper with every layer, and takes as much longer', () => {
    const one = runPlan(setupOf([set]), task.run, draws);
    const two = runPlan(setupOf([set, set]), task.run, draws);
    for (let shop = 0; shop < draws.count; shop += 1) {
      expect(two.deepest[shop]).toBeGreaterThan(one.deepest[shop]!);
      expect(two.travelTime[shop]).toBeCloseTo(2 * one.travelTime[shop]!, 9);
      expect(two.passes[shop]).toBe(2);
    }
  });

  it('leaves a track alone for good once its reading says so', () => {
    // Whatever is read at the first stop ends the track; the second stop would have it go on.
    const stop = { kind: 'table', stations: 1, table: table(Number.NaN) } as const;
    const go = { kind: 'table', stations: 1, table: table(ENERGY) } as const;
    const done = runPlan(setupOf([set, stop, go]), task.run, draws);
    const one = runPlan(setupOf([set]), task.run, draws);
    expect(done.deepest).toEqual(one.deepest);
    expect(done.passes.every((passes) => passes === 1)).toBe(true);
  });

  it('writes down the row of every reading, and none for a finished track', () => {
    const stop = { kind: 'table', stations: 2, table: table(Number.NaN) } as const;
    const rows = Array.from({ length: 3 }, () => new Int16Array(draws.count).fill(-1));
    runPlan(setupOf([set, stop, stop]), task.run, draws, rows);
    expect(rows[0]!.every((row) => row === -1)).toBe(true);
    expect(rows[1]!.every((row) => row === 0 || row === 1)).toBe(true);
    expect(rows[2]!.every((row) => row === -1)).toBe(true);
  });

  function table(logEnergy: number) {
    return { edges: [8e-3], readings: [7e-3, 9e-3], logEnergy: [logEnergy, logEnergy] };
  }
});
