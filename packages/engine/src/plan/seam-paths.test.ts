import { describe, expect, it } from 'vitest';
import { seamCorrelation } from '../removal/index.ts';
import { drawSeamPaths, stationVariance } from './seam-paths.ts';

describe('Courses along the seam', () => {
  const paths = drawSeamPaths(1.5, 0.25, 4000, 3);

  it('have station means that vary as the correlation says', () => {
    for (const stations of [1, 2, 5]) {
      const means = paths.stationMean(stations);
      const variance = means.reduce((sum, value) => sum + value * value, 0) / means.length;
      expect(variance).toBeCloseTo(stationVariance(1.5, stations, 0.25), 1);
    }
    expect(stationVariance(0.5, 2, 0.25)).toBeCloseTo((1 + seamCorrelation(0.25, 0.25)) / 2, 12);
  });

  it('go further out the longer the seam, and hardly at all over a short one', () => {
    const greatest = (length: number): number => {
      const { greatest: most } = drawSeamPaths(length, 0.25, 2000, 4);
      return most.reduce((sum, value) => sum + value, 0) / most.length;
    };
    expect(greatest(0.02)).toBeLessThan(0.15);
    expect(greatest(1)).toBeGreaterThan(0.8);
    expect(greatest(10)).toBeGreaterThan(greatest(1) + 0.8);
    expect(greatest(10)).toBeLessThan(3.2);
  });
});
