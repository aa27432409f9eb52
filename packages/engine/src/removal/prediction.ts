import { predict, studentQuantile } from '../numeric/index.ts';
import type { RemovalPosterior } from './posterior.ts';
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
 * Depth of one pass on a flat surface, with its interval.
 *
 * ln(h / D) = a + b ln q + c (angle - 45 deg) / 15 deg, Student-t about it. A depth is never shown without
 * its interval.
 *
 * @param posterior - what is known of removal [record], from `publishedPosterior`
 * @param setting - how the pass is run [record], all values > 0
 * @returns depth [m]
 * @source log-linear law in the specific energy, fitted to TWI Job Knowledge 12 (memory)
 * @example
 * predictDepth(publishedPosterior(metalOf('carbon_steel'), 'flat'), { diameter: 0.0127, current: 850, voltage: 42, travel: 0.0148167, pushAngle: Math.PI / 4 }).p50 // => 0.0092...
 */
export function predictDepth(posterior: RemovalPosterior, setting: PassSetting): Prediction {
  const t = predict(posterior.belief.depth, depthRegressors(setting, posterior.meltingEnergy));
  const edge = studentQuantile(0.95, t.degrees) * t.spread;
  const at = (offset: number): number => setting.diameter * Math.exp(t.location + offset);
  return { p05: at(-edge), p50: at(0), p95: at(edge) };
}

/**
 * Nominal width of a pass, with its interval; never narrower than the electrode that cut it.
 *
 * @param posterior - what is known of removal [record], from `publishedPosterior`
 * @param diameter - electrode diameter [m], > 0
 * @returns width [m]
 * @source AWS Welding Handbook / AWS C5.3: electrode diameter and about 3 mm (memory); fitted to the manual rows of TWI Job Knowledge 12 (memory)
 * @example
 * predictWidth(publishedPosterior(metalOf('carbon_steel'), 'flat'), 0.0127).p50 // => 0.01616
 */
export function predictWidth(posterior: RemovalPosterior, diameter: number): Prediction {
  const t = predict(posterior.belief.extraWidth, [1]);
  const edge = studentQuantile(0.95, t.degrees) * t.spread;
  const at = (offset: number): number => Math.max(diameter, diameter + t.location + offset);
  return { p05: at(-edge), p50: at(0), p95: at(edge) };
}

/**
 * Electrode burnt off per time, with its interval.
 *
 * @param posterior - what is known of removal [record], from `publishedPosterior`
 * @param diameter - electrode diameter [m], > 0
 * @param current - current [A], > 0
 * @returns length of electrode per time [m/s]
 * @source TWI Job Knowledge 12 (memory): volume per ampere-minute
 * @example
 * predictWear(publishedPosterior(metalOf('carbon_steel'), 'flat'), 0.0127, 850).p50 // => 0.00171...
 */
export function predictWear(posterior: RemovalPosterior, diameter: number, current: number): Prediction {
  const t = predict(posterior.belief.wear, [1]);
  const edge = studentQuantile(0.95, t.degrees) * t.spread;
  const perVolume = current / ((Math.PI * diameter ** 2) / 4);
  const at = (offset: number): number => Math.exp(t.location + offset) * perVolume;
  return { p05: at(-edge), p50: at(0), p95: at(edge) };
}
