import { mixtureQuantile, type NormalPart, normalProbability } from '../numeric/index.ts';
import type { LevelNode, RemovalBelief } from './belief.ts';
import { depthRegressors, type PassSetting } from './setting.ts';

/** A predicted quantity with its 90 % interval, SI. */
export interface Prediction {
  /** 5th percentile, in the quantity's SI unit [-]. */
  readonly p05: number;
  /** Median, in the quantity's SI unit [-]. */
  readonly p50: number;
  /** 95th percentile, in the quantity's SI unit [-]. */
  readonly p95: number;
}

/**
 * ln(h / D) at one place of one pass of a new job, as a mixture of normal distributions: all four levels of spread.
 *
 * @param belief - what is known of removal [record], from `publishedBelief`
 * @param setting - how the pass is run [record], all values > 0
 * @returns the parts [list]
 * @source derived: variance of a linear mixed model
 * @example
 * lnDepthParts(publishedBelief(metalOf('carbon_steel'), 'flat'), { diameter: 0.0127, current: 850, voltage: 42, travel: 0.0148167, pushAngle: Math.PI / 4 }).length // => 9
 */
export function lnDepthParts(belief: RemovalBelief, setting: PassSetting): NormalPart[] {
  const x = depthRegressors(setting, belief.meltingEnergy);
  return belief.depth.map(({ weight, mean, covariance, levels }) => ({
    weight,
    mean: dot(mean, x),
    variance:
      dot(
        covariance.map((row) => dot(row, x)),
        x,
      ) +
      levels.job ** 2 +
      levels.pass ** 2 +
      levels.seam ** 2,
  }));
}

/**
 * Depth of one pass on a flat surface at one place, with its interval. A depth is never shown without its interval.
 *
 * @param belief - what is known of removal [record], from `publishedBelief`
 * @param setting - how the pass is run [record], all values > 0
 * @param ceiling - depth that cannot occur and above [m], from `depthCeiling`, or left out for the law as it is
 * @returns depth [m]
 * @source log-linear law in the specific energy, fitted to TWI Job Knowledge 12 (memory); spread in four levels: see `publishedBelief`
 * @example
 * predictDepth(publishedBelief(metalOf('carbon_steel'), 'flat'), { diameter: 0.0127, current: 850, voltage: 42, travel: 0.0148167, pushAngle: Math.PI / 4 }).p50 // => 0.0092...
 */
export function predictDepth(
  belief: RemovalBelief,
  setting: PassSetting,
  ceiling = Number.POSITIVE_INFINITY,
): Prediction {
  const parts = lnDepthParts(belief, setting);
  const cut = Math.log(ceiling / setting.diameter);
  const below = Number.isFinite(cut)
    ? parts.reduce(
        (sum, part) => sum + part.weight * normalProbability((cut - part.mean) / Math.sqrt(part.variance)),
        0,
      )
    : 1;
  const at = (share: number): number => setting.diameter * Math.exp(mixtureQuantile(parts, share * below));
  return { p05: at(0.05), p50: at(0.5), p95: at(0.95) };
}

/**
 * Nominal width of a pass of a new job, with its interval; never narrower than the electrode that cut it.
 *
 * @param belief - what is known of removal [record], from `publishedBelief`
 * @param diameter - electrode diameter [m], > 0
 * @returns width [m]
 * @source AWS Welding Handbook / AWS C5.3: electrode diameter and about 3 mm (memory); fitted to the manual rows of TWI Job Knowledge 12 (memory)
 * @example
 * predictWidth(publishedBelief(metalOf('carbon_steel'), 'flat'), 0.0127).p50 // => 0.01616
 */
export function predictWidth(belief: RemovalBelief, diameter: number): Prediction {
  const parts = levelParts(belief.extraWidth);
  const at = (share: number): number => Math.max(diameter, diameter + mixtureQuantile(parts, share));
  return { p05: at(0.05), p50: at(0.5), p95: at(0.95) };
}

/**
 * Electrode burnt off per time in a new job, with its interval.
 *
 * @param belief - what is known of removal [record], from `publishedBelief`
 * @param diameter - electrode diameter [m], > 0
 * @param current - current [A], > 0
 * @returns length of electrode per time [m/s]
 * @source TWI Job Knowledge 12 (memory): volume per ampere-minute
 * @example
 * predictWear(publishedBelief(metalOf('carbon_steel'), 'flat'), 0.0127, 850).p50 // => 0.00171...
 */
export function predictWear(belief: RemovalBelief, diameter: number, current: number): Prediction {
  const parts = levelParts(belief.wear);
  const perVolume = current / ((Math.PI * diameter ** 2) / 4);
  const at = (share: number): number => Math.exp(mixtureQuantile(parts, share)) * perVolume;
  return { p05: at(0.05), p50: at(0.5), p95: at(0.95) };
}

/** One value of a new pass in a new job. */
function levelParts(nodes: readonly LevelNode[]): NormalPart[] {
  return nodes.map(({ weight, mean, variance, job, pass }) => ({
    weight,
    mean,
    variance: variance + job ** 2 + pass ** 2,
  }));
}

function dot(a: readonly number[], b: readonly number[]): number {
  return a.reduce((sum, value, i) => sum + value * b[i]!, 0);
}
