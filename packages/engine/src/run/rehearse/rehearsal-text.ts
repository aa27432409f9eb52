import { inUnit } from '../../quantity/index.ts';
import type { Channel, LogBatch } from '../log-batch.ts';

/** How a rehearsal writes each reading: heading, unit and digits. */
const COLUMNS: Readonly<
  Record<Channel, { readonly heading: string; readonly write: (value: number) => string }>
> = {
  voltage_V: { heading: 'arc voltage [V]', write: (value) => value.toFixed(2) },
  current_A: { heading: 'current [A]', write: (value) => value.toFixed(1) },
  travel_m_per_s: { heading: 'travel [mm/min]', write: (value) => inUnit(value, 'mm_per_min').toFixed(1) },
  position_m: { heading: 'position [mm]', write: (value) => inUnit(value, 'mm').toFixed(1) },
  feed_m_per_s: { heading: 'feed [mm/min]', write: (value) => inUnit(value, 'mm_per_min').toFixed(2) },
  air_pressure_Pa: { heading: 'air pressure [kPa]', write: (value) => inUnit(value, 'kPa').toFixed(1) },
  air_flow_m3_per_s: { heading: 'air flow [L/min]', write: (value) => inUnit(value, 'L_per_min').toFixed(0) },
};

/**
 * First lines of the file of a rehearsal: the mark that it is one, and the header.
 *
 * @param mark - how the file says that its readings were made up [text], one line
 * @param channels - readings in the order of the columns [list], those that the rows have
 * @returns lines, each with its end [text]
 * @source none: bookkeeping
 * @example
 * rehearsalHead('made up', ['voltage_V']) // => "# made up\ntime [s],arc voltage [V]\n"
 */
export function rehearsalHead(mark: string, channels: readonly Channel[]): string {
  return `# ${mark}\n${['time [s]', ...channels.map((channel) => COLUMNS[channel].heading)].join(',')}\n`;
}

/**
 * Rows of a rehearsal as lines of delimited text.
 *
 * @param batch - the rows [record], from `rehearse`
 * @param channels - readings in the order of the columns [list], those that the rows have
 * @returns lines, each with its end [text]
 * @source none: bookkeeping
 * @example
 * rehearsalRows({ time_s: Float64Array.of(0.1), row: Float64Array.of(1), channels: { travel_m_per_s: Float64Array.of(0.01) } }, ['travel_m_per_s']) // => "0.1000,600.0\n"
 */
export function rehearsalRows({ time_s, channels: read }: LogBatch, channels: readonly Channel[]): string {
  let text = '';
  for (let i = 0; i < time_s.length; i += 1) {
    text += time_s[i]!.toFixed(4);
    for (const channel of channels) text += `,${COLUMNS[channel].write(read[channel]![i]!)}`;
    text += '\n';
  }
  return text;
}
