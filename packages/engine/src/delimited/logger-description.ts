import { stringify } from 'yaml';
import type { z } from 'zod';
import {
  DOCUMENT_TEXT_MOST,
  type DocumentKind,
  documentCodes,
  documentJsonSchema,
  type JsonSchema,
  readDocument,
} from '../document/index.ts';
import type { Outcome } from '../issue/index.ts';
import type { Encoding } from './encoding.ts';
import { type GivenClock, zoneOf, zoneWord } from './given-clock.ts';
import type { GivenColumn } from './guess-columns.ts';
import { delimiterOf, delimiterWord, loggerSchema } from './logger-schema.ts';
import type { NumberMarks } from './number-cell.ts';
import type { GivenReading, TableReading } from './table-reading.ts';

/** Greatest size of a logger description [characters]. */
export const LOGGER_TEXT_MOST = DOCUMENT_TEXT_MOST;

const LOGGER: DocumentKind<typeof loggerSchema> = {
  name: 'logger description',
  versionField: 'furrow_logger',
  schema: loggerSchema,
  codes: documentCodes('LOGGER'),
};

/** A logger description as read. */
export interface ReadLogger {
  readonly name: string | undefined;
  /** What it says of how a file is read. */
  readonly given: GivenReading;
  /** SHA-256 of the content, in hex; layout and comments do not count. */
  readonly revision: string;
}

const QUOTES = { double: '"', single: "'", none: '' } as const;
const DECIMALS = { point: '.', comma: ',' } as const;
const DATE_ORDERS = { day_first: 'dmy', month_first: 'mdy', year_first: 'ymd' } as const;
const THOUSANDS = { none: '', point: '.', comma: ',', space: ' ', apostrophe: "'" } as const;

/**
 * Reads a logger description, YAML or JSON: how the files of one logger are read, or what is wrong with it and where.
 *
 * @param text - the file's content [text], at most 200 000 characters
 * @returns what it says and its revision, or the issues [record]
 * @source none: bookkeeping
 * @example
 * readLogger('furrow_logger: 1\ndelimiter: semicolon\ndecimal: comma').value.given // => {"delimiter":";","decimal":","}
 */
export function readLogger(text: string): Outcome<ReadLogger> {
  const outcome = readDocument(text, LOGGER, {
    wholeOf: (logger) => logger,
    contradictions: ({ columns = [] }) =>
      columns.flatMap(({ name, number, quantity }, index) => {
        if (name === undefined && number === undefined)
          return [
            {
              at: ['columns', index],
              message: 'A column needs its name or its place.',
              read: '',
              accepted: 'name or number',
            },
          ];
        const twice = columns.findIndex((other) => other.quantity === quantity) !== index;
        if (quantity === undefined || quantity === 'none' || !twice) return [];
        return [
          {
            at: ['columns', index, 'quantity'],
            message: `Two columns are called the ${quantity}.`,
            read: quantity,
            accepted: 'each quantity once',
          },
        ];
      }),
  });
  if (!outcome.ok) return outcome;
  const { whole, revision } = outcome.value;
  const given: GivenReading = {
    ...(whole.encoding === undefined ? {} : { encoding: whole.encoding as Encoding }),
    ...(whole.delimiter === undefined ? {} : { delimiter: delimiterOf(whole.delimiter) }),
    ...(whole.quote === undefined ? {} : { quote: QUOTES[whole.quote] }),
    ...(whole.quote_inside === undefined ? {} : { insideQuote: whole.quote_inside }),
    ...(whole.decimal === undefined ? {} : { decimal: DECIMALS[whole.decimal] }),
    ...(whole.thousands === undefined ? {} : { thousands: THOUSANDS[whole.thousands] }),
    ...(whole.preamble_lines === undefined ? {} : { preambleLines: whole.preamble_lines }),
    ...(whole.header_lines === undefined ? {} : { headerLines: whole.header_lines }),
    ...clockOf(whole),
    ...(whole.columns === undefined ? {} : { columns: whole.columns as readonly GivenColumn[] }),
  };
  return { ok: true, value: { name: whole.name, given, revision } };
}

/** What a description says of the clock, time between two rows included. */
function clockOf({ clock = {}, interval }: z.output<typeof loggerSchema>): { readonly clock?: GivenClock } {
  const { counts, zone, date_order: order } = clock;
  const given: GivenClock = {
    ...(counts === undefined ? {} : { counts }),
    ...(zone === undefined ? {} : { zone: zoneOf(zone) }),
    ...(order === undefined ? {} : { dateOrder: DATE_ORDERS[order] }),
    ...(interval === undefined ? {} : { interval }),
  };
  return Object.keys(given).length === 0 ? {} : { clock: given };
}

/** The same, as it is written. */
function clockWritten({ counts, zone, dateOrder, interval }: GivenClock): object {
  const clock = {
    ...(counts === undefined ? {} : { counts }),
    ...(zone === undefined ? {} : { zone: zoneWord(zone) }),
    ...(dateOrder === undefined ? {} : { date_order: keyOf(DATE_ORDERS, dateOrder) }),
  };
  return {
    ...(interval === undefined ? {} : { interval: `${interval} s` }),
    ...(Object.keys(clock).length === 0 ? {} : { clock }),
  };
}

function keyOf<Value extends string>(table: Readonly<Record<string, Value>>, value: Value): string {
  return Object.entries(table).find(([, each]) => each === value)![0];
}

/**
 * The logger description that has the next file of a logger read as this one was.
 *
 * Lines before the table are not fixed, as their number changes from file to file with many loggers.
 *
 * @param reading - how a file was read, corrections included [record], from `guessTable` or a reader
 * @param name - what the logger is called [text], at most 80 characters; empty for none
 * @returns the description [text], YAML
 * @source none: bookkeeping
 * @example
 * const head = Uint8Array.from('t [s];U [V]\n0,1;41,5\n0,2;41,7\n', (c) => c.charCodeAt(0));
 * readLogger(writeLogger(guessTable(head).value, 'bay 2')).value.given.decimal // => ","
 */
export function writeLogger(reading: TableReading, name: string): string {
  const { dialect, marks, columns } = reading;
  return stringify({
    furrow_logger: 1,
    ...(name === '' ? {} : { name }),
    encoding: reading.encoding,
    ...(dialect.delimiter === '' ? {} : { delimiter: delimiterWord(dialect.delimiter) }),
    decimal: keyOf(DECIMALS, marks.decimal),
    thousands: keyOf<NumberMarks['thousands']>(THOUSANDS, marks.thousands),
    ...clockWritten(reading.clock),
    columns: columns.map((column, index) => ({
      ...(column.name === '' ? { number: index + 1 } : { name: column.name }),
      quantity: column.quantity ?? 'none',
      ...(column.unit && column.quantity ? { unit: column.unit.name } : {}),
    })),
  });
}

/**
 * The JSON Schema (draft 2020-12) of a logger description, made from its one schema.
 *
 * @returns the JSON Schema [record]
 * @source JSON Schema draft 2020-12
 * @example
 * loggerJsonSchema()['title'] // => "Furrow logger description"
 */
export function loggerJsonSchema(): JsonSchema {
  return documentJsonSchema(loggerSchema, 'Furrow logger description');
}
