import { placeOrder } from './place-order.ts';

/**
 * Percentile of a sample by linear interpolation between order statistics.
 *
 * @param sorted - the sample in rising order [-], at least one value
 * @param share - which percentile, as a share [-], 0 to 1
 * @returns the percentile, in the sample's unit [-]
 * @source Hyndman and Fan 1996, definition 7 (memory)
 * @example
 * percentile(Float64Array.of(1, 2, 3, 4), 0.5) // => 2.5
 */
export function percentile(sorted: Float64Array, share: number): number {
  const place = share * (sorted.length - 1);
  const below = Math.floor(place);
  const low = sorted[below]!;
  const high = sorted[Math.min(below + 1, sorted.length - 1)]!;
  return low + (high - low) * (place - below);
}

/**
 * Several percentiles of an unsorted sample, which stays as it is.
 *
 * @param sample - the sample [-], at least one value
 * @param shares - which percentiles, as shares [list], each 0 to 1
 * @returns the percentiles in the order asked for [list]
 * @source Hyndman and Fan 1996, definition 7 (memory)
 * @example
 * percentiles(Float64Array.of(4, 1, 3, 2), [0, 0.5, 1]) // => [1, 2.5, 4]
 */
export function percentiles(sample: Float64Array, shares: readonly number[]): number[] {
  const placed = sample.slice();
  const last = placed.length - 1;
  let done = 0;
  for (const share of shares) {
    const below = Math.floor(share * last);
    // What is in its place splits the sample: shares that rise need only what lies above.
    placeOrder(placed, below, below >= done ? done : 0, last);
    if (below < last) placeOrder(placed, below + 1, below + 1, last);
    done = below;
  }
  return shares.map((share) => percentile(placed, share));
}
