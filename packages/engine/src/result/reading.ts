import { z } from 'zod';
import {
  CLOCK_COUNTS,
  COLUMN_QUANTITIES,
  type TableEnd,
  type TableReading,
  zoneWord,
} from '../delimited/index.ts';
import type { LogEnd } from '../run/index.ts';

const columnSchema = z
  .object({
    name: z.string().describe('As the header has it; empty where there is none.'),
    quantity: z
      .enum(COLUMN_QUANTITIES)
      .nullable()
      .describe('What it is read as; null where it is not used or cannot be told.'),
    unit: z
      .string()
      .nullable()
      .describe('Unit of its numbers; null for dates and times of day, and where it cannot be told.'),
    says: z.string().describe('Why it is read so.'),
    sure: z.boolean().describe('False where a person should look at it.'),
  })
  .meta({ id: 'ReadColumn', description: 'How one column of a file was read.' });

const clockSchema = z
  .object({
    kind: z.enum(['elapsed', 'time_of_day', 'date_and_time', 'since_1970', 'rows']),
    says: z.string().describe('Which column it is, in words.'),
    begins: z
      .string()
      .nullable()
      .describe(
        'Moment of the first row (ISO 8601), with Z where its zone is known; null where nothing tells it.',
      ),
    counts: z.enum(CLOCK_COUNTS).nullable().describe('What it was said to count; null where it was found.'),
    zone: z.string().nullable().describe('Zone that was given for times without one, such as +01:00.'),
    date_order: z
      .enum(['dmy', 'mdy', 'ymd'])
      .nullable()
      .describe('In which order its dates are read; null where it has none.'),
    interval_s: z.number().nullable().describe('Time between two rows that was given [s].'),
    mended: z
      .array(
        z.object({
          kind: z.enum(['wrap', 'midnight', 'daylight_saving', 'set_back', 'duplicate', 'swapped']),
          row: z.int().describe('Data row, from 1 [-].'),
          by_s: z.number().describe('How far the clock was moved there [s].'),
        }),
      )
      .describe('The first thousand places where it was mended.'),
    mended_count: z.int().describe('Places where it was mended [-].'),
    rows_per_stamp: z.int().describe('Most rows that show one time and were spread until the next [-].'),
  })
  .meta({ id: 'ReadClock', description: 'How the clock of a log was read and mended.' });

/** How a file was read: every choice with its reason, and what was not read. */
export const readingSchema = z
  .object({
    says: z.string().describe('What was read and what was not, in one sentence.'),
    format: z.enum(['delimited', 'json_lines', 'parquet']),
    encoding: z.string().describe('Name of the encoding, such as utf-8 or windows-1252.'),
    byte_order_mark: z.boolean().describe('Whether the file begins with the mark of UTF-8.'),
    delimiter: z.string().describe('The character between cells; empty for one column.'),
    quote: z.string().describe('The character around cells; empty for none.'),
    decimal: z.string().describe('The decimal sign.'),
    thousands: z.string().describe('The mark between thousands; empty for none.'),
    preamble_lines: z.int().describe('Lines before the header [-].'),
    header_lines: z.int().describe('Lines of the header, unit row included [-].'),
    columns: z.array(columnSchema),
    rows_read: z.int().describe('Data rows that were read [-].'),
    rows_rejected: z
      .array(
        z.object({
          line: z.int().describe('Line of the file, from 1 [-].'),
          why: z.string().describe('Why, in words.'),
        }),
      )
      .describe('Lines that gave no row; the first thousand.'),
    rows_rejected_count: z.int().describe('Lines that gave no row, all of them [-].'),
    clock: clockSchema.nullable().describe('Null for a file that is no log.'),
    choices: z
      .array(
        z.object({
          about: z.string().describe('What the choice is about.'),
          column: z.string().exactOptional().describe('Column, from 1.'),
          says: z.string().describe('The evidence.'),
          sure: z.boolean().describe('False where a person should look at it.'),
        }),
      )
      .describe('Each choice of how the file was read, with its evidence.'),
    remarks: z.array(z.string()).describe('What a person should know before the file is used.'),
    preview: z
      .array(
        z.object({
          line: z.int().describe('Line of the file, from 1 [-].'),
          cells: z.array(z.string()).describe('Its cells as they stand.'),
        }),
      )
      .describe('The first rows as they are cut into cells.'),
  })
  .meta({ id: 'Reading', description: 'How a file was read.' });

