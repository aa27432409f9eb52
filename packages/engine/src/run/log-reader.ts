import {
  AnyReader,
  type Choice,
  type ColumnQuantity,
  type GivenReading,
  openParquet,
  type ParquetFile,
  type RejectedLine,
  type TableBatch,
  type TableEnd,
  type TableReading,
  type TableSource,
} from '../delimited/index.ts';
import type { Outcome } from '../issue/index.ts';
import { ClockMender, type ClockRows } from './clock.ts';
import { intervalOf } from './interval.ts';
import type { Channel, ClockNote, LogBatch } from './log-batch.ts';

/** How the clock of a log was read and mended. */
export interface ClockReading {
  readonly kind: 'elapsed' | 'time_of_day' | 'date_and_time' | 'since_1970' | 'rows';
  readonly says: string;
  /** What was mended, the first thousand. */
  readonly notes: readonly ClockNote[];
  /** How often something was mended [-]. */
  readonly noteCount: number;
  /** Rows that share one stamp, over which its time was spread [-]; 1 where each has its own. */
  readonly sharedBy: number;
}

/** What became of a log as it was read. */
export interface LogEnd {
  readonly reading: TableReading;
  readonly clock: ClockReading;
  /** Rows that were given [-]. */
  readonly rowsRead: number;
  /** Lines that gave none [-]; the list holds the first of them. */
  readonly rejectedCount: number;
  readonly rejected: readonly RejectedLine[];
  readonly unread: TableEnd['unread'];
  readonly choices: readonly Choice[];
  /** What a person should know before the log is used: further logs in the file, cells that were not read. */
  readonly remarks: readonly string[];
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

function refusedLog(message: string, accepted: string): Outcome<never> {
  return { ok: false, issues: [{ code: 'LOG_NOT_READABLE', message, path: '', accepted }] };
}

/** Makes rows whose time rises of the rows of a table, whatever file it came from. */
class LogMaker {
  readonly #given: GivenReading;
  #clock: ClockMender | undefined;
  #interval: number | undefined;
  #failed: Outcome<never> | undefined;
  #channels: readonly (readonly [Channel, ColumnQuantity])[] = [];
  #rowsRead = 0;
  /** Lines of rows that the clock may leave out, by the number of the row; only of rows without a readable time. */
  readonly #untimedLines = new Map<number, number>();

  constructor(given: GivenReading) {
    this.#given = given;
  }

  /** What was mended in the clock so far, ahead of the rows that are given; the first thousand. */
  get clockNotes(): readonly ClockNote[] {
    return this.#clock?.notes ?? [];
  }

  /** Takes rows of the table and gives those that are settled. */
  take(batch: TableBatch, reading: TableReading): readonly LogBatch[] {
    if (!this.#clock && !this.#failed) this.#begin(batch, reading);
    return this.#settle(batch, false);
  }

  /** Tells that no more rows come; gives what is left, and what became of the log. */
  finish(end: TableEnd): Outcome<{ readonly batches: readonly LogBatch[]; readonly end: LogEnd }> {
    const batches = this.#settle(undefined, true);
    if (this.#failed) return this.#failed;
    const clock = this.#clock;
    if (clock?.standsStill || this.#rowsRead === 0 || !clock) {
      return refusedLog(
        clock?.standsStill
          ? 'The clock of the log stands still: more than two hundred thousand rows show one and the same time.'
          : 'The log has no row that could be read.',
        'rows whose time rises, or the time between two rows given',
      );
    }
    const untimed = clock.untimed.map(
      (row): RejectedLine => ({ line: this.#untimedLines.get(row) ?? 0, why: 'the time cannot be read' }),
    );
    const rejected = [...end.rejected, ...untimed].sort((a, b) => a.line - b.line);
    return {
      ok: true,
      value: {
        batches,
        end: {
          reading: end.reading,
          clock: {
            ...clockWords(end.reading, this.#interval),
            notes: clock.notes,
            noteCount: clock.noteCount,
            sharedBy: clock.sharedBy,
          },
          rowsRead: this.#rowsRead,
          rejectedCount: end.rejectedCount + clock.untimedCount,
          rejected,
          unread: end.unread,
          choices: end.reading.choices,
          remarks: remarksOf(end, clock),
        },
      },
    };
  }

  /** Sets clock and channels by the reading, once. */
  #begin(batch: TableBatch, reading: TableReading): void {
    const has = (quantity: ColumnQuantity): boolean => batch.columns[quantity] !== undefined;
    this.#channels = SOURCES.flatMap(([channel, quantities]) => {
      const quantity = quantities.find(has);
      return quantity ? [[channel, quantity] as const] : [];
    });
    if (this.#channels.length === 0) {
      const names = reading.columns.map(({ name }, index) =>
        name === '' ? `column ${index + 1}` : `"${name}"`,
      );
      this.#failed = refusedLog(
        `No column could be told to be a voltage, a current, a travel, a position, a feed or the air. The file has ${names.join(', ')}.`,
        'a header with units, or a logger description that says what each column is',
      );
      return;
    }
    if (!has('time')) {
      this.#interval = this.#given.interval ?? intervalOf(reading.preamble);
      if (this.#interval === undefined) {
        this.#failed = refusedLog(
          'No column is a clock, and the lines before the table do not say how often a row was written.',
          'a column of time, or the time between two rows given',
        );
        return;
      }
    }
    const time = reading.columns.find(({ quantity }) => quantity === 'time');
    const tick = time?.unit ? time.unit.top / time.unit.bottom : 1;
    this.#clock = new ClockMender({ tick, ofDay: time?.moment?.parts === 'time' && !has('date') });
  }

