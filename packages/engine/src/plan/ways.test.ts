import { describe, expect, it } from 'vitest';
import { testJob } from './test-job.test-support.ts';
import { wayFamilies, waysNear } from './ways.ts';

describe('The families of ways', () => {
  const { job } = testJob({ plan: { layers_most: 3 } });
  const families = wayFamilies(job, 1, job.seam.length);

  it('say how many layers are run whatever is gauged: what comes after a stop may be left', () => {
    for (const { ways, layersLeast } of families) {
      for (const { shares, stops } of ways) expect(layersLeast).toBe(shares.length - stops);
    }
    expect(families.some(({ layersLeast, ways }) => layersLeast === 1 && ways[0]!.shares.length === 2)).toBe(
      true,
    );
  });

  it('take nearly everything off before a stop, too', () => {
    const first = families.flatMap(({ ways }) => ways.filter(({ stops }) => stops === 1));
    expect(Math.max(...first.map(({ shares }) => shares[0]!))).toBeGreaterThanOrEqual(0.95);
  });

  it('are tried near the best only where there is something to gauge', () => {
    const gauged = { tryout: undefined, shares: [0.7, 0.3], stops: 1, stations: 2 };
    expect(waysNear(gauged, job, 2).length).toBeGreaterThan(2);
    const blind = { tryout: undefined, shares: [1], stops: 0, stations: 1 };
    expect(waysNear(blind, job, 2)).toEqual([]);
  });
});