/** How a file was read, as it leaves the program. */
export type ReadingReport = z.output<typeof readingSchema>;

/** Lines named in the first sentence. */
const LINES_NAMED = 5;

function sentence(rows: number, rejectedCount: number, rejected: TableEnd['rejected']): string {
  const read = `${rows} row${rows === 1 ? '' : 's'} read`;
  if (rejectedCount === 0) return `${read}; every line of the table gave one.`;
  const named = rejected.slice(0, LINES_NAMED).map(({ line, why }) => `line ${line}: ${why}`);
  const more = rejectedCount > named.length ? `; and ${rejectedCount - named.length} more` : '';
  return `${read}; ${rejectedCount} line${rejectedCount === 1 ? '' : 's'} not: ${named.join('; ')}${more}.`;
}

/**
 * States how a file was read.
 *
 * @param end - what became of the file [record], from a `LogReader` or a `TableReader`
 * @returns the report [record]
 * @source none: bookkeeping
 * @example
 * const reader = new LogReader();
 * reader.push(Uint8Array.from('t [s];U [V]\n0,1;41,5\n0,2;41,7\n', (c) => c.charCodeAt(0)));
 * stateReading(reader.end().value.end).says // => "2 rows read; every line of the table gave one."
 */
export function stateReading(end: LogEnd | TableEnd): ReadingReport {
  const { reading, rowsRead, rejectedCount, rejected } = end;
  const { encoding, dialect, marks } = reading;
  const clock = 'clock' in end ? end.clock : undefined;
  return {
    says: sentence(rowsRead, rejectedCount, rejected),
    format: reading.format,
    encoding: encoding === 'utf-8-bom' ? 'utf-8' : encoding,
    byte_order_mark: encoding === 'utf-8-bom',
    delimiter: dialect.delimiter,
    quote: dialect.quote,
    decimal: marks.decimal,
    thousands: marks.thousands,
    preamble_lines: reading.preambleLines,
    header_lines: reading.headerLines,
    columns: reading.columns.map(({ name, quantity, unit, says, asks }) => ({
      name,
      quantity: quantity ?? null,
      unit: unit?.name ?? null,
      says,
      sure: !asks,
    })),
    rows_read: rowsRead,
    rows_rejected: rejected.map(({ line, why }) => ({ line, why })),
    rows_rejected_count: rejectedCount,
    clock: clock
      ? {
          kind: clock.kind,
          says: clock.says,
          begins: clock.begins ?? null,
          counts: reading.clock.counts ?? null,
          zone: reading.clock.zone === undefined ? null : zoneWord(reading.clock.zone),
          date_order: dateOrderOf(reading),
          interval_s: reading.clock.interval ?? null,
          mended: clock.notes.map(({ kind, row, by_s }) => ({ kind, row, by_s })),
          mended_count: clock.noteCount,
          rows_per_stamp: clock.sharedBy,
        }
      : null,
    choices: choicesOf(reading),
    remarks: [...end.remarks],
    preview: reading.preview.map((cells, index) => ({
      line: reading.previewLines[index]!,
      cells: [...cells],
    })),
  };
}

function dateOrderOf({ columns }: TableReading): 'dmy' | 'mdy' | 'ymd' | null {
  const dated = columns.find(
    ({ quantity, moment }) =>
      (quantity === 'time' || quantity === 'date') && moment && moment.parts !== 'time',
  );
  return dated?.moment?.order ?? null;
}

function choicesOf({ choices }: TableReading): ReadingReport['choices'] {
  return choices.map(({ about, column, says, sure }) => ({
    about,
    ...(column === undefined ? {} : { column }),
    says,
    sure,
  }));
}