  #settle(batch: TableBatch | undefined, final: boolean): readonly LogBatch[] {
    if (this.#failed || !this.#clock) return [];
    const rows = batch
      ? this.#rowsOf(batch)
      : {
          time: new Float64Array(0),
          row: new Float64Array(0),
          others: this.#channels.map(() => new Float64Array(0)),
        };
    const settled = this.#clock.push(rows, final);
    const count = settled.time.length;
    if (count === 0) return [];
    this.#rowsRead += count;
    const channels: { [C in Channel]?: Float64Array } = {};
    this.#channels.forEach(([channel], index) => {
      channels[channel] = settled.others[index]!;
    });
    return [{ time_s: settled.time, row: settled.row, channels }];
  }

  #rowsOf({ row, line, columns }: TableBatch): ClockRows {
    const count = row.length;
    let time = columns.time;
    if (!time) {
      time = new Float64Array(count);
      for (let at = 0; at < count; at += 1) time[at] = (row[at]! - 1) * this.#interval!;
    } else if (columns.date) {
      for (let at = 0; at < count; at += 1) time[at]! += columns.date[at]!;
    }
    if (this.#untimedLines.size < 1000) {
      for (let at = 0; at < count; at += 1) {
        if (Number.isNaN(time[at])) this.#untimedLines.set(row[at]!, line[at]!);
      }
    }
    return { time, row, others: this.#channels.map(([, quantity]) => columns[quantity]!) };
  }
}

/**
 * Reads a log piece by piece, delimited text of whatever kind the logger wrote, or JSON lines, into rows in SI whose time
 * rises. Memory does not grow with the log.
 *
 * Where a log cannot be read it gives no rows, and `end` says why.
 */
export class LogReader {
  readonly #table: TableSource;
  readonly #maker: LogMaker;

  /** @param given - what a person says of the log, such as a logger description [record] */
  constructor(given: GivenReading = {}) {
    this.#table = new AnyReader(given);
    this.#maker = new LogMaker(given);
  }

  /** How the log is read; undefined until enough of it has come. */
  get reading(): TableReading | undefined {
    return this.#table.reading;
  }

  /** What was mended in the clock so far, ahead of the rows that are given; the first thousand. */
  get clockNotes(): readonly ClockNote[] {
    return this.#maker.clockNotes;
  }

  /** Takes the next bytes and gives the rows that they settle. */
  push(bytes: Uint8Array): readonly LogBatch[] {
    return this.#made(this.#table.push(bytes));
  }

