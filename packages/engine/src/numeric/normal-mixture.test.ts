import { describe, expect, it } from 'vitest';
import { mixtureProbability, mixtureQuantile, normalProbability } from './normal-mixture.ts';
import { normalQuantile } from './normal-quantile.ts';

const LOPSIDED = [
  { weight: 0.7, mean: 0, variance: 0.01 },
  { weight: 0.3, mean: 2, variance: 4 },
];

describe('a mixture of normal distributions', () => {
  it('is the normal distribution where it has one part', () => {
    for (const share of [1e-6, 0.05, 0.5, 0.95, 0.999]) {
      expect(mixtureQuantile([{ weight: 1, mean: 3, variance: 4 }], share)).toBeCloseTo(
        3 + 2 * normalQuantile(share),
        9,
      );
      expect(normalProbability(normalQuantile(share))).toBeCloseTo(share, 12);
    }
  });

  it('gives back the share of a quantile, parts far apart or not', () => {
    for (const share of [0.001, 0.3, 0.69, 0.71, 0.99]) {
      expect(mixtureProbability(LOPSIDED, mixtureQuantile(LOPSIDED, share))).toBeCloseTo(share, 10);
    }
  });

  it('weighs its parts', () => {
    expect(mixtureProbability(LOPSIDED, 1)).toBeCloseTo(0.7 + 0.3 * normalProbability(-0.5), 12);
  });
});
