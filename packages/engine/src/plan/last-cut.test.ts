import { describe, expect, it } from 'vitest';
import { normalProbability } from '../numeric/index.ts';
import { type LastCut, marginsAfterStop, probability } from './last-cut.ts';

const CUT: LastCut = {
  floor: 0.6,
  spread: 0.1,
  gain: 0.5,
  least: 0.02,
  leastSpread: 0.2,
  error: 0.02,
  own: 0.1,
  required: 0.85,
  most: 1.15,
  leftMargin: 0.04,
  runMargin: 0.09,
  along: 0.01,
};

describe('The last cut after a stop', () => {
  it('comes as near as the reading and the pass itself where a pass can be thin', () => {
    const { below, above, mean } = marginsAfterStop(CUT, 0.95);
    const own = Math.hypot(0.02, 0.4 * 0.1, 0.01);
    expect(below).toBeGreaterThan(1.4 * own);
    expect(below).toBeLessThan(2 * own);
    expect(above).toBeCloseTo(below, 2);
    expect(mean).toBeCloseTo(1, 3);
  });

  it('goes too deep, and deeper on the mean, the less thin a pass can be', () => {
    const thick = [0.02, 0.3, 0.4, 0.5].map((least) => marginsAfterStop({ ...CUT, least, most: 2 }, 0.95));
    for (let index = 1; index < thick.length; index += 1) {
      expect(thick[index]!.above).toBeGreaterThan(thick[index - 1]!.above);
      expect(thick[index]!.mean).toBeGreaterThan(thick[index - 1]!.mean);
    }
    expect(thick[3]!.above).toBeGreaterThan(0.2);
  });

  it('leaves a floor that is sure enough as it is', () => {
    const reached = { ...CUT, floor: 1, spread: 0.01, least: 0.3, leastSpread: 0.01 };
    const { above } = marginsAfterStop(reached, 0.95);
    expect(above).toBeLessThan(0.06);
    // Where it falls short and one more pass holds, that is run; where that goes too deep, the floor is left and asked about.
    expect(marginsAfterStop({ ...reached, required: 1.1, most: 1.6 }, 0.95).above).toBeGreaterThan(0.2);
    expect(marginsAfterStop({ ...reached, required: 1.1, most: 1.4 }, 0.95).left).toBeGreaterThan(0.9);
  });

  it('keeps more on both sides for a surer promise', () => {
    const [less, more] = [marginsAfterStop(CUT, 0.9), marginsAfterStop(CUT, 0.99)];
    expect(more.below).toBeGreaterThan(less.below * 1.5);
    expect(more.above).toBeGreaterThan(less.above * 1.5);
  });

  it.each([-3, -1.2, 0, 0.4, 2.5])('has its quick normal probability at %s from the exact one', (z) => {
    expect(probability(z)).toBeCloseTo(normalProbability(z), 6);
  });
});
