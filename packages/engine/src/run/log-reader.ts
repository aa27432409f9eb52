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
import { type Channel, type ClockNote, type LogBatch, quantitiesOf } from './log-batch.ts';

/** How the clock of a log was read and mended. */
export interface ClockReading {
  readonly kind: 'elapsed' | 'time_of_day' | 'date_and_time' | 'since_1970' | 'rows';
  readonly says: string;
  /** Moment of the first row (ISO 8601), with Z where its zone is known; undefined where nothing tells it. */
  readonly begins: string | undefined;
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

function refusedLog(message: string, accepted: string): Outcome<never> {
  return { ok: false, issues: [{ code: 'LOG_NOT_READABLE', message, path: '', accepted }] };
}

/** Makes rows whose time rises of the rows of a table, whatever file it came from. */
class LogMaker {
  #clock: ClockMender | undefined;
  #interval: number | undefined;
  #failed: Outcome<never> | undefined;
  #channels: readonly (readonly [Channel, ColumnQuantity])[] = [];
  #rowsRead = 0;
  /** Lines of rows that the clock may leave out, by the number of the row; only of rows without a readable time. */
  readonly #untimedLines = new Map<number, number>();

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
            begins: begins(end.reading, clock.start),
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
    this.#channels = quantitiesOf(batch.columns);
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
    const { clock: given } = reading;
    if (!has('time') || given.counts === 'rows') {
      this.#interval = given.interval ?? intervalOf(reading.preamble);
      if (this.#interval === undefined) {
        this.#failed = refusedLog(
          given.counts === 'rows'
            ? 'The rows are the clock, but neither the lines before the table nor anybody says how often a row was written.'
            : 'No column is a clock, and the lines before the table do not say how often a row was written.',
          'a column of time, or the time between two rows given',
        );
        return;
      }
    }
    const time = reading.columns.find(({ quantity }) => quantity === 'time');
    const tick = time?.unit ? time.unit.top / time.unit.bottom : 1;
    const ofDay =
      given.counts === undefined
        ? time?.moment?.parts === 'time' && !has('date')
        : given.counts === 'time_of_day' && !isDated(reading);
    const local =
      time?.moment !== undefined && !time.moment.zoned && (ofDay || isDated(reading) || has('date'));
    this.#clock = new ClockMender({ tick, ofDay, local });
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
    return this.#clock.push(rows, final).flatMap(({ time, row, others }): LogBatch[] => {
      if (time.length === 0) return [];
      this.#rowsRead += time.length;
      const channels: { [C in Channel]?: Float64Array } = {};
      this.#channels.forEach(([channel], index) => {
        channels[channel] = others[index]!;
      });
      return [{ time_s: time, row, channels }];
    });
  }

  #rowsOf({ row, line, columns }: TableBatch): ClockRows {
    const count = row.length;
    let time = columns.time;
    if (!time || this.#interval !== undefined) {
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
  readonly #maker = new LogMaker();

  /** @param given - what a person says of the log, such as a logger description [record] */
  constructor(given: GivenReading = {}) {
    this.#table = new AnyReader(given);
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
  const maker = new LogMaker();
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

function timeOf(columns: TableReading['columns']): TableReading['columns'][number] | undefined {
  return columns.find(({ quantity }) => quantity === 'time');
}

function isSince1970({ says }: TableReading['columns'][number]): boolean {
  return /since 1970/u.test(says);
}

/** Whether the times of a log have a date. */
function isDated({ columns }: TableReading): boolean {
  return (
    timeOf(columns)?.moment?.parts === 'both' ||
    columns.some(({ quantity, holds }) => quantity === 'date' && holds === 'moment')
  );
}

/** Moment of the first row, from its clock as read [s]. */
function begins(reading: TableReading, start: number): string | undefined {
  const time = timeOf(reading.columns);
  if (time === undefined || reading.clock.counts === 'rows' || Math.abs(start) > 8e12) return undefined;
  const { zone } = reading.clock;
  const utc = isDated(reading) ? time.moment?.zoned === true : time.unit !== undefined && isSince1970(time);
  if (utc) return new Date(1000 * start).toISOString();
  if (!isDated(reading)) return undefined;
  if (zone !== undefined) return new Date(1000 * (start - zone)).toISOString();
  return new Date(1000 * start).toISOString().replace('Z', '');
}

function clockWords(
  { columns, clock }: TableReading,
  interval: number | undefined,
): Pick<ClockReading, 'kind' | 'says'> {
  const time = timeOf(columns);
  if (interval !== undefined)
    return {
      kind: 'rows',
      says: `${time ? 'the column of time is left aside' : 'no column is a clock'}; a row every ${interval} s`,
    };
  if (!time) throw new Error('a log without a clock has a time between its rows');
  const name = time.name === '' ? `column ${columns.indexOf(time) + 1}` : `"${time.name}"`;
  if (time.moment) {
    const date = columns.find(({ quantity }) => quantity === 'date');
    if (time.moment.parts === 'both') return { kind: 'date_and_time', says: `${name}: ${time.says}` };
    if (date) return { kind: 'date_and_time', says: `"${date.name}" and ${name} together` };
    return clock.counts === 'elapsed'
      ? { kind: 'elapsed', says: `${name}: time since the start, as given` }
      : { kind: 'time_of_day', says: `${name}: ${time.says}` };
  }
  if (clock.counts === 'time_of_day')
    return { kind: 'time_of_day', says: `${name} in ${time.unit!.name} since midnight, as given` };
  return { kind: isSince1970(time) ? 'since_1970' : 'elapsed', says: `${name} in ${time.unit!.name}` };
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
  for (const { kind, row, by_s: by } of clock.notes) {
    if (kind !== 'daylight_saving') continue;
    remarks.push(
      by > 0
        ? `At row ${row} the clock was put back by an hour as daylight saving ended: an hour of local time stands twice, and the rows stay in their order.`
        : `At row ${row} the clock was put on by an hour as daylight saving began: an hour of local time is missing, and no time passed.`,
    );
  }
  for (const unread of end.unread) remarks.push(unreadWords(unread));
  if (clock.sharedBy > 1) {
    remarks.push(`Up to ${clock.sharedBy} rows show the same time; they were spread evenly until the next.`);
  }
  return remarks;
}

/** How many cells of a column gave no value, and what the first of each sort held. */
function unreadWords(unread: TableEnd['unread'][number]): string {
  const { column, missing, words, noValue, infinite, unreadable, examples, firstWord, firstInfinite } =
    unread;
  const such = (first: { readonly line: number; readonly read: string } | undefined): string =>
    `, such as "${first?.read}" on line ${first?.line}`;
  const empty = missing - words;
  const parts = [
    empty > 0 ? `${empty} empty` : '',
    words > 0 ? `${words} with a word for no value${such(firstWord)}` : '',
    noValue > 0 ? `${noValue} with a number that stands for no value` : '',
    infinite > 0 ? `${infinite} infinite${such(firstInfinite)}` : '',
    unreadable > 0 ? `${unreadable} not a number${such(examples[0])}` : '',
  ].filter((part) => part !== '');
  return `Cells of "${column}" without a value: ${parts.join(', ')}.`;
}
