import type { GaugeStop, Plan } from './plan.ts';

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
