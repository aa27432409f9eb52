import { z } from 'zod';
import { amount, count, described, text } from '../document/index.ts';
import { COLUMN_QUANTITIES } from './column-name.ts';
import { ENCODINGS } from './encoding.ts';
import { CLOCK_COUNTS, zoneOf } from './given-clock.ts';

const column = z.strictObject({
  name: text(120, { title: 'Name', help: 'The column as the header names it.' }).optional(),
  number: count(1, 10_000, { title: 'Place', help: 'Its place, from 1, where it has no name.' }).optional(),
  quantity: described(z.enum([...COLUMN_QUANTITIES, 'none']), {
    title: 'Quantity',
    help: 'What it holds; none: it is not used.',
  }).optional(),
  unit: text(30, { title: 'Unit', help: 'Its unit as written, such as V, 0.1 V, cm/min or psi.' }).optional(),
});

/** How the files of one logger are read: the one source of its types, its validation and its JSON Schema. */
export const loggerSchema = z.strictObject({
  furrow_logger: described(z.literal(1), { title: 'Version', help: 'Version of the logger description.' }),
  name: text(80, { title: 'Name', help: 'What the logger is called in the shop.' }).optional(),
  encoding: described(z.enum(ENCODINGS as [string, ...string[]]), {
    title: 'Encoding',
    help: 'How bytes stand for characters.',
  }).optional(),
  delimiter: text(9, {
    title: 'Delimiter',
    help: 'comma, semicolon, tab, space, bar, or the character itself.',
  })
    .refine((written) => delimiterOf(written) !== undefined, {
      message: 'The delimiter is one character, or one of these words.',
      params: { accepted: 'comma, semicolon, tab, space, bar, or one character' },
    })
    .optional(),
  quote: described(z.enum(['double', 'single', 'none']), {
    title: 'Quote',
    help: 'Around cells that hold a delimiter.',
  }).optional(),
  quote_inside: described(z.enum(['doubled', 'backslash']), {
    title: 'Quote inside',
    help: 'How the quote is written inside a quoted cell.',
  }).optional(),
  decimal: described(z.enum(['point', 'comma']), {
    title: 'Decimal sign',
    help: 'Of the numbers.',
  }).optional(),
  thousands: described(z.enum(['none', 'point', 'comma', 'space', 'apostrophe']), {
    title: 'Thousands',
    help: 'The mark between thousands.',
  }).optional(),
  preamble_lines: count(0, 100_000, { title: 'Lines before', help: 'Lines before the header.' }).optional(),
  header_lines: count(0, 100, {
    title: 'Header',
    help: 'Lines of the header, unit row included.',
  }).optional(),
  interval: amount(
    'time',
    { least: 1e-6, most: 3600 },
    { title: 'Interval', help: 'Time between two rows, where no column is a clock.' },
  ).optional(),
  clock: z
    .strictObject({
      counts: described(z.enum(CLOCK_COUNTS), {
        title: 'Counts',
        help: 'elapsed, time_of_day (anew at midnight), or rows: the column of time is left aside.',
      }).optional(),
      zone: text(9, { title: 'Zone', help: 'Of times written without one, such as +01:00.' })
        .refine((written) => zoneOf(written) !== undefined, {
          message: 'The zone is not read.',
          params: { accepted: 'UTC, or hours and minutes east of Greenwich such as +01:00' },
        })
        .optional(),
      date_order: described(z.enum(['day_first', 'month_first', 'year_first']), {
        title: 'Dates',
        help: 'In which order day, month and year stand.',
      }).optional(),
    })
    .optional(),
  columns: z.array(column).max(200).optional(),
});

const DELIMITER_WORDS: Readonly<Record<string, string>> = {
  comma: ',',
  semicolon: ';',
  tab: '\t',
  space: ' ',
  bar: '|',
};

/** The character that a description means; undefined where it is more than one. */
export function delimiterOf(written: string): string | undefined {
  return DELIMITER_WORDS[written] ?? (written.length === 1 ? written : undefined);
}

/** How a delimiter is written in a description. */
export function delimiterWord(delimiter: string): string {
  return Object.entries(DELIMITER_WORDS).find(([, character]) => character === delimiter)?.[0] ?? delimiter;
}
