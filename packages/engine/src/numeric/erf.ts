/** Terms of the series used at most; it is left at 3, where fewer do. */
const TERMS_MOST = 80;
/** Argument beyond which the error function is 1 to the last digit. */
const SATURATED = 6;

/**
 * Error function.
 *
 * Series 2/sqrt(pi) exp(-x^2) sum 2^n x^(2n+1) / (2n+1)!! up to 3, continued fraction of the complement above.
 *
 * @param x - argument [-], any finite number
 * @returns error function [-]
 * @source Abramowitz and Stegun 7.1.6 and 7.1.14
 * @example
 * erf(0.5) // => 0.520499877813
 */
export function erf(x: number): number {
  const size = Math.abs(x);
  if (size >= SATURATED) return Math.sign(x);
  return Math.sign(x) * (size < 3 ? series(size) : 1 - complement(size));
}

function series(x: number): number {
  let term = x;
  let sum = x;
  for (let n = 1; n < TERMS_MOST && term > 1e-17 * sum; n += 1) {
    term *= (2 * x * x) / (2 * n + 1);
    sum += term;
  }
  return (2 / Math.sqrt(Math.PI)) * Math.exp(-x * x) * sum;
}

/** Continued fraction, from the far end back. */
function complement(x: number): number {
  let fraction = x;
  for (let n = 60; n >= 1; n -= 1) fraction = x + n / 2 / fraction;
  return Math.exp(-x * x) / Math.sqrt(Math.PI) / fraction;
}
