import { passArea } from '../groove/index.ts';
import { bracketedRoot, normalProbability, normalQuantile } from '../numeric/index.ts';
import { REMOVAL_SHARE_MOST } from './process-limits.ts';
import { type PassSetting, specificEnergy } from './setting.ts';

/**
 * Depth above which one pass would melt more than the stated share of the arc's power can: deeper does not occur.
 *
 * Solves passArea(width, h) v e_m = share U I for h.
 *
 * @param setting - how the pass is run [record], all values > 0
 * @param width - nominal width of the pass [m], > 0
 * @param meltingEnergy - energy to heat and melt a unit volume [J/m3], > 0
 * @returns greatest depth [m]
 * @source derived: energy balance of one pass; the share of 0.85: judgement
 * @example
 * depthCeiling({ diameter: 0.0127, current: 850, voltage: 42, travel: 0.0148167, pushAngle: Math.PI / 4 }, 0.0161, 10.5e9) // => 0.0137...
 */
export function depthCeiling(setting: PassSetting, width: number, meltingEnergy: number): number {
  const area = meltedMost(setting, meltingEnergy);
  // A wall adds at least the width of the bottom to the area, but for its flare: twice that depth is always enough.
  const far = width + (2 * area) / width;
  return bracketedRoot((depth) => passArea({ width, depth }) - area, 0, far, 1e-9) ?? far;
}

/**
 * A depth, or the depth above which one pass would melt more than its arc can where it is deeper: as `depthCeiling`, solved
 * only where it counts.
 *
 * @param depth - depth by the law [m], at least 0
 * @param setting - how the pass is run [record], all values > 0
 * @param width - nominal width of the pass [m], > 0
 * @param meltingEnergy - energy to heat and melt a unit volume [J/m3], > 0
 * @returns the lesser of depth and ceiling [m]
 * @source derived: energy balance of one pass, see `depthCeiling`
 * @example
 * depthWithinCeiling(0.01, { diameter: 0.0127, current: 850, voltage: 42, travel: 0.0148167, pushAngle: Math.PI / 4 }, 0.0161, 10.5e9) // => 0.01
 * depthWithinCeiling(0.02, { diameter: 0.0127, current: 850, voltage: 42, travel: 0.0148167, pushAngle: Math.PI / 4 }, 0.0161, 10.5e9) // => 0.0137...
 */
export function depthWithinCeiling(
  depth: number,
  setting: PassSetting,
  width: number,
  meltingEnergy: number,
): number {
  if (passArea({ width, depth }) < meltedMost(setting, meltingEnergy)) return depth;
  return Math.min(depth, depthCeiling(setting, width, meltingEnergy));
}

/** Most that one pass can melt of its section [m2]. */
function meltedMost(setting: PassSetting, meltingEnergy: number): number {
  return REMOVAL_SHARE_MOST * specificEnergy(setting, meltingEnergy) * setting.diameter ** 2;
}

/**
 * Turns a standard normal draw into one of the same distribution cut off above: what lies beyond does not occur, so its
 * share falls on all that can. A larger draw stays larger, so that common draws stay common.
 *
 * @param z - the draw [-], any finite number
 * @param cut - where the distribution ends, in standard deviations above its mean [-], -8 or more
 * @returns the draw below the cut [-]
 * @source truncated normal distribution by its quantile function
 * @example
 * cutOffNormal(0, 0) // => -0.67448975
 */
export function cutOffNormal(z: number, cut: number): number {
  // Beyond eight standard deviations nothing is cut off that a double would show.
  if (cut > 8) return z;
  return normalQuantile(Math.max(Number.MIN_VALUE, normalProbability(z) * normalProbability(cut)));
}
