import { type CircleFit, geometricCircle } from './circle.ts';
import type { Deepest } from './deepest.ts';
import type { GrooveFrame } from './groove-frame.ts';
import { declined, type Measured, measured } from './quantity.ts';

/** Parts of the depth, from the bottom up, over which the root's arc is fitted, the largest first [-]. */
const ROOT_PARTS = [0.4, 0.28, 0.2, 0.14, 0.09] as const;
/** Difference of two radii, in its standard uncertainties, up to which they agree [-]. */
const AGREES = 1.3;
/** What it adds to the uncertainty that the part is chosen by looking at it (from simulated scans) [-]. */
const CHOICE = 1.13;
/** Radius in widths from which a floor is flat [-]. */
const FLAT = 3;

const FLAT_FLOOR = 'the floor is flat: it has no root radius';

/** Radius of the arc at the root: over the largest part of the depth that agrees with the next smaller one. */
export function rootRadius(
  frame: GrooveFrame,
  deepest: Deepest,
  from: number,
  to: number,
  width: number,
): { readonly radius: Measured; readonly outliers: readonly number[]; readonly circle?: CircleFit } {
  const { u, d, noise, spacing } = frame;
  const known = new Map<number, RootFit | 'gap' | undefined>();
  const fitOf = (k: number): RootFit | 'gap' | undefined => {
    if (!known.has(k)) known.set(k, fitPart(frame, deepest, from, to, ROOT_PARTS[k]!));
    return known.get(k);
  };
  if (fitOf(0) === 'gap') return { radius: declined('points are missing at the root'), outliers: [] };
  let smallest = ROOT_PARTS.length - 1;
  while (smallest >= 0 && fitOf(smallest) === undefined) smallest -= 1;
  const last = smallest < 0 ? undefined : fitOf(smallest);
  if (last === undefined || last === 'gap')
    return { radius: declined('too few points lie on the root'), outliers: [] };
  // the lowest part may be flat while the corners beside it round the larger parts
  if (isFlat(last.fit, last.half, last.points, noise, width))
    return { radius: declined(FLAT_FLOOR), outliers: [] };
  for (let k = 0; k <= smallest; k += 1) {
    const each = fitOf(k);
    if (each === undefined || each === 'gap') continue;
    const { fit, low, half } = each;
    const next = k < smallest ? fitOf(k + 1) : undefined;
    if (next !== undefined && next !== 'gap') {
      const apart = Math.abs(next.fit.radius - fit.radius);
      const u2 = Math.max(next.fit.radiusU ** 2 - fit.radiusU ** 2, 0.25 * next.fit.radiusU ** 2);
      if (apart > AGREES * Math.sqrt(u2)) continue;
    }
    // the root hangs below its circle's centre
    if (fit.y > deepest.depth)
      return { radius: declined('the floor is humped: it has no root radius'), outliers: [] };
    if (fit.radius > FLAT * width) return { radius: declined(FLAT_FLOOR), outliers: [] };
    const lack = fit.scatter > 3 * Math.max(noise, 1e-6) && fit.scatter > 0.03 * fit.radius;
    if (fit.radiusU > 0.25 * fit.radius || half < 4 * spacing || lack)
      return { radius: declined('the root is no arc that its points can tell'), outliers: [] };
    const outliers: number[] = [];
    fit.weights.forEach((weight, i) => {
      // a wild point stands alone; a wall that turns off the arc goes on
      const alone = (fit.weights[i - 1] ?? 1) > 0 && (fit.weights[i + 1] ?? 1) > 0;
      if (
        weight === 0 &&
        alone &&
        Math.abs(distanceFrom(fit, u[low + i]!, d[low + i]!)) > 8 * Math.max(noise, fit.scatter)
      )
        outliers.push(frame.index[low + i]!);
    });
    return { radius: measured(fit.radius, fit.radiusU * CHOICE, fit.degrees), outliers, circle: fit };
  }
  return { radius: declined('the root is no arc that its points can tell'), outliers: [] };
}

/** A circle over the lowest part of a groove. */
interface RootFit {
  readonly fit: CircleFit;
  /** Index of its first point. */
  readonly low: number;
  /** Half of its extent across [m]. */
  readonly half: number;
  readonly points: number;
}

function fitPart(
  { u, d, smooth, noise, spacing }: GrooveFrame,
  deepest: Deepest,
  from: number,
  to: number,
  part: number,
): RootFit | 'gap' | undefined {
  const level = deepest.depth - Math.max(part * deepest.depth, 5 * noise);
  let low = deepest.at;
  let high = deepest.at;
  while (low > from && smooth[low - 1]! > level) low -= 1;
  while (high < to && smooth[high + 1]! > level) high += 1;
  if (high - low + 1 < 8) return undefined;
  const extent = u[high]! - u[low]!;
  for (let i = low + 1; i <= high; i += 1) {
    const gap = u[i]! - u[i - 1]!;
    if (gap > 8 * spacing && gap > 0.25 * extent) return 'gap';
  }
  const fit = geometricCircle(u.subarray(low, high + 1), d.subarray(low, high + 1));
  return fit === undefined ? undefined : { fit, low, half: extent / 2, points: high - low + 1 };
}

function distanceFrom(fit: CircleFit, u: number, d: number): number {
  return Math.hypot(u - fit.x, d - fit.y) - fit.radius;
}

/** Whether the lowest part is a line: the rise of its arc is within what the points can tell. */
function isFlat(fit: CircleFit, half: number, points: number, noise: number, width: number): boolean {
  if (fit.radius > FLAT * width) return true;
  const rise = fit.radius > half ? fit.radius - Math.sqrt(fit.radius ** 2 - (0.6 * half) ** 2) : half;
  return rise < (5 * noise) / Math.sqrt(points / 3) && half > 0.15 * width;
}
