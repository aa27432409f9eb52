import type { Outcome } from '../issue/index.ts';
import type { TextRow } from './dialect.ts';
import { guessEncoding, markLength, textOf } from './encoding.ts';
import { PLAIN_MARKS, readingOfNames } from './named-columns.ts';
import {
  type PlannedColumn,
  planColumns,
  readCell,
  siColumns,
  storeCell,
  unreadCells,
} from './planned-column.ts';
import type { GivenReading, TableReading } from './table-reading.ts';
import type { RejectedLine, TableBatch, TableEnd, TableReaderOptions, TableSource } from './table-source.ts';

const HEAD_BYTES = 1 << 18;
const LINE_MOST = 1 << 20;
const BATCH_ROWS = 8192;
const REJECTED_KEPT = 1000;
/** Most names that are looked at, and most readings of one frame. */
const NAMES_MOST = 200;
const FRAME_MOST = 100_000;
const LF = 10;

/** Values of one line by name; a list holds the readings of a frame. */
type Fields = ReadonlyMap<string, readonly unknown[]>;

/** Fields of one line, or why it has none. Objects inside it give names of two words. */
function fieldsOf(line: string): Fields | string {
  let read: unknown;
  try {
    read = JSON.parse(line);
  } catch {
    return `no JSON: "${line.slice(0, 40)}"`;
  }
  if (typeof read !== 'object' || read === null || Array.isArray(read)) return 'no JSON object';
  const fields = new Map<string, readonly unknown[]>();
  const add = (name: string, value: unknown, deep: number): string | undefined => {
    if (fields.size > NAMES_MOST) return `more than ${NAMES_MOST} names`;
    if (Array.isArray(value)) fields.set(name, value);
    else if (typeof value === 'object' && value !== null) {
      if (deep > 2) return undefined;
      for (const [inner, each] of Object.entries(value)) {
        const why = add(name === '' ? inner : `${name} ${inner}`, each, deep + 1);
        if (why !== undefined) return why;
      }
    } else fields.set(name, [value]);
    return undefined;
  };
  return add('', read, 0) ?? fields;
}

/** Whether a line holds one text that is no number, and nothing else: no reading does. */
function isWords(fields: Fields): boolean {
  const [only = []] = fields.values();
  return (
    fields.size === 1 && only.length === 1 && typeof only[0] === 'string' && Number.isNaN(Number(only[0]))
  );
}

function cellOf(value: unknown): string {
  if (typeof value === 'number' || typeof value === 'string') return String(value);
  return value === null || value === undefined ? '' : '?';
}

/**
 * Reads JSON lines piece by piece: an object per line with a value per name, or a list per name for a frame of several
 * readings. Memory does not grow with the file.
 */
export class JsonLinesReader implements TableSource {
  readonly #given: GivenReading;
  readonly #batchRows: number;
  readonly #eager: boolean;
  #reading: TableReading | undefined;
  #head: { line: number; fields: Fields }[] = [];
  #headLength = 0;
  #columns: readonly PlannedColumn[] = [];
  #names: readonly string[] = [];
  #late = new Set<string>();
  #carry: Uint8Array = new Uint8Array(0);
  #skipping = false;
  #line = 0;
  #rows: Float64Array;
  #lines: Float64Array;
  #filled = 0;
  #rowNumber = 0;
  #rowsRead = 0;
  #blankLines = 0;
  #rejectedCount = 0;
  #rejected: RejectedLine[] = [];
  #out: TableBatch[] = [];

  constructor(given: GivenReading = {}, { batchRows = BATCH_ROWS, eager = false }: TableReaderOptions = {}) {
    this.#given = given;
    this.#eager = eager;
    this.#batchRows = batchRows;
    this.#rows = new Float64Array(batchRows);
    this.#lines = new Float64Array(batchRows);
  }

  get reading(): TableReading | undefined {
    return this.#reading;
  }

