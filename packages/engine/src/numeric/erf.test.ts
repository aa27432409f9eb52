import { expect, it } from 'vitest';
import { erf } from './erf.ts';

// complements to 12 digits, from a table of the error function
it.each([
  [0.1, 0.887537083982],
  [0.25, 0.723673609832],
  [0.5, 0.479500122187],
  [1, 0.15729920705],
  [2, 0.00467773498105],
  [3, 2.20904969986e-5],
])('1 - erf(%d) is %d', (x, complement) => {
  expect(Math.abs((1 - erf(x)) / complement - 1)).toBeLessThan(2e-10);
});

it('is odd, and joins where its two forms meet', () => {
  expect(erf(-0.7)).toBe(-erf(0.7));
  expect(erf(0)).toBe(0);
  expect(Math.abs(erf(3) - erf(3 - 1e-9))).toBeLessThan(1e-12);
  expect(erf(7)).toBe(1);
});
