import { percentiles } from '../numeric/index.ts';

/**
 * Places where the mean of a series changes: the segmentation that minimises the squared distance from the segments'
 * means plus a penalty per change, found exactly by dynamic programming with pruning.
 *
 * @param series - the series [-], finite numbers
 * @param penalty - what a change must save [-], in the square of the series' unit, > 0
 * @param least - fewest values of a segment [-], at least 1
 * @returns counts of values before each change, rising; none where the mean stays [list]
 * @source Killick, Fearnhead and Eckley, JASA 107 (2012) 1590-1598 (PELT)
 * @example
 * changePoints(Float64Array.of(10, 11, 10, 11, 20, 21, 20, 21, 15, 16, 15, 16), 5) // => [4, 8]
 */
export function changePoints(series: Float64Array, penalty: number, least = 1): number[] {
  const count = series.length;
  if (count < 2 * least) return [];
  // Sums of what lies about the first value: sums of the values themselves would lose digits.
  const sum = new Float64Array(count + 1);
  const squares = new Float64Array(count + 1);
  for (let i = 0; i < count; i += 1) {
    const value = series[i]! - series[0]!;
    sum[i + 1] = sum[i]! + value;
    squares[i + 1] = squares[i]! + value * value;
  }
  const best = new Float64Array(count + 1);
  const before = new Int32Array(count + 1);
  best[0] = -penalty;
  // Starts that may still be the last change, and what each costs up to the place at hand.
  const starts = new Int32Array(count + 1);
  const totals = new Float64Array(count + 1);
  let open = 1;
  for (let to = least; to <= count; to += 1) {
    let lowest = Number.POSITIVE_INFINITY;
    let start = 0;
    for (let i = 0; i < open; i += 1) {
      const from = starts[i]!;
      if (to - from < least) {
        totals[i] = Number.NEGATIVE_INFINITY;
        continue;
      }
      const total = sum[to]! - sum[from]!;
      const cost = squares[to]! - squares[from]! - (total * total) / (to - from);
      totals[i] = best[from]! + cost;
      if (totals[i]! + penalty < lowest) {
        lowest = totals[i]! + penalty;
        start = from;
      }
    }
    best[to] = lowest;
    before[to] = start;
    // A start that is already dearer than the best of all can never be the last change again.
    let kept = 0;
    for (let i = 0; i < open; i += 1) if (totals[i]! <= lowest) starts[kept++] = starts[i]!;
    open = kept;
    const next = to - least + 1;
    if (next >= least) starts[open++] = next;
  }
  const changes: number[] = [];
  for (let at = before[count]!; at > 0; at = before[at]!) changes.unshift(at);
  return changes;
}

/** Standard deviation of a normal distribution over its median absolute deviation [-]. */
const SD_PER_MAD = 1.482602218505602;

/**
 * Robust standard deviation of the noise of a series whose mean may change: from the differences of neighbours.
 *
 * @param series - the series [-], finite numbers
 * @returns standard deviation, in the series' unit; 0 for fewer than three values [-]
 * @source median absolute deviation of first differences; Iglewicz and Hoaglin (1993) for its scale
 * @example
 * noiseOf(Float64Array.of(0, 1, 0, 1, 0, 1, 9, 10, 9, 10)) // => 1.048...
 */
export function noiseOf(series: Float64Array): number {
  if (series.length < 3) return 0;
  const differences = Float64Array.from({ length: series.length - 1 }, (_, i) =>
    Math.abs(series[i + 1]! - series[i]!),
  );
  return (percentiles(differences, [0.5])[0]! * SD_PER_MAD) / Math.SQRT2;
}
