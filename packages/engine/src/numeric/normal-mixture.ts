import { bracketedRoot } from './bracketed-root.ts';
import { erf } from './erf.ts';

/** One weighted normal distribution of a mixture. */
export interface NormalPart {
  /** Share of this part; the shares of a mixture add up to 1 [-]. */
  readonly weight: number;
  /** Mean [-]. */
  readonly mean: number;
  /** Variance [-]. */
  readonly variance: number;
}

/** Standard deviations beyond the outermost mean within which every quantile is looked for [-]. */
const REACH = 40;

/**
 * Cumulative probability of the standard normal distribution.
 *
 * @param z - the value [-], any
 * @returns probability of a value up to `z` [-]
 * @source Abramowitz and Stegun 7.1.22
 * @example
 * normalProbability(1.959963984540054) // => 0.975
 */
export function normalProbability(z: number): number {
  return 0.5 * (1 + erf(z / Math.SQRT2));
}

/**
 * Cumulative probability of a mixture of normal distributions.
 *
 * @param parts - the parts [list], at least one, variances > 0
 * @param value - the value [-], any
 * @returns probability of a value up to it [-]
 * @source definition
 * @example
 * mixtureProbability([{ weight: 0.5, mean: -1, variance: 1 }, { weight: 0.5, mean: 1, variance: 1 }], 0) // => 0.5
 */
export function mixtureProbability(parts: readonly NormalPart[], value: number): number {
  let sum = 0;
  for (const { weight, mean, variance } of parts) {
    sum += weight * normalProbability((value - mean) / Math.sqrt(variance));
  }
  return sum;
}

/**
 * Quantile of a mixture of normal distributions.
 *
 * @param parts - the parts [list], at least one, variances > 0
 * @param share - cumulative probability [-], above 0 and below 1
 * @returns the quantile [-]
 * @source definition, solved by a bracketed root
 * @example
 * mixtureQuantile([{ weight: 1, mean: 2, variance: 9 }], 0.975) // => 7.8798919536
 */
export function mixtureQuantile(parts: readonly NormalPart[], share: number): number {
  const ends = parts.map(({ mean, variance }) => [mean, REACH * Math.sqrt(variance)] as const);
  const low = Math.min(...ends.map(([mean, reach]) => mean - reach));
  const high = Math.max(...ends.map(([mean, reach]) => mean + reach));
  const scale = Math.min(...parts.map(({ variance }) => Math.sqrt(variance)));
  return bracketedRoot((value) => mixtureProbability(parts, value) - share, low, high, 1e-12 * scale) ?? low;
}
