import type { PowerSource, RatingPoint } from './power-source.ts';

/**
 * Greatest current a source is rated for at all.
 *
 * @param source - its rating and, where stated, its rated maximum [record], a checked source
 * @returns current [A]
 * @source none: bookkeeping
 * @example
 * ratedMaximum({ rating: [{ current: 1000, duty: 0.6 }, { current: 800, duty: 1 }] }) // => 1000
 */
export function ratedMaximum(source: Pick<PowerSource, 'rating' | 'current_most'>): number {
  return Math.max(source.current_most ?? 0, ...source.rating.map((point) => point.current));
}

/**
 * Minutes in ten that a source may carry a current.
 *
 * Duty goes with the inverse square of current, X2 = X1 (I1/I2)^2, at most 1. Between two rating points the power law
 * through both is used instead. Above the rated maximum: none. Between points this is an estimate: the square
 * law is that of copper loss.
 *
 * @param source - its rating [record], a checked source
 * @param current - current of this source [A], >= 0
 * @returns minutes of ten [min]
 * @source square law as published for the duty of IEC 60974-1 (confirmed)
 * @example
 * permissibleMinutes({ rating: [{ current: 1000, duty: 0.6 }] }, 900) // => 7.40740741
 * permissibleMinutes({ rating: [{ current: 1000, duty: 0.6 }] }, 1001) // => 0
 */
export function permissibleMinutes(
  source: Pick<PowerSource, 'rating' | 'current_most'>,
  current: number,
): number {
  if (current > ratedMaximum(source) * (1 + 1e-9)) return 0;
  const points = source.rating.toSorted((a, b) => a.current - b.current);
  const above = points.findIndex((point) => point.current >= current);
  if (above > 0) return 10 * betweenDuty(points[above - 1]!, points[above]!, current);
  const point = above === 0 ? points[0]! : points.at(-1)!;
  return current === 0 ? 10 : 10 * Math.min(1, point.duty * (point.current / current) ** 2);
}

function betweenDuty(low: RatingPoint, high: RatingPoint, current: number): number {
  const exponent = Math.log(low.duty / high.duty) / Math.log(high.current / low.current);
  return high.duty * (high.current / current) ** exponent;
}

/**
 * Current that a source may carry for a share of ten minutes.
 *
 * The inverse of the rule for permissible minutes.
 *
 * @param source - its rating [record], a checked source
 * @param minutes - minutes of arc in ten [min], above 0, <= 10
 * @returns greatest permitted current [A]
 * @source square law as published for the duty of IEC 60974-1 (confirmed)
 * @example
 * permittedCurrent({ rating: [{ current: 1000, duty: 0.6 }] }, 10) // => 774.596669
 */
export function permittedCurrent(
  source: Pick<PowerSource, 'rating' | 'current_most'>,
  minutes: number,
): number {
  const duty = minutes / 10;
  const points = source.rating.toSorted((a, b) => a.current - b.current);
  const last = points.findLastIndex((point) => point.duty >= duty);
  if (last < 0) return points[0]!.current * Math.sqrt(points[0]!.duty / duty);
  const low = points[last]!;
  const high = points[last + 1];
  if (high === undefined) return Math.min(ratedMaximum(source), low.current * Math.sqrt(low.duty / duty));
  const exponent = Math.log(low.duty / high.duty) / Math.log(high.current / low.current);
  return low.current * (low.duty / duty) ** (1 / exponent);
}

/**
 * Conventional load voltage of the manual-arc family: what a rating without its own voltage is taken to be at.
 *
 * U2 = 20 V + 0.04 V/A I up to 600 A, 44 V above.
 *
 * @param current - rated current [A], >= 0
 * @returns load voltage [V]
 * @source IEC 60974-1, conventional load voltage (memory)
 * @example
 * conventionalLoadVoltage(300) // => 32
 */
export function conventionalLoadVoltage(current: number): number {
  return Math.min(44, 20 + 0.04 * current);
}
