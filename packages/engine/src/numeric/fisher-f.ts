import jStat from 'jstat';

/**
 * Cumulative probability of Fisher's F distribution.
 *
 * @param f - the value [-], >= 0
 * @param upper - degrees of freedom of the numerator [-], > 0
 * @param lower - degrees of freedom of the denominator [-], > 0
 * @returns probability of a value up to `f` [-]
 * @source Fisher's F distribution; the library jstat computes it
 * @example
 * fisherProbability(4, 1, 10) // => 0.926611...
 */
export function fisherProbability(f: number, upper: number, lower: number): number {
  return jStat.centralF.cdf(f, upper, lower);
}
