import jStat from 'jstat';

/**
 * Quantile of Student's t distribution, to about 7 digits.
 *
 * @param share - cumulative probability [-], above 0 and below 1
 * @param degrees - degrees of freedom [-], > 0
 * @returns the quantile [-]
 * @source Student's t distribution; the library jstat computes it, checked against SciPy in published/
 * @example
 * studentQuantile(0.975, 10) // => 2.22813...
 */
export function studentQuantile(share: number, degrees: number): number {
  return jStat.studentt.inv(share, degrees);
}

/**
 * Cumulative probability of Student's t distribution.
 *
 * @param t - the value [-], any
 * @param degrees - degrees of freedom [-], > 0
 * @returns probability of a value up to `t` [-]
 * @source Student's t distribution; the library jstat computes it, checked against SciPy in published/
 * @example
 * studentProbability(1.2, 7.3) // => 0.866184...
 */
export function studentProbability(t: number, degrees: number): number {
  return jStat.studentt.cdf(t, degrees);
}
