import { type Composition, fullComposition } from '../material/index.ts';
import { hardnessByFormulas, martensiteHardness } from './hardness-formulas.ts';

/** Standard deviation of the best formulas over three hundred published welds [HV]. */
const FORMULA_SCATTER = 28;
/** Cooling time below which the formulas are left and martensite is taken as the upper end (judgement) [s]. */
export const QUENCH_TIME = 2;
/** Carbon content of a film that took up carbon from the electrode, for its hardness (judgement) [%]. */
const SKIN_CARBON = 0.6;

/** Hardness between which the truth is to be looked for. */
export interface HardnessBand {
  /** Lower end [HV]. */
  readonly least: number;
  /** Upper end [HV]. */
  readonly most: number;
}

/**
 * Band of the greatest hardness beside the groove, over four formulas, a range of cooling times and the formulas' scatter.
 *
 * Least and most of the formulas at the slowest and the quickest cooling, less and more by the published standard
 * deviation of the best of them. Below 2 s the upper end is at least that of martensite.
 *
 * @param composition - mass percents [record], carbon 0.02 to 0.3 %, transformable low-alloy steels
 * @param quickest - shortest cooling time from 800 to 500 degC [s], > 0
 * @param slowest - longest cooling time [s], at least the shortest
 * @returns lower and upper end [HV]
 * @source scatter: Nicholas and Abson, TWI 2008 (confirmed); formulas (memory); below 2 s: judgement
 * @example
 * hardnessBand({ C: 0.17, Si: 0.35, Mn: 1.4, Cr: 0.05, Mo: 0.02, Ni: 0.05, Cu: 0.05, V: 0.005, Nb: 0.02, N: 0.006 }, 5, 10).least // => 282.9364
 */
export function hardnessBand(composition: Composition, quickest: number, slowest: number): HardnessBand {
  const values = [quickest, slowest].flatMap((time) =>
    hardnessByFormulas(composition, time).map(({ hardness }) => hardness),
  );
  const most = Math.max(...values) + FORMULA_SCATTER;
  const martensite = martensiteHardness(Math.min(0.8, fullComposition(composition).C));
  return {
    least: Math.min(...values) - FORMULA_SCATTER,
    most: quickest < QUENCH_TIME ? Math.max(most, martensite) : most,
  };
}

/**
 * Hardness of the carbon-rich film that gouging leaves, quenched, whatever the plate is.
 *
 * Martensite of 0.6 % carbon: why the skin is ground away.
 *
 * @returns Vickers hardness [HV]
 * @source martensite hardness of Yurioka 1987 (derived); the carbon of the film: judgement, no source
 * @example
 * skinHardness() // => 767.1168
 */
export function skinHardness(): number {
  return martensiteHardness(SKIN_CARBON);
}
