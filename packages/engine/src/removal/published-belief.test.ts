import { describe, expect, it } from 'vitest';
import { metalOf } from '../material/index.ts';
import { seamCorrelation } from './belief.ts';
import { lnDepthParts } from './prediction.ts';
import { publishedBelief } from './published-belief.ts';
import { PUBLISHED_PRIOR } from './published-prior.ts';
import { STARTING_DEPTH, startingDensity } from './starting-spread.ts';

const FLAT = publishedBelief(metalOf('carbon_steel'), 'flat');

describe('the belief of a shop without history', () => {
  it('has its middle node at the starting values, and the law of the rows in every node', () => {
    expect(FLAT.depth).toHaveLength(9);
    const [middle] = FLAT.depth;
    expect(middle!.levels.job).toBeCloseTo(0.06, 4);
    expect(middle!.levels.pass).toBeCloseTo(0.04, 4);
    expect(middle!.levels.seam).toBeCloseTo(0.045, 4);
    for (const { mean } of FLAT.depth) expect(mean).toEqual(PUBLISHED_PRIOR.depth.mean);
    expect(FLAT.knowledge).toEqual({ id: 'published-2', trials: 0, jobs: 0, date: null });
  });

  it('puts nearly all of its doubt on the family', () => {
    const half = { diameter: 0.0127, current: 850, voltage: 42, travel: 0.0148, pushAngle: Math.PI / 4 };
    const parts = lnDepthParts(FLAT, half);
    const total = parts.reduce((sum, { weight, variance }) => sum + weight * variance, 0);
    const below = FLAT.depth.reduce(
      (sum, { weight, levels }) => sum + weight * (levels.job ** 2 + levels.pass ** 2 + levels.seam ** 2),
      0,
    );
    expect(below / total).toBeLessThan(0.2);
    expect(Math.sqrt(total)).toBeGreaterThan(0.27);
    expect(Math.sqrt(total)).toBeLessThan(0.4);
  });

  it('is wider for another metal or position on the level alone', () => {
    const other = publishedBelief(metalOf('cast_iron'), 'overhead');
    other.depth.forEach(({ covariance, levels }, i) => {
      const known = FLAT.depth[i]!;
      const family2 = known.covariance[2]![2]! * PUBLISHED_PRIOR.depth.precision[2]![2]!;
      expect(covariance[0]![0]! - known.covariance[0]![0]!).toBeCloseTo(family2 * (1 + 0.8 ** 2), 9);
      expect(covariance[1]![1]).toBe(known.covariance[1]![1]);
      expect(levels).toEqual(known.levels);
    });
  });
});

describe('the density of starting spreads', () => {
  it('peaks at the guess, and falls more slowly upwards', () => {
    const starting = [STARTING_DEPTH.job];
    const at = (sd: number): number => startingDensity(starting, [sd]);
    expect(at(0.06)).toBeGreaterThan(at(0.061));
    expect(at(0.06)).toBeGreaterThan(at(0.059));
    expect(at(0.12)).toBeGreaterThan(at(0.03));
  });
});

describe('seamCorrelation', () => {
  it('is 1 at the place itself and falls evenly to both sides', () => {
    expect(seamCorrelation(0, 0.25)).toBe(1);
    expect(seamCorrelation(-0.1, 0.25)).toBe(seamCorrelation(0.1, 0.25));
    expect(seamCorrelation(2, 0.25)).toBeLessThan(1e-4);
  });
});
