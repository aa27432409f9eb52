import { describe, expect, it } from 'vitest';
import { chancesOf, type DepthDemand, reachesDepth, shortfall } from './chance.ts';
import type { RunOutcomes } from './run-plan.ts';

const DEMAND: DepthDemand = {
  least: 8e-3,
  most: 12e-3,
  mostForLigament: 13e-3,
  width: { least: 10e-3, most: 20e-3 },
  assurance: 0.75,
  ligamentAssurance: 0.9,
};

/** Four shops: too shallow, right, too deep, too deep for the ligament as well and too wide. */
const OUTCOMES: RunOutcomes = {
  shallowest: Float64Array.of(7e-3, 8e-3, 11e-3, 13e-3),
  deepest: Float64Array.of(9e-3, 12e-3, 12.5e-3, 13.5e-3),
  width: Float64Array.of(10e-3, 15e-3, 20e-3, 21e-3),
  travelTime: new Float64Array(4),
  passes: new Float64Array(4),
};

describe('Chances', () => {
  it('are shares of the shops, a value on its limit counting as kept', () => {
    expect(chancesOf(OUTCOMES, DEMAND)).toEqual({
      reached: 0.75,
      notTooDeep: 0.5,
      ligamentKept: 0.75,
      widthInBand: 0.75,
    });
  });

  it('fall short by the one that is missed most', () => {
    expect(shortfall(chancesOf(OUTCOMES, DEMAND), DEMAND)).toBeCloseTo(0.25, 12);
    expect(
      shortfall({ reached: 0.8, notTooDeep: 0.9, ligamentKept: 0.95, widthInBand: 0 }, DEMAND),
    ).toBeLessThanOrEqual(0);
  });

  it('count a share that just meets what is wanted as met, whatever the rounding', () => {
    // 0.8 + 0.1 * 0.2 is a little more than the nearest number to 0.82.
    const wanted = { ...DEMAND, assurance: 0.8 + 0.1 * 0.2, ligamentAssurance: 0.5 };
    const chances = { reached: 492 / 600, notTooDeep: 1, ligamentKept: 1, widthInBand: 1 };
    expect(reachesDepth(chances, wanted)).toBe(true);
    expect(shortfall(chances, wanted)).toBe(0);
    expect(reachesDepth({ ...chances, reached: 491 / 600 }, wanted)).toBe(false);
    expect(shortfall({ ...chances, reached: 491 / 600 }, wanted)).toBeGreaterThan(0);
  });
});
