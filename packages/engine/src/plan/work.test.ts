import { describe, expect, it } from 'vitest';
import { processLimits } from '../removal/index.ts';
import { search } from './search.ts';
import { drawShops } from './shop-draws.ts';
import { posteriorOf } from './solve-task.test-support.ts';
import { testJob } from './test-job.test-support.ts';
import type { SearchInput } from './weigh.ts';

/** A wash of many tracks: the kind of job whose search grows most. */
const { job } = testJob({
  groove: {
    shape: 'wash',
    floor_width: '36 mm',
    depth: { wanted: '4 mm', plus: '6 mm', minus: '1 mm' },
    width: { least: '44 mm', most: '75 mm' },
    assurance: '90 %',
  },
});

function searchWith(left: number): { found: number; overrun: number } {
  const posterior = posteriorOf(job);
  const input: SearchInput = {
    job,
    posterior,
    limits: [processLimits(posterior.meltingEnergy)],
    draws: drawShops(posterior, 150, 1),
    scouts: drawShops(posterior, 60, 1),
    fair: drawShops(posterior, 400, 2),
    firstOnly: false,
    afterCost: undefined,
    work: { left },
  };
  return { found: search(input).feasible.length, overrun: 0 - input.work.left };
}

describe('The work of a search', () => {
  it('ends when none is left, at most one set-up later', () => {
    expect(searchWith(0)).toEqual({ found: 0, overrun: 0 });
    // One set-up of twelve tracks and four layers is solved in some dozens of runs.
    const { overrun } = searchWith(20_000);
    expect(overrun).toBeGreaterThan(0);
    expect(overrun).toBeLessThan(12 * 4 * 150 * 60);
  });

  it('finds plans when there is enough', () => {
    expect(searchWith(20e6).found).toBeGreaterThan(0);
  });
});
