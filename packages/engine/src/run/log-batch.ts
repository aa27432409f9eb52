import type { ColumnQuantity, TableBatch } from '../delimited/index.ts';

/** What a log can give, in SI; a channel that the log lacks is absent. */
export type Channel =
  | 'voltage_V'
  | 'current_A'
  | 'travel_m_per_s'
  | 'position_m'
  | 'feed_m_per_s'
  | 'air_pressure_Pa'
  | 'air_flow_m3_per_s';

/** Rows of a log in file order, from whatever file the logger wrote. NaN: a cell that is empty or could not be read. */
export interface LogBatch {
  /** Elapsed from the first row of the file after the clock was mended [s]. */
  readonly time_s: Float64Array;
  /** Number of the data row in the file, from 1 [-]. */
  readonly row: Float64Array;
  readonly channels: { readonly [C in Channel]?: Float64Array };
}

/** What was mended or found in the clock as it is met. */
export interface ClockNote {
  readonly kind: 'wrap' | 'midnight' | 'daylight_saving' | 'set_back' | 'duplicate' | 'swapped';
  /** Number of the data row, from 1 [-]. */
  readonly row: number;
  /** How far the clock was moved [s]. */
  readonly by_s: number;
}

/** Column of which a channel is made, the first that there is. */
const SOURCES: readonly (readonly [Channel, readonly ColumnQuantity[]])[] = [
  ['voltage_V', ['voltage']],
  ['current_A', ['current']],
  ['travel_m_per_s', ['travel']],
  ['position_m', ['position', 'x', 'station']],
  ['feed_m_per_s', ['feed']],
  ['air_pressure_Pa', ['air_pressure']],
  ['air_flow_m3_per_s', ['air_flow']],
];

/** The quantity of which each channel is made, of those that a table has. */
export function quantitiesOf(
  columns: TableBatch['columns'],
): readonly (readonly [Channel, ColumnQuantity])[] {
  return SOURCES.flatMap(([channel, quantities]) => {
    const quantity = quantities.find((each) => columns[each] !== undefined);
    return quantity ? [[channel, quantity] as const] : [];
  });
}

/** The channels of a batch of a table. */
export function channelsOf(columns: TableBatch['columns']): readonly (readonly [Channel, Float64Array])[] {
  return quantitiesOf(columns).map(([channel, quantity]) => [channel, columns[quantity]!] as const);
}
