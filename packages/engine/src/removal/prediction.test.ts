import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { METAL_FAMILIES, metalOf } from '../material/index.ts';
import { predictDepth, predictWear, predictWidth } from './prediction.ts';
import { publishedBelief } from './published-belief.ts';
import { type PassSetting, specificEnergy } from './setting.ts';

const FLAT = publishedBelief(metalOf('carbon_steel'), 'flat');
const HALF_INCH: PassSetting = {
  diameter: 0.0127,
  current: 850,
  voltage: 42,
  travel: (35 * 0.0254) / 60,
  pushAngle: Math.PI / 4,
};
const setting = fc.record({
  diameter: fc.double({ min: 0.004, max: 0.0254, noNaN: true }),
  current: fc.double({ min: 90, max: 2200, noNaN: true }),
  voltage: fc.double({ min: 35, max: 50, noNaN: true }),
  travel: fc.double({ min: 0.002, max: 0.05, noNaN: true }),
  pushAngle: fc.double({ min: 0.5, max: 1.2, noNaN: true }),
});
const RUNS = { seed: 61, numRuns: 300 };

describe('predictDepth', () => {
  it('falls with travel and rises with current and voltage', () => {
    fc.assert(
      fc.property(setting, fc.double({ min: 1.001, max: 3, noNaN: true }), (one, factor) => {
        const depth = (changed: Partial<PassSetting>): number =>
          predictDepth(FLAT, { ...one, ...changed }).p50;
        return (
          depth({ travel: one.travel * factor }) < depth({}) &&
          depth({ current: one.current * factor }) > depth({}) &&
          depth({ voltage: one.voltage * factor }) > depth({})
        );
      }),
      RUNS,
    );
  });

  it('depends on energy per length alone: as much more of current and travel changes nothing', () => {
    const twice = { ...HALF_INCH, current: 2 * HALF_INCH.current, travel: 2 * HALF_INCH.travel };
    expect(predictDepth(FLAT, twice).p50).toBeCloseTo(predictDepth(FLAT, HALF_INCH).p50, 12);
    expect(specificEnergy(twice, 1e10)).toBeCloseTo(specificEnergy(HALF_INCH, 1e10), 12);
  });

  it('has an interval about its middle, even in the logarithm', () => {
    fc.assert(
      fc.property(setting, (one) => {
        const { p05, p50, p95 } = predictDepth(FLAT, one);
        return (
          0 < p05 && p05 < p50 && p50 < p95 && Math.abs(Math.log(p95 / p50) / Math.log(p50 / p05) - 1) < 1e-6
        );
      }),
      RUNS,
    );
  });

  it('is surest near the rows it was fitted to', () => {
    const width = (travel: number): number => {
      const { p05, p95 } = predictDepth(FLAT, { ...HALF_INCH, travel });
      return Math.log(p95 / p05);
    };
    expect(width(HALF_INCH.travel)).toBeLessThan(width(HALF_INCH.travel / 20));
    expect(width(HALF_INCH.travel)).toBeLessThan(width(HALF_INCH.travel * 20));
  });

  it('rises a little with the push angle, less than is known of it', () => {
    const at = (degrees: number) =>
      predictDepth(FLAT, { ...HALF_INCH, pushAngle: (degrees * Math.PI) / 180 });
    expect(at(60).p50 / at(45).p50).toBeCloseTo(Math.exp(0.05), 9);
    expect(at(60).p95 / at(60).p05).toBeGreaterThan(at(45).p95 / at(45).p05);
  });
});

describe('a belief for other work', () => {
  const spread = (family: (typeof METAL_FAMILIES)[number], position: 'flat' | 'overhead'): number => {
    const { p05, p95 } = predictDepth(publishedBelief(metalOf(family), position), HALF_INCH);
    return Math.log(p95 / p05);
  };

  it('is wider for a metal or a position without rows, and widest for both', () => {
    const known = spread('carbon_steel', 'flat');
    expect(spread('low_alloy_steel', 'flat')).toBeCloseTo(known, 12);
    expect(spread('copper_alloy', 'flat')).toBeGreaterThan(1.1 * known);
    expect(spread('carbon_steel', 'overhead')).toBeGreaterThan(1.05 * known);
    expect(spread('copper_alloy', 'overhead')).toBeGreaterThan(spread('copper_alloy', 'flat'));
  });

  it('keeps the law, with the metal’s own melting energy', () => {
    for (const family of METAL_FAMILIES) {
      const metal = metalOf(family);
      const posterior = publishedBelief(metal, 'flat');
      const scale = FLAT.meltingEnergy / metal.meltingEnergy.value;
      const asSteel = predictDepth(FLAT, { ...HALF_INCH, travel: HALF_INCH.travel / scale });
      expect(predictDepth(posterior, HALF_INCH).p50).toBeCloseTo(asSteel.p50, 12);
    }
  });

  it('says so', () => {
    expect(FLAT.remarks).toEqual([]);
    expect(publishedBelief(metalOf('copper_alloy'), 'vertical_down').remarks).toEqual([
      expect.stringContaining('copper'),
      expect.stringContaining('vertical down'),
    ]);
  });
});

describe('predictWidth', () => {
  it('is the electrode and about 3 mm, and never less than the electrode', () => {
    for (const diameter of [0.004, 0.0127, 0.0254]) {
      const { p05, p50, p95 } = predictWidth(FLAT, diameter);
      expect(p50 - diameter).toBeCloseTo(0.00346, 6);
      expect(p05).toBeGreaterThanOrEqual(diameter);
      expect(p95).toBeGreaterThan(p50);
    }
  });
});

describe('predictWear', () => {
  it('is a volume per ampere: as fast as the current, and less the thicker the electrode', () => {
    const wear = predictWear(FLAT, 0.0127, 850).p50;
    expect(predictWear(FLAT, 0.0127, 1700).p50 / wear).toBeCloseTo(2, 12);
    expect(predictWear(FLAT, 0.0254, 850).p50 / wear).toBeCloseTo(1 / 4, 12);
  });
});
