import { percentile } from '../numeric/index.ts';

/** What a sample says of a quantity, and how far it can be off for having only so many trials. */
export interface Estimate {
  /** Mean [unit of the sample]. */
  readonly mean: number;
  /** Standard deviation [unit of the sample]. */
  readonly deviation: number;
  /** Median [unit of the sample]. */
  readonly p50: number;
  /** 90th percentile [unit of the sample]. */
  readonly p90: number;
  /** Half width of the 95 % interval of the median's error by simulation alone [unit of the sample]. */
  readonly p50HalfWidth: number;
  /** The same of the 90th percentile [unit of the sample]. */
  readonly p90HalfWidth: number;
}

/** Half of a 95 % interval in standard deviations of the normal distribution [-]. */
const Z95 = 1.959963985;

/**
 * Mean, spread, median and 90th percentile of a sample, each percentile with the error that the number of trials leaves.
 *
 * The count of trials below a percentile p is binomial: its 95 % interval n p +/- 1.96 sqrt(n p (1 - p)) picks two
 * order statistics, and half their distance is the half width. It needs no distribution of the quantity itself.
 *
 * @param sample - the sample [list], at least two values
 * @returns the estimate [record]
 * @source order statistics (textbook); JCGM 101:2008 7.7 for the percentiles
 * @example
 * estimateOf(Float64Array.from({ length: 1001 }, (_, i) => i)).p90 // => 900
 */
export function estimateOf(sample: Float64Array): Estimate {
  const sorted = sample.slice().sort();
  const count = sorted.length;
  const mean = sorted.reduce((sum, value) => sum + value, 0) / count;
  const squares = sorted.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  const halfWidth = (share: number): number => {
    const reach = Z95 * Math.sqrt((share * (1 - share)) / count);
    return (
      (percentile(sorted, Math.min(1, share + reach)) - percentile(sorted, Math.max(0, share - reach))) / 2
    );
  };
  return {
    mean,
    deviation: Math.sqrt(squares / (count - 1)),
    p50: percentile(sorted, 0.5),
    p90: percentile(sorted, 0.9),
    p50HalfWidth: halfWidth(0.5),
    p90HalfWidth: halfWidth(0.9),
  };
}
