import { crpsOfMixture, type NormalPart, studentProbability, studentQuantile } from '@furrow/engine';
import { describe, expect, it } from 'vitest';

/** Continuous ranked probability score; frazane/scoringrules, recomputed by quadrature where it is Student's t. */
const point = (mean: number, weight: number): NormalPart => ({ mean, weight, variance: 0 });

/** Student's t in equal slices: each a point at the quantile of its middle. */
const slices = (degrees: number, location: number, scale: number, count: number): NormalPart[] =>
  Array.from({ length: count }, (_, i) => ({
    weight: 1 / count,
    mean: location + scale * studentQuantile((i + 0.5) / count, degrees),
    variance: 0,
  }));

describe('continuous ranked probability score', () => {
  it.each([
    [0, 0.233694977],
    [1, 0.602441358],
    [2, 1.452791822],
  ])('of the standard normal at %d is %d', (seen, score) => {
    expect(crpsOfMixture([{ weight: 1, mean: 0, variance: 1 }], seen)).toBeCloseTo(score, 8);
  });

  it.each([
    [0, [0, 1], 0.25],
    [2, [0, 1], 1.25],
    [0, [0, 0, 1], 1 / 9],
  ])('of an ensemble at %d is exact', (seen, members, score) => {
    const parts = members.map((mean) => point(mean, 1 / members.length));
    expect(crpsOfMixture(parts, seen)).toBeCloseTo(score, 12);
  });

  it.each([
    [11.1, 5.2, 13.8, 2.3, 1.658226],
    [0.7, 4, 0, 1, 0.4387929],
  ])(
    'of Student’s t at %d (%d degrees, location %d, scale %d) is %d',
    (seen, degrees, location, scale, score) => {
      expect(crpsOfMixture(slices(degrees, location, scale, 600), seen)).toBeCloseTo(score, 3);
    },
  );
});

describe('log score of Student’s t, from the slope of its distribution', () => {
  it.each([
    [11.1, 5.2, 13.8, 2.3, 2.528398],
    [0.7, 4, 0, 1, 1.269725],
  ])('at %d (%d degrees, location %d, scale %d) is %d', (seen, degrees, location, scale, score) => {
    const t = (seen - location) / scale;
    const step = 1e-4;
    const slope =
      (studentProbability(t + step, degrees) - studentProbability(t - step, degrees)) / (2 * step * scale);
    expect(-Math.log(slope)).toBeCloseTo(score, 5);
  });
});
