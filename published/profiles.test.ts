import { fitRadius, gaussianFilter, geometricCircle, taubinCircle } from '@furrow/engine';
import { describe, expect, it } from 'vitest';

/**
 * Circle through six points: the points are of Gander, Golub and Strebel, BIT 34 (1994) 558-578, doi 10.1007/BF01934268;
 * the geometric circle is as recalled from there, and all three were computed again with independent code.
 */
const GANDER = { x: [1, 2, 5, 7, 9, 3], y: [7, 6, 8, 7, 5, 7] };
/** Points of the SciPy cookbook's page on circles; results computed again. */
const COOKBOOK = { x: [9, 35, -13, 10, 23, 0], y: [34, 10, 6, -14, 27, -10] };

describe('published circle fits', () => {
  it('Gander, Golub and Strebel: geometric, Taubin and Kasa', () => {
    const geometric = geometricCircle(GANDER.x, GANDER.y, false)!;
    expect(geometric.x).toBeCloseTo(4.73978, 5);
    expect(geometric.y).toBeCloseTo(2.98353, 5);
    expect(geometric.radius).toBeCloseTo(4.71423, 5);
    expect(geometric.squares).toBeCloseTo(1.227599, 6);
    const taubin = taubinCircle(GANDER.x, GANDER.y)!;
    expect(taubin.x).toBeCloseTo(4.61393, 5);
    expect(taubin.y).toBeCloseTo(2.79521, 5);
    expect(taubin.radius).toBeCloseTo(4.87921, 5);
    const kasa = fitRadius(GANDER.x.map((offset, i) => ({ offset, depth: GANDER.y[i]! })));
    expect(kasa).toBeCloseTo(4.10876, 5);
  });

  it('Kasa is off by 13 % of the radius and Taubin by 3.5 % where the geometric circle is meant', () => {
    const { radius } = geometricCircle(GANDER.x, GANDER.y, false)!;
    expect(taubinCircle(GANDER.x, GANDER.y)!.radius / radius).toBeCloseTo(4.87921 / 4.71423, 5);
    expect(fitRadius(GANDER.x.map((offset, i) => ({ offset, depth: GANDER.y[i]! })))! / radius).toBeCloseTo(
      4.10876 / 4.71423,
      5,
    );
  });

  it('SciPy cookbook: geometric', () => {
    const geometric = geometricCircle(COOKBOOK.x, COOKBOOK.y, false)!;
    expect(geometric.x).toBeCloseTo(10.50009, 5);
    expect(geometric.y).toBeCloseTo(9.65995, 5);
    expect(geometric.radius).toBeCloseTo(23.33353, 5);
  });
});

describe('Gaussian profile filter, ISO 16610-21', () => {
  // transmission at wavelength over cutoff, as the standard's formula gives it: exp(-pi (alpha / ratio)^2)
  it.each([
    [0.5, 0.0625],
    [1, 0.5],
    [2, 0.840896],
    [4, 0.957603],
  ])('at %d cutoffs passes %d of the amplitude', (ratio, passes) => {
    const across = Float64Array.from({ length: 4001 }, (_, i) => i / 200);
    const wave = across.map((x) => Math.cos((2 * Math.PI * (x - 10)) / ratio));
    expect(gaussianFilter(across, wave, 1)[2000]).toBeCloseTo(passes, 3);
  });
});
