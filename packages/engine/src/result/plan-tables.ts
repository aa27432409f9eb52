import { formatStated, type UnitSystem } from '../quantity/index.ts';
import type { GaugeRow, GaugeStop, Plan } from './plan.ts';

/**
 * Every table of a plan that is read off while it is run, the one after a trial or a run-in first: that one stands as a stop
 * after layer 0.
 *
 * @param plan - the plan [record], from `statePlan`
 * @returns the stops [list]
 * @source none: bookkeeping
 * @example
 * planTables({ gauge_stops: [], trial: { stations: [75, 225], reading_sd_mm: 0.4, table: [] } })[0].reading_sd_mm // => 0.4
 */
export function planTables(plan: Pick<Plan, 'trial' | 'run_in' | 'gauge_stops'>): readonly GaugeStop[] {
  const tryout = plan.trial ?? plan.run_in;
  if (tryout === undefined) return plan.gauge_stops;
  const first: GaugeStop = {
    after_layer: 0,
    stations: tryout.stations.length,
    station_positions_mm: tryout.stations,
    reading_sd_mm: tryout.reading_sd_mm,
    table: tryout.table,
    stations_choice: [],
  };
  return [first, ...plan.gauge_stops];
}

/**
 * What to cut before a table after layer 0 can be read, in words.
 *
 * @param plan - the plan [record], from `statePlan`
 * @param system - units to write [text], inch or metric
 * @returns the words [text]; undefined without a trial or a run-in
 * @source none: bookkeeping
 * @example
 * tryoutText({}, 'metric') // => undefined
 */
export function tryoutText(plan: Pick<Plan, 'trial' | 'run_in'>, system: UnitSystem): string | undefined {
  const tryout = plan.trial ?? plan.run_in;
  if (tryout === undefined) return undefined;
  const length = formatStated(tryout.length_mm, 'mm', system);
  const travel = formatStated(tryout.travel_mm_per_min, 'mm/min', system);
  const setting = `${Math.round(tryout.current_A)} A and ${travel}`;
  if (plan.trial === undefined)
    return `First cut the first ${length} of the seam at ${setting}, gauge it, and run the rest as the table says; deepen this stretch at the end.`;
  const on = tryout.on === 'run_on' ? 'the run-on plate' : 'scrap of the same metal';
  return `First cut a trial of ${length} on ${on} at ${setting}, gauge it, and set the seam as the table says.`;
}

/**
 * What a row of a run-in says of its stretch at the end, in words.
 *
 * @param row - the row [record], from a table of the plan
 * @param system - units to write [text], inch or metric
 * @returns the words [text], empty for rows of other tables
 * @source none: bookkeeping
 * @example
 * deepenText({ deepen_travel_mm_per_min: null }, 'metric') // => ""
 */
export function deepenText(row: Pick<GaugeRow, 'deepen_travel_mm_per_min'>, system: UnitSystem): string {
  const travel = row.deepen_travel_mm_per_min;
  return travel === null ? '' : `; at the end the first stretch at ${formatStated(travel, 'mm/min', system)}`;
}