  /** Tells that no more bytes come; gives what is left, and what became of the log. */
  end(): Outcome<{ readonly batches: readonly LogBatch[]; readonly end: LogEnd }> {
    const outcome = this.#table.end();
    if (!outcome.ok) return outcome;
    const early = this.#made(outcome.value.batches);
    const made = this.#maker.finish(outcome.value.end);
    return made.ok
      ? { ok: true, value: { ...made.value, batches: [...early, ...made.value.batches] } }
      : made;
  }

  #made(batches: readonly TableBatch[]): readonly LogBatch[] {
    return batches.flatMap((batch) => this.#maker.take(batch, this.#table.reading!));
  }
}

/**
 * Reads a log from a Parquet file into rows in SI whose time rises.
 *
 * @param file - the file [record], its length and its pieces
 * @param take - is handed the rows as they settle, with what was mended in the clock since the last [function], in the order of the file
 * @param given - what a person says of the log [record], any part
 * @returns what became of the log, or why it cannot be read [record]
 * @source Apache Parquet, as read by hyparquet
 * @example
 * const torn = { byteLength: 4, slice: async () => new ArrayBuffer(4) };
 * readParquetLog(torn, () => undefined).then(({ issues }) => issues[0].code) // => "TABLE_NOT_READABLE"
 */
export async function readParquetLog(
  file: ParquetFile,
  take: (batch: LogBatch, notes: readonly ClockNote[]) => void,
  given: GivenReading = {},
): Promise<Outcome<LogEnd>> {
  const table = await openParquet(file, given);
  if (!table.ok) return table;
  const maker = new LogMaker(given);
  let told = 0;
  const hand = (batches: readonly LogBatch[]): void => {
    batches.forEach((batch) => {
      const notes = maker.clockNotes;
      take(batch, notes.slice(told));
      told = notes.length;
    });
  };
  for await (const batch of table.value.batches()) hand(maker.take(batch, table.value.reading));
  const made = maker.finish(table.value.end());
  if (!made.ok) return made;
  hand(made.value.batches);
  return { ok: true, value: made.value.end };
}

function clockWords(
  { columns }: TableReading,
  interval: number | undefined,
): Pick<ClockReading, 'kind' | 'says'> {
  const time = columns.find(({ quantity }) => quantity === 'time');
  if (!time) return { kind: 'rows', says: `no column is a clock; a row every ${interval} s` };
  const name = time.name === '' ? `column ${columns.indexOf(time) + 1}` : `"${time.name}"`;
  if (time.moment) {
    const date = columns.find(({ quantity }) => quantity === 'date');
    if (time.moment.parts === 'both') return { kind: 'date_and_time', says: `${name}: ${time.says}` };
    if (date) return { kind: 'date_and_time', says: `"${date.name}" and ${name} together` };
    return { kind: 'time_of_day', says: `${name}: ${time.says}` };
  }
  const since1970 = /since 1970/u.test(time.says);
  return { kind: since1970 ? 'since_1970' : 'elapsed', says: `${name} in ${time.unit!.name}` };
}

function remarksOf(end: TableEnd, clock: ClockMender): readonly string[] {
  const remarks: string[] = [...end.remarks];
  const restarts = clock.notes.filter(({ kind }) => kind === 'set_back').length;
  if (end.headerAgain.length > 0) {
    const lines = end.headerAgain.slice(0, 5).join(', ');
    remarks.push(
      restarts > 0
        ? `The header stands again on line ${lines} and the clock begins anew: the file holds more than one log, read one after the other.`
        : `The header stands again on line ${lines}.`,
    );
  }
  for (const { column, missing, noValue, infinite, unreadable, examples } of end.unread) {
    const parts = [
      missing > 0 ? `${missing} empty` : '',
      noValue > 0 ? `${noValue} with a number that stands for no value` : '',
      infinite > 0 ? `${infinite} infinite` : '',
      unreadable > 0
        ? `${unreadable} not a number, such as "${examples[0]?.read}" on line ${examples[0]?.line}`
        : '',
    ].filter((part) => part !== '');
    remarks.push(`Cells of "${column}" without a value: ${parts.join(', ')}.`);
  }
  if (clock.sharedBy > 1) {
    remarks.push(`Up to ${clock.sharedBy} rows show the same time; they were spread evenly until the next.`);
  }
  return remarks;
}
