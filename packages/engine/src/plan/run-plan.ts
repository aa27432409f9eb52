import { digFromTable, digSet, openGroove, readFloors } from './dig.ts';
import type { Setup } from './setup.ts';
import type { ShopDraws } from './shop-draws.ts';

/** What the groove asks of every run. */
export interface RunDemand {
  /** Width about the centre line over which the depth must be reached [m]. */
  readonly zoneWidth: number;
  /** Length each pass runs [m]. */
  readonly passLength: number;
  /** Standard deviation of one gauge reading [m]. */
  readonly readingSd: number;
}

/** What came out in every shop, one value per shop. */
export interface RunOutcomes {
  /** Deepest point [m]. */
  readonly deepest: Float64Array;
  /** Shallowest point of the zone [m]. */
  readonly shallowest: Float64Array;
  /** Width at the surface [m]. */
  readonly width: Float64Array;
  /** Sum over the passes of length over travel, without dwells [s]. */
  readonly travelTime: Float64Array;
  /** Passes run [-]. */
  readonly passes: Float64Array;
}

/**
 * Runs a set-up in every shop and reads what came out.
 *
 * Each pass digs from the local floor under its track; the floor is read in closed form. Where `rows` is given,
 * the row of the table that each reading fell into is written there, one list per pass; a track that is finished
 * is not read.
 *
 * @param setup - electrode, current, pattern and layers [record], at least one layer
 * @param demand - what every run of the job has in common [record], lengths > 0
 * @param draws - the shops [record], from `drawShops`
 * @param rows - lists to write the rows into [list], one per pass, each as long as there are shops
 * @returns depths, width, travel time and passes, one value per shop [record]
 * @source derived: log-linear depth law over a floor of circular bottoms with flared walls
 * @example
 * typeof runPlan // => "function"
 */
export function runPlan(
  setup: Setup,
  demand: RunDemand,
  draws: ShopDraws,
  rows?: readonly Int16Array[],
): RunOutcomes {
  const groove = openGroove(setup, draws);
  const timeAtUnit = demand.passLength / setup.unitTravel;
  setup.layers.forEach((rule, layer) => {
    if (rule.kind === 'set') digSet(groove, layer, rule.logEnergy, timeAtUnit);
    else {
      const readingSd = demand.readingSd / Math.sqrt(rule.stations);
      digFromTable(groove, layer, rule.table, readingSd, timeAtUnit, rows);
    }
  });
  const { deepest, shallowest, width } = readFloors(groove, demand.zoneWidth);
  return { deepest, shallowest, width, travelTime: groove.time, passes: groove.passes };
}
