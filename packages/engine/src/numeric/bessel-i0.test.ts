import { expect, it } from 'vitest';
import { scaledBesselI0 } from './bessel-i0.ts';

/** Power series, which is exact but slow for large arguments. */
function series(x: number): number {
  let term = 1;
  let sum = 1;
  for (let n = 1; n < 200; n += 1) {
    term *= (x / (2 * n)) ** 2;
    sum += term;
  }
  return sum * Math.exp(-x);
}

it.each([0, 0.1, 0.5, 1, 2, 3.7, 3.8, 5, 10, 30, 80])('follows its power series at %d', (x) => {
  expect(Math.abs(scaledBesselI0(x) / series(x) - 1)).toBeLessThan(5e-7);
});

it('falls off as the root of its argument', () => {
  expect(scaledBesselI0(1e6) * Math.sqrt(2 * Math.PI * 1e6)).toBeCloseTo(1, 6);
});
