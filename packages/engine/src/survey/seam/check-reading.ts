/** Why a reading is not used. */
export type SetAsideReason =
  | 'outside_seam'
  | 'gauge_failed'
  | 'cut_again'
  | 'before_last_pass'
  | 'inch_for_mm'
  | 'mm_for_inch'
  | 'thousandfold'
  | 'thousandth'
  | 'slipped_decimal';

/** Factors by which a number is wrong when its unit or its decimal point is. */
const SLIPS: readonly (readonly [SetAsideReason, number])[] = [
  ['inch_for_mm', 25.4],
  ['mm_for_inch', 1 / 25.4],
  ['thousandfold', 1 / 1000],
  ['thousandth', 1000],
  ['slipped_decimal', 10],
  ['slipped_decimal', 0.1],
];

/** Standard deviations of the prediction beyond which a reading may be a slip, and the least factor that it then is off by [-]. */
const FAR = 4;
const OFF_LEAST = 2.2;

/**
 * Whether a depth is one that a wrong unit or a slipped decimal point explains much better than the groove does.
 *
 * @param depth - the depth as read [m], >= 0
 * @param expected - median of the prediction there [m], > 0
 * @param sd - standard deviation of its logarithm [-], > 0
 * @returns what it looks like, and the depth it would be; undefined where the groove explains it as well [record]
 * @source judgement, no source
 * @example
 * slipOf(0.000489, 0.0124, 0.1) // => {"reason":"inch_for_mm","wouldBe":0.0124206}
 */
export function slipOf(
  depth: number,
  expected: number,
  sd: number,
): { readonly reason: SetAsideReason; readonly wouldBe: number } | undefined {
  if (!(depth > 0)) return undefined;
  const off = Math.abs(Math.log(depth / expected));
  if (off < Math.max(FAR * sd, Math.log(OFF_LEAST))) return undefined;
  let best: { reason: SetAsideReason; wouldBe: number; off: number } | undefined;
  for (const [reason, factor] of SLIPS) {
    const wouldBe = depth * factor;
    const left = Math.abs(Math.log(wouldBe / expected));
    if (left < Math.max(2 * sd, 0.15) && (best === undefined || left < best.off))
      best = { reason, wouldBe, off: left };
  }
  return best === undefined ? undefined : { reason: best.reason, wouldBe: best.wouldBe };
}
