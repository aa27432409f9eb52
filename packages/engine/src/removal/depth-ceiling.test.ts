import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { passArea } from '../groove/index.ts';
import { metalOf } from '../material/index.ts';
import { drawStream, normalProbability } from '../numeric/index.ts';
import { cutOffNormal, depthCeiling } from './depth-ceiling.ts';
import { predictDepth } from './prediction.ts';
import { REMOVAL_SHARE_MOST } from './process-limits.ts';
import { publishedBelief } from './published-belief.ts';

const FLAT = publishedBelief(metalOf('carbon_steel'), 'flat');
const SETTING = { diameter: 0.0127, current: 850, voltage: 42, travel: 0.0148, pushAngle: Math.PI / 4 };

describe('depthCeiling', () => {
  it('is the depth at which the groove takes the stated share of the arc’s power', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.002, max: 0.08, noNaN: true }),
        fc.double({ min: 0.008, max: 0.025, noNaN: true }),
        (travel, width) => {
          const depth = depthCeiling({ ...SETTING, travel }, width, 1e10);
          const power = passArea({ width, depth }) * travel * 1e10;
          return Math.abs(power / (REMOVAL_SHARE_MOST * 42 * 850) - 1) < 1e-4;
        },
      ),
      { seed: 3, numRuns: 100 },
    );
  });
});

describe('cutOffNormal', () => {
  it('is the normal distribution below the cut, none of it on the cut', () => {
    const stream = drawStream(8);
    const draws = Array.from({ length: 20_000 }, () => cutOffNormal(stream.normal(), 0.5));
    expect(Math.max(...draws)).toBeLessThan(0.5);
    for (const z of [-1.5, -0.5, 0, 0.3]) {
      const seen = draws.filter((draw) => draw <= z).length / draws.length;
      expect(Math.abs(seen - normalProbability(z) / normalProbability(0.5))).toBeLessThan(0.012);
    }
  });

  it('keeps the order of draws, and leaves them alone where nothing is cut off', () => {
    expect(cutOffNormal(1, 1)).toBeGreaterThan(cutOffNormal(0.9, 1));
    expect(cutOffNormal(1.3, 9)).toBe(1.3);
    expect(cutOffNormal(0, -8)).toBeLessThan(-8);
    expect(Number.isFinite(cutOffNormal(-9, -8))).toBe(true);
  });
});

describe('predictDepth with a ceiling', () => {
  it('stays below it and moves the whole interval', () => {
    const free = predictDepth(FLAT, SETTING);
    const ceiling = 0.011;
    const held = predictDepth(FLAT, SETTING, ceiling);
    expect(held.p95).toBeLessThan(ceiling);
    expect(held.p50).toBeLessThan(free.p50);
    expect(held.p05).toBeLessThan(free.p05);
    expect(predictDepth(FLAT, SETTING, 1).p50).toBeCloseTo(free.p50, 9);
  });
});
