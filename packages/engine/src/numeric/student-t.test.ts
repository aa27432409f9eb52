import fc from 'fast-check';
import { expect, it } from 'vitest';
import { studentProbability, studentQuantile } from './student-t.ts';

it('has its closed forms at one and at two degrees of freedom', () => {
  for (const share of [0.01, 0.05, 0.3, 0.5, 0.8, 0.975]) {
    expect(studentQuantile(share, 1)).toBeCloseTo(Math.tan(Math.PI * (share - 0.5)), 6);
    const two = (2 * share - 1) / Math.sqrt(2 * share * (1 - share));
    expect(studentQuantile(share, 2)).toBeCloseTo(two, 6);
  }
  expect(studentProbability(1, 1)).toBeCloseTo(0.75, 8);
});

it('inverts: the probability of a quantile is the share', () => {
  const share = fc.double({ min: 0.001, max: 0.999, noNaN: true });
  const degrees = fc.double({ min: 1, max: 200, noNaN: true });
  fc.assert(
    fc.property(
      share,
      degrees,
      (p, nu) => Math.abs(studentProbability(studentQuantile(p, nu), nu) - p) < 1e-6,
    ),
    { seed: 21, numRuns: 400 },
  );
});
