/** Coefficients of I0 over t2, t = x/3.75, up to 3.75. */
const SMALL = [1, 3.5156229, 3.0899424, 1.2067492, 0.2659732, 0.0360768, 0.0045813];
/** Coefficients of sqrt(x) exp(-x) I0 over 3.75/x, above. */
const LARGE = [
  0.39894228, 0.01328592, 0.00225319, -0.00157565, 0.00916281, -0.02057706, 0.02635537, -0.01647633,
  0.00392377,
];

function polynomial(coefficients: readonly number[], x: number): number {
  return coefficients.reduceRight((sum, coefficient) => sum * x + coefficient, 0);
}

/**
 * Modified Bessel function I0 times exp(-x), which does not overflow.
 *
 * Polynomial approximations, within 2e-7 of the value.
 *
 * @param x - argument [-], >= 0
 * @returns exp(-x) I0(x) [-]
 * @source Abramowitz and Stegun 9.8.1 and 9.8.2 (memory)
 * @example
 * scaledBesselI0(1) // => 0.465760
 */
export function scaledBesselI0(x: number): number {
  if (x <= 3.75) return Math.exp(-x) * polynomial(SMALL, (x / 3.75) ** 2);
  return polynomial(LARGE, 3.75 / x) / Math.sqrt(x);
}
