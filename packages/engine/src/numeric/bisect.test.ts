import { expect, it } from 'vitest';
import { bisect } from './bisect.ts';

it('finds the crossing of a rising and of a falling function', () => {
  expect(bisect((x) => x ** 3 - 5, 0, 3, 1e-13)).toBeCloseTo(5 ** (1 / 3), 12);
  expect(bisect((x) => Math.exp(-x) - 0.2, 0, 9, 1e-13)).toBeCloseTo(-Math.log(0.2), 12);
});

it('gives an end that is the crossing itself', () => {
  expect(bisect((x) => x, 0, 1, 1e-9)).toBe(0);
  expect(bisect((x) => x - 1, 0, 1, 1e-9)).toBe(1);
});

it('does not extrapolate: no crossing inside, no answer', () => {
  expect(bisect((x) => x + 1, 0, 1, 1e-9)).toBeUndefined();
  expect(bisect((x) => x - 2, 0, 1, 1e-9)).toBeUndefined();
});

it('lies within the tolerance', () => {
  for (const tolerance of [1e-1, 1e-3, 1e-6]) {
    expect(Math.abs(bisect((x) => x - Math.PI, 0, 10, tolerance)! - Math.PI)).toBeLessThanOrEqual(tolerance);
  }
});

it('ends when the tolerance is finer than numbers are', () => {
  let calls = 0;
  const root = bisect(
    (x) => {
      calls += 1;
      return x - 1e6 - 1e-3;
    },
    0,
    1e7,
    1e-30,
  );
  expect(root).toBeCloseTo(1e6 + 1e-3, 6);
  expect(calls).toBeLessThan(250);
});

it('finds the crossing of a step', () => {
  expect(bisect((x) => (x < 0.3 ? -1 : 1), 0, 1, 1e-12)).toBeCloseTo(0.3, 11);
});