  push(bytes: Uint8Array): readonly TableBatch[] {
    let from = 0;
    for (let at = bytes.indexOf(LF); at >= 0; at = bytes.indexOf(LF, from)) {
      this.#whole(bytes.subarray(from, at));
      from = at + 1;
    }
    this.#keep(bytes.subarray(from));
    if (this.#eager) this.#flush();
    return this.#handOver();
  }

  end(): Outcome<{ readonly batches: readonly TableBatch[]; readonly end: TableEnd }> {
    if (this.#carry.length > 0) this.#whole(new Uint8Array(0));
    if (!this.#reading) this.#begin();
    if (!this.#reading) {
      const message =
        this.#rejectedCount === 0
          ? 'The file is empty.'
          : `No line of the file is a JSON object; line ${this.#rejected[0]!.line}: ${this.#rejected[0]!.why}.`;
      return { ok: false, issues: [{ code: 'TABLE_NOT_READABLE', message, path: '' }] };
    }
    this.#flush();
    const late = [...this.#late].slice(0, 5);
    return {
      ok: true,
      value: {
        batches: this.#handOver(),
        end: {
          reading: this.#reading,
          rowsRead: this.#rowsRead,
          rejectedCount: this.#rejectedCount,
          rejected: this.#rejected,
          blankLines: this.#blankLines,
          unread: unreadCells(this.#columns),
          headerAgain: [],
          remarks:
            late.length > 0 ? [`Names that the first lines lack are not read: ${late.join(', ')}.`] : [],
        },
      },
    };
  }

  #handOver(): readonly TableBatch[] {
    const out = this.#out;
    this.#out = [];
    return out;
  }

  #keep(rest: Uint8Array): void {
    if (this.#skipping || rest.length === 0) return;
    if (this.#carry.length + rest.length > LINE_MOST) {
      this.#skipping = true;
      this.#carry = new Uint8Array(0);
      return;
    }
    const all = new Uint8Array(this.#carry.length + rest.length);
    all.set(this.#carry);
    all.set(rest, this.#carry.length);
    this.#carry = all;
  }

  /** Takes a line whose end has come; its beginning may have been kept. */
  #whole(rest: Uint8Array): void {
    this.#line += 1;
    this.#keep(rest);
    if (this.#skipping) {
      this.#skipping = false;
      this.#reject(this.#line, `longer than ${LINE_MOST / 1024} KiB`);
      return;
    }
    const bytes = this.#carry;
    this.#carry = new Uint8Array(0);
    const text = textOf(
      bytes,
      this.#line === 1 ? markLength('utf-8', bytes) : 0,
      bytes.length,
      'utf-8',
    ).trim();
    if (text === '') {
      this.#blankLines += 1;
      return;
    }
    const fields = fieldsOf(text);
    if (typeof fields === 'string') {
      this.#reject(this.#line, fields);
      return;
    }
    if (this.#reading) {
      this.#take(this.#line, fields);
      return;
    }
    this.#head.push({ line: this.#line, fields });
    this.#headLength += bytes.length;
    if (this.#headLength >= HEAD_BYTES || (this.#eager && !isWords(fields))) this.#begin();
  }

  #begin(): void {
    // lines of words before the first reading, such as what a rehearsal says of itself, are a preamble
    const first = this.#head.findIndex(({ fields }) => !isWords(fields));
    const preamble = this.#head
      .splice(0, Math.max(0, first))
      .map(({ fields }) => [...fields.values()].join(' '));
    const names = [...new Set(this.#head.flatMap(({ fields }) => [...fields.keys()]))].slice(0, NAMES_MOST);
    if (names.length === 0) return;
    const data = this.#head.slice(0, 4000).flatMap(({ line, fields }): TextRow[] =>
      framed(fields) === undefined
        ? []
        : Array.from({ length: Math.min(framed(fields)!, 50) }, (_, at) => ({
            line,
            lines: 1,
            cells: names.map((name) => cellOf(valueAt(fields, name, at))),
            quoted: names.map(() => false),
          })),
    );
    this.#names = names;
    this.#reading = readingOfNames(
      {
        format: 'json_lines',
        quoting: { quote: '"', insideQuote: 'backslash' },
        names,
        data,
        preamble,
        choices: [{ about: 'encoding', says: 'JSON lines, which are UTF-8', sure: true }],
      },
      this.#given,
    );
    this.#columns = planColumns(this.#reading, this.#batchRows);
    const head = this.#head;
    this.#head = [];
    for (const { line, fields } of head) this.#take(line, fields);
  }

  #take(line: number, fields: Fields): void {
    for (const name of fields.keys()) {
      if (!this.#names.includes(name) && this.#late.size < NAMES_MOST) this.#late.add(name);
    }
    const count = framed(fields);
    if (count === undefined) {
      this.#reject(line, 'the lists of a frame are not of one length');
      return;
    }
    if (count > FRAME_MOST) {
      this.#reject(line, `a frame of more than ${FRAME_MOST} readings`);
      return;
    }
    for (let at = 0; at < count; at += 1) {
      const cells = this.#columns.map(({ index }) => cellOf(valueAt(fields, this.#names[index]!, at)));
      const read = this.#columns.map((planned, slot) => readCell(planned, cells[slot]!, PLAIN_MARKS));
      if (this.#columns.length > 0 && !read.some((value) => typeof value === 'number')) {
        this.#reject(line, 'no number under the names of the first lines');
        return;
      }
      this.#rowNumber += 1;
      this.#columns.forEach((planned, slot) => {
        storeCell(planned, this.#filled, read[slot], line, cells[slot]!);
      });
      this.#rows[this.#filled] = this.#rowNumber;
      this.#lines[this.#filled] = line;
      this.#filled += 1;
      if (this.#filled === this.#batchRows) this.#flush();
    }
  }

  #reject(line: number, why: string): void {
    this.#rejectedCount += 1;
    if (this.#rejected.length < REJECTED_KEPT) this.#rejected.push({ line, why });
  }

  #flush(): void {
    const count = this.#filled;
    if (count === 0) return;
    this.#out.push({
      row: this.#rows.slice(0, count),
      line: this.#lines.slice(0, count),
      columns: siColumns(this.#columns, count),
      texts: [],
    });
    this.#rowsRead += count;
    this.#filled = 0;
  }
}

/** Readings of a line: the length of its lists, 1 where it has none; undefined where they are not of one length. */
function framed(fields: Fields): number | undefined {
  const lengths = new Set([...fields.values()].map(({ length }) => length).filter((length) => length !== 1));
  return lengths.size === 0 ? 1 : lengths.size === 1 ? [...lengths][0] : undefined;
}

/** A value that stands alone in a frame holds for each of its readings. */
function valueAt(fields: Fields, name: string, at: number): unknown {
  const values = fields.get(name);
  return values?.length === 1 ? values[0] : values?.[at];
}

/** Whether a file begins as JSON lines do. */
export function beginsAsJson(start: Uint8Array): boolean {
  const { encoding } = guessEncoding(start);
  const text = textOf(start, markLength(encoding, start), Math.min(start.length, 200), 'utf-8');
  return /^\s*\{\s*"/u.test(text);
}
