import { describe, expect, it } from 'vitest';
import { drawShops } from './shop-draws.ts';
import { solveBlind, tried } from './solve.ts';
import { posteriorOf, singleTrackTask } from './solve-task.test-support.ts';
import { testJob } from './test-job.test-support.ts';

const { job } = testJob();
const draws = drawShops(posteriorOf(job), 600, 11);

describe('The quickest blind plan', () => {
  it.each([1, 2, 3])('reaches the depth, and at one per cent more travel does not: %i layers', (layers) => {
    const task = singleTrackTask(job, 700);
    const solved = solveBlind(task, layers, draws);
    expect(solved.chances.reached).toBeGreaterThanOrEqual(task.depth.assurance);
    const rule = solved.setup.layers[0]!;
    if (rule.kind !== 'set') throw new Error('a blind plan sets every layer');
    const faster = { kind: 'set', logEnergy: rule.logEnergy - 0.01 } as const;
    const quicker = tried(
      task,
      Array.from({ length: layers }, () => faster),
      draws,
    );
    expect(quicker.chances.reached).toBeLessThan(task.depth.assurance);
  });

  it('is at the greatest travel where that reaches the depth', () => {
    const task = singleTrackTask(
      testJob({ kit: { travel: { least: '6 in/min', most: '10 in/min' } } }).job,
      900,
    );
    const solved = solveBlind(task, 2, draws);
    expect(solved.setup.layers).toEqual([
      { kind: 'set', logEnergy: task.energyRange[0] },
      { kind: 'set', logEnergy: task.energyRange[0] },
    ]);
  });

  it('tells its shortfall where no travel reaches the depth', () => {
    const task = singleTrackTask(
      testJob({ kit: { travel: { least: '90 in/min', most: '100 in/min' } } }).job,
      700,
    );
    const solved = solveBlind(task, 1, draws);
    expect(solved.shortfall).toBeGreaterThan(0);
    expect(solved.shortfall).toBeGreaterThanOrEqual(task.depth.assurance - solved.chances.reached);
  });
});
