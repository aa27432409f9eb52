import type { GrooveFrame } from './groove-frame.ts';
import {
  fitPolynomial,
  type PolynomialFit,
  polynomialAt,
  slopeAt,
  slopeVarianceAt,
  varianceAt,
} from './polynomial.ts';

/** The deepest place of a groove. */
export interface Deepest {
  /** Place along the plate line [m]. */
  readonly u: number;
  /** Depth there [m]. */
  readonly depth: number;
  /** Its variance from the scatter of the points about the floor [m2]. */
  readonly variance: number;
  /** Degrees of freedom of that. */
  readonly degrees: number;
  /** Index of the deepest smoothed point. */
  readonly at: number;
}

/** Parts of the depth, from the bottom up, over which the floor is smoothed by a polynomial, the largest that fits first [-]. */
const FLOOR_PARTS = [0.1, 0.06, 0.035, 0.02] as const;
/** Ratio of variances from which two more coefficients are needed (about 1 % at usual numbers of points) [-]. */
const NEEDED = 4.8;
/** Points from which the floor may be of the fourth order [-]. */
const FOURTH = 14;
/** Scatter about the floor over the noise of a point up to which a polynomial fits [-]. */
const FITS = 1.25;

/** Finds the largest depth between two indices: of the floor smoothed by a polynomial, since the largest reading is too deep by its noise. */
export function findDeepest(frame: GrooveFrame, from: number, to: number): Deepest | undefined {
  const { u, d, smooth, noise } = frame;
  let at = from;
  for (let i = from; i <= to; i += 1) if (smooth[i]! > smooth[at]!) at = i;
  const top = smooth[at]!;
  let found: { fit: PolynomialFit; low: number; high: number } | undefined;
  for (const part of FLOOR_PARTS) {
    const level = top - Math.max(part * top, 5 * noise);
    let low = at;
    let high = at;
    while (low > from && smooth[low - 1]! > level) low -= 1;
    while (high < to && smooth[high + 1]! > level) high += 1;
    if (high - low + 1 < 6) break;
    const fit = leastOrder(u.slice(low, high + 1), d.slice(low, high + 1));
    if (fit === undefined) break;
    found = { fit, low: u[low]!, high: u[high]! };
    if (Math.sqrt(fit.squares / fit.degrees) < FITS * noise) break;
  }
  if (found === undefined) return undefined;
  const { fit, low, high } = found;
  let place = u[at]!;
  let depth = Number.NEGATIVE_INFINITY;
  const steps = 200;
  for (let k = 0; k <= steps; k += 1) {
    const each = low + ((high - low) * k) / steps;
    const value = polynomialAt(fit, each);
    if (value > depth) {
      depth = value;
      place = each;
    }
  }
  // the largest of a curve that is known with noise is too large by half the variance of its slope over its bend
  const inner = place > low && place < high;
  const bend = inner ? Math.abs(slopeAt(fit, place + 1e-5) - slopeAt(fit, place - 1e-5)) / 2e-5 : 0;
  const above = Math.min(
    bend > 0 ? slopeVarianceAt(fit, place) / (2 * bend) : 0,
    Math.sqrt(varianceAt(fit, place)),
  );
  return {
    u: place,
    depth: depth - above,
    variance: varianceAt(fit, place) + 2 * above ** 2,
    degrees: fit.degrees,
    at,
  };
}

/** A level floor where no curve shows, else one of the fourth order, which follows an arc; with few points one of the second. */
function leastOrder(x: Float64Array, y: Float64Array): PolynomialFit | undefined {
  const level = fitPolynomial(x, y, 0);
  const bowl = fitPolynomial(x, y, 2);
  if (level === undefined || bowl === undefined) return level;
  if ((level.squares - bowl.squares) / 2 < NEEDED * (bowl.squares / bowl.degrees)) return level;
  return (x.length >= FOURTH ? fitPolynomial(x, y, 4) : undefined) ?? bowl;
}
