import type { Outcome } from '../issue/index.ts';
import type { ColumnQuantity } from './column-name.ts';
import { markLength, textOf, Utf16ToUtf8 } from './encoding.ts';
import type { TableColumn } from './guess-columns.ts';
import { readMoment } from './moment-cell.ts';
import {
  type PlannedColumn,
  planColumns,
  readCell,
  siColumns,
  storeCell,
  type UnreadCells,
  unreadCells,
} from './planned-column.ts';
import { type GivenReading, guessTable, type TableReading } from './table-reading.ts';

/** Rows of a table in file order, in SI. */
export interface TableBatch {
  /** Number of the data row in the file, from 1; a damaged row keeps its number [-]. */
  readonly row: Float64Array;
  /** Line of the file on which it starts, from 1 [-]. */
  readonly line: Float64Array;
  /**
   * Numbers of each quantity in SI; moments in s since 1970, or since midnight where they have no date. NaN: a cell that
   * is empty or could not be read.
   */
  readonly columns: { readonly [Q in ColumnQuantity]?: Float64Array };
  /** Cells of the columns that hold text, by their place in the table; only where they were asked for. */
  readonly texts: readonly (readonly string[] | undefined)[];
}

/** What reads a file of rows piece by piece, whatever its format. */
export interface TableSource {
  /** How the file is read; undefined until enough of it has come. */
  readonly reading: TableReading | undefined;
  /** Takes the next bytes and gives the batches that they complete. */
  push(bytes: Uint8Array): readonly TableBatch[];
  /** Tells that no more bytes come; gives what is left, and what became of the file. */
  end(): Outcome<{ readonly batches: readonly TableBatch[]; readonly end: TableEnd }>;
}

/** A line that gave no row, and why. */
export interface RejectedLine {
  /** From 1 [-]. */
  readonly line: number;
  readonly why: string;
}

/** What became of a whole file. */
export interface TableEnd {
  readonly reading: TableReading;
  /** Rows that were given [-]. */
  readonly rowsRead: number;
  /** Lines that gave none [-]; the list holds the first of them. */
  readonly rejectedCount: number;
  readonly rejected: readonly RejectedLine[];
  /** Blank lines behind the header [-]. */
  readonly blankLines: number;
  readonly unread: readonly UnreadCells[];
  /** Lines on which the header stands again [-]. */
  readonly headerAgain: readonly number[];
  /** What else a person should know. */
  readonly remarks: readonly string[];
}

/** Options of a reader. */
export interface TableReaderOptions {
  /** Rows of a batch [-]. */
  readonly batchRows?: number;
  /** Whether cells of columns that hold text are given too; slower. */
  readonly texts?: boolean;
  /** Whether JSON lines are given as they come, the reading told by the first of them: for rows that are live. */
  readonly eager?: boolean;
}

const HEAD_BYTES = 1 << 18;
const BATCH_ROWS = 8192;
/** Longest line that is read [bytes]. */
const LINE_MOST = 1 << 20;
const REJECTED_KEPT = 1000;

const [LF, CR, SPACE, MINUS, PLUS, ZERO] = [10, 13, 32, 45, 43, 48];
const POWERS = Float64Array.from({ length: 23 }, (_, power) => Number(`1e${power}`));

/** What is done with a cell: a kind of 0 is passed over. */
const NUMBER = 1;
const MOMENT = 2;

/** How one cell of a row is read in the quick walk. */
interface Plan {
  readonly kinds: Uint8Array;
  readonly columns: readonly PlannedColumn[];
  /** Column to which a cell goes, by its place. */
  readonly slots: Int32Array;
}

interface Cell {
  readonly text: string;
  readonly quoted: boolean;
}

/**
 * Reads a delimited file piece by piece into numbers in SI. Memory does not grow with the file. Nothing is dropped in
 * silence: what gave no row or no number is counted, with line numbers for the first thousand.
 *
 * Rows that are as expected take a quick walk over the bytes; any other is cut and judged cell by cell.
 */
export class TableReader implements TableSource {
  readonly #given: GivenReading;
  readonly #batchRows: number;
  readonly #texts: boolean;
  #head: Uint8Array[] = [];
  #headLength = 0;
  #reading: TableReading | undefined;
  #failed: Outcome<never> | undefined;
  #wide: Utf16ToUtf8 | undefined;
  #carry: Uint8Array = new Uint8Array(0);
  /** Inside a line that is too long to be read. */
  #skipping = false;
  #plan: Plan = { kinds: new Uint8Array(0), columns: [], slots: new Int32Array(0) };
  #texted: (string[] | undefined)[] = [];
  #rows = new Float64Array(0);
  #lines = new Float64Array(0);
  #filled = 0;
  #rowNumber = 0;
  #line = 1;
  #eol = LF;
  #delimiter = 0;
  #quote = -1;
  #out: TableBatch[] = [];
  #rowsRead = 0;
  #rejectedCount = 0;
  #rejected: RejectedLine[] = [];
  #blankLines = 0;
  #headerAgain: number[] = [];
  /** Whether the row at hand is the last and no line end stands behind it. */
  #open = false;

  constructor(given: GivenReading = {}, { batchRows = BATCH_ROWS, texts = false }: TableReaderOptions = {}) {
    this.#given = given;
    this.#batchRows = batchRows;
    this.#texts = texts;
  }

  /** How the file is read; undefined until enough of it has come. */
  get reading(): TableReading | undefined {
    return this.#reading;
  }

  /** Takes the next bytes and gives the batches that they complete. */
  push(bytes: Uint8Array): readonly TableBatch[] {
    if (this.#failed) return [];
    if (this.#reading) this.#take(this.#wide ? this.#wide.push(bytes) : bytes);
    else {
      // the caller may use its buffer again
      this.#head.push(new Uint8Array(bytes));
      this.#headLength += bytes.length;
      if (this.#headLength >= HEAD_BYTES) this.#begin();
    }
    return this.#handOver();
  }

  /** Tells that no more bytes come; gives what is left, and what became of the file. */
  end(): Outcome<{ readonly batches: readonly TableBatch[]; readonly end: TableEnd }> {
    if (!this.#reading && !this.#failed) this.#begin();
    if (this.#failed) return this.#failed;
    if (this.#carry.length > 0) {
      this.#open = true;
      if (this.#skipping) this.#skipping = false;
      else this.#scan(withLineEnd(this.#carry, this.#eol), true);
      this.#carry = new Uint8Array(0);
    }
    this.#flush();
    if (this.#rowsRead === 0 && this.#rejectedCount === 0) {
      return refusedTable('The file has a header but no row of data.');
    }
    return {
      ok: true,
      value: {
        batches: this.#handOver(),
        end: {
          reading: this.#reading!,
          rowsRead: this.#rowsRead,
          rejectedCount: this.#rejectedCount,
          rejected: this.#rejected,
          blankLines: this.#blankLines,
          unread: unreadCells(this.#plan.columns),
          headerAgain: this.#headerAgain,
          remarks: [],
        },
      },
    };
  }

  #handOver(): readonly TableBatch[] {
    const out = this.#out;
    this.#out = [];
    return out;
  }

  /** Finds how the file is read, then reads what has come so far. */
  #begin(): void {
    const all = joined(this.#head);
    this.#head = [];
    if (all.length >= HEAD_BYTES && !all.includes(LF) && !all.includes(CR)) {
      this.#failed = refusedTable(
        `The first line does not end within ${HEAD_BYTES / 1024} KiB: this is no table of one row per line.`,
      );
      return;
    }
    const outcome = guessTable(
      wholeLines(withoutRoom(all.subarray(0, HEAD_BYTES)), all.length > HEAD_BYTES),
      this.#given,
    );
    if (!outcome.ok) {
      this.#failed = outcome;
      return;
    }
    const reading = outcome.value;
    this.#reading = reading;
    const { dialect, encoding } = reading;
    if (encoding === 'utf-16le' || encoding === 'utf-16be') this.#wide = new Utf16ToUtf8(encoding);
    this.#delimiter = dialect.delimiter === '' ? -1 : dialect.delimiter.charCodeAt(0);
    this.#quote = dialect.quote === '' ? -1 : dialect.quote.charCodeAt(0);
    const body = all.subarray(markLength(encoding, all));
    const plain = this.#wide ? this.#wide.push(body) : body;
    this.#eol = plain.includes(LF) || !plain.includes(CR) ? LF : CR;
    this.#plan = planOf(reading, planColumns(reading, this.#batchRows));
    this.#texted = this.#texts ? reading.columns.map(({ holds }) => (holds === 'text' ? [] : undefined)) : [];
    this.#rows = new Float64Array(this.#batchRows);
    this.#lines = new Float64Array(this.#batchRows);
    this.#take(plain);
  }

  #take(piece: Uint8Array): void {
    let bytes = piece;
    if (this.#skipping) {
      const end = bytes.indexOf(this.#eol);
      if (end < 0) return;
      this.#skipping = false;
      this.#line += 1;
      bytes = bytes.subarray(end + 1);
    }
    if (this.#carry.length > 0) bytes = joined([this.#carry, bytes]);
    const end = bytes.lastIndexOf(this.#eol) + 1;
    const done = end === 0 ? 0 : this.#scan(end === bytes.length ? bytes : bytes.subarray(0, end), false);
    const rest = bytes.subarray(done);
    if (rest.length > LINE_MOST) {
      this.#reject(this.#line, `longer than ${LINE_MOST / 1024} KiB`);
      this.#skipping = true;
      this.#carry = new Uint8Array(0);
      const next = rest.indexOf(this.#eol);
      // an open quote, not a long line: go on behind its first line
      if (next >= 0) this.#take(new Uint8Array(rest));
    } else this.#carry = new Uint8Array(rest);
  }

  /** Reads whole rows; gives the place behind the last that was complete. */
  #scan(bytes: Uint8Array, last: boolean): number {
    const { kinds, columns, slots } = this.#plan;
    const width = kinds.length;
    const delimiter = this.#delimiter;
    const repeated = this.#reading!.dialect.repeated;
    const quote = this.#quote;
    const eol = this.#eol;
    const decimal = this.#reading!.marks.decimal === ',' ? 44 : 46;
    const limit = bytes.length;
    const batch = this.#batchRows;
    const stores = columns.map(({ values }) => values);
    const moments = columns.map(({ column }) => column.moment);
    const skipsSpace = delimiter !== SPACE;
    const before = this.#reading!.preambleLines + this.#reading!.headerLines;
    const always = this.#texts;
    let at = 0;
    let filled = this.#filled;
    while (at < limit) {
      if (this.#line <= before) {
        at = bytes.indexOf(eol, at) + 1;
        this.#line += 1;
        continue;
      }
      const start = at;
      let good = !always;
      if (repeated) while (bytes[at] === delimiter) at += 1;
      for (let index = 0; good && index < width; index += 1) {
        const kind = kinds[index]!;
        let c = bytes[at]!;
        if (kind === NUMBER) {
          if (skipsSpace) while (c === SPACE) c = bytes[++at]!;
          let negative = false;
          if (c === MINUS) {
            negative = true;
            c = bytes[++at]!;
          } else if (c === PLUS) c = bytes[++at]!;
          const first = at;
          let mantissa = 0;
          let digit = c - ZERO;
          while (digit >= 0 && digit <= 9) {
            mantissa = mantissa * 10 + digit;
            c = bytes[++at]!;
            digit = c - ZERO;
          }
          let digits = at - first;
          let power = 0;
          if (c === decimal) {
            c = bytes[++at]!;
            const point = at;
            digit = c - ZERO;
            while (digit >= 0 && digit <= 9) {
              mantissa = mantissa * 10 + digit;
              c = bytes[++at]!;
              digit = c - ZERO;
            }
            power = at - point;
            digits += power;
          }
          // beyond 2^53 the product would be rounded twice
          if (digits === 0 || digits > 16 || mantissa > 9007199254740991) {
            good = false;
            break;
          }
          if (skipsSpace) while (c === SPACE) c = bytes[++at]!;
          const value = power === 0 ? mantissa : mantissa / POWERS[power]!;
          stores[slots[index]!]![filled] = negative ? -value : value;
        } else if (kind === MOMENT) {
          if (c === quote) {
            good = false;
            break;
          }
          const from = at;
          while (c !== delimiter && c !== eol) c = bytes[++at]!;
          const slot = slots[index]!;
          const { parts, order } = moments[slot]!;
          const to = bytes[at - 1] === CR ? at - 1 : at;
          const value = readMoment(bytes, from, to, parts, order);
          if (Number.isNaN(value)) {
            good = false;
            break;
          }
          stores[slot]![filled] = value;
        } else {
          if (c === quote || (skipsSpace && c === SPACE)) {
            good = false;
            break;
          }
          while (c !== delimiter && c !== eol) c = bytes[++at]!;
        }
        if (index < width - 1) {
          if (c !== delimiter) good = false;
          at += 1;
          if (repeated) while (bytes[at] === delimiter) at += 1;
        } else {
          if (repeated) while (bytes[at] === delimiter) at += 1;
          else if (c === delimiter) at += 1;
          if (bytes[at] === CR && eol === LF) at += 1;
          if (bytes[at] !== eol) good = false;
          at += 1;
        }
      }
      if (good) {
        this.#rowNumber += 1;
        this.#rows[filled] = this.#rowNumber;
        this.#lines[filled] = this.#line;
        this.#line += 1;
        filled += 1;
      } else {
        this.#filled = filled;
        const next = this.#judge(bytes, start, limit, last);
        if (next < 0) return start;
        at = next;
        filled = this.#filled;
      }
      if (filled === batch) {
        this.#filled = filled;
        this.#flush();
        filled = 0;
      }
    }
    this.#filled = filled;
    return at;
  }

  /** Cuts one row and judges it; gives the place behind it, or -1 where more bytes are needed. */
  #judge(bytes: Uint8Array, start: number, limit: number, last: boolean): number {
    const reading = this.#reading!;
    const cut = this.#cut(bytes, start, limit);
    const { columns } = this.#plan;
    const width = this.#plan.kinds.length;
    const open = !cut || (cut.strays && cut.lines > 1);
    if (!cut || open) {
      if (!cut && !last && limit - start <= LINE_MOST) return -1;
      this.#reject(this.#line, 'a quote is opened and not closed');
      this.#rowNumber += 1;
      this.#line += 1;
      return bytes.indexOf(this.#eol, start) + 1;
    }
    const { cells: all, end, lines } = cut;
    const line = this.#line;
    this.#line += lines;
    const cells = all.length === width + 1 && all[width]!.text.trim() === '' ? all.slice(0, width) : all;
    if (cells.every(({ text, quoted }) => !quoted && text.trim() === '')) {
      if (cells.length <= 1) this.#blankLines += 1;
      else this.#reject(line, 'every cell is empty');
      return end;
    }
    if (reading.comment !== '' && cells[0]!.text.trimStart().startsWith(reading.comment)) {
      this.#reject(line, 'a remark');
      return end;
    }
    const same = (written: (column: TableColumn) => string): boolean =>
      cells.length >= width &&
      reading.columns.filter(
        (column, index) => written(column) !== '' && cells[index]!.text.trim() === written(column),
      ).length >
        width / 2;
    if (same(({ name }) => name)) {
      this.#headerAgain.push(line);
      if (this.#headerAgain.length > REJECTED_KEPT) this.#headerAgain.pop();
      this.#reject(line, 'the header again');
      return end;
    }
    const read = columns.map((planned) => {
      const cell = cells[planned.index];
      return cell === undefined ? undefined : readCell(planned, cell.text, reading.marks);
    });
    const numbers = read.filter((value) => typeof value === 'number').length;
    if (cells.length !== width) {
      const cutOff = this.#open && end >= limit && cells.length < width;
      const count = `${cells.length} cell${cells.length === 1 ? '' : 's'} where ${width} stand`;
      this.#reject(line, cutOff ? `the last line is cut: ${count}` : count);
      if (numbers > 0) this.#rowNumber += 1;
      return end;
    }
    const unreadable = read.filter((value) => value === undefined).length;
    if (numbers === 0 && (unreadable > 0 || columns.length === 0)) {
      this.#reject(
        line,
        `no number where numbers stand: "${cells
          .map(({ text }) => text)
          .join(' ')
          .slice(0, 40)}"`,
      );
      return end;
    }
    this.#rowNumber += 1;
    const at = this.#filled;
    columns.forEach((planned, slot) => {
      storeCell(planned, at, read[slot], line, cells[planned.index]!.text);
    });
    this.#texted.forEach((texts, index) => {
      texts?.push(cells[index]!.text.trim());
    });
    this.#rows[at] = this.#rowNumber;
    this.#lines[at] = line;
    this.#filled = at + 1;
    return end;
  }

  /** Cells of the record that starts there, or undefined where an open quote runs past what has come. */
  #cut(
    bytes: Uint8Array,
    start: number,
    limit: number,
  ): { cells: Cell[]; end: number; lines: number; strays: boolean } | undefined {
    const { repeated, insideQuote } = this.#reading!.dialect;
    const { encoding } = this.#reading!;
    const [delimiter, quote, eol] = [this.#delimiter, this.#quote, this.#eol];
    const cells: Cell[] = [];
    let lines = 1;
    let strays = false;
    let at = start;
    if (repeated) while (bytes[at] === delimiter) at += 1;
    for (;;) {
      let from = at;
      if (delimiter !== SPACE) while (bytes[from] === SPACE) from += 1;
      let text = '';
      const quoted = quote >= 0 && bytes[from] === quote;
      if (quoted) {
        at = from + 1;
        let piece = at;
        for (;;) {
          if (at >= limit) return undefined;
          const c = bytes[at]!;
          if (c === eol) lines += 1;
          if (insideQuote === 'backslash' && c === 92) {
            text += textOf(bytes, piece, at, encoding);
            piece = at + 1;
            at += 2;
          } else if (c !== quote) at += 1;
          else if (insideQuote === 'doubled' && bytes[at + 1] === quote) {
            text += textOf(bytes, piece, at + 1, encoding);
            at += 2;
            piece = at;
          } else break;
        }
        text += textOf(bytes, piece, at, encoding);
        at += 1;
      }
      const rest = at;
      while (bytes[at] !== delimiter && bytes[at] !== eol) at += 1;
      const to = bytes[at] === eol && bytes[at - 1] === CR && at > rest ? at - 1 : at;
      const behind = textOf(bytes, rest, to, encoding);
      strays ||= quoted && behind.trim() !== '';
      text += behind;
      cells.push({ text, quoted });
      if (bytes[at] === eol) break;
      at += 1;
      if (repeated) {
        while (bytes[at] === delimiter) at += 1;
        if (bytes[at] === eol || (bytes[at] === CR && bytes[at + 1] === eol)) {
          at = bytes[at] === CR ? at + 1 : at;
          break;
        }
      }
    }
    return { cells, end: at + 1, lines, strays };
  }

  #reject(line: number, why: string): void {
    this.#rejectedCount += 1;
    if (this.#rejected.length < REJECTED_KEPT) this.#rejected.push({ line, why });
  }

  /** Gives the rows at hand away, their numbers in SI. */
  #flush(): void {
    const count = this.#filled;
    if (count === 0) return;
    this.#out.push({
      row: this.#rows.slice(0, count),
      line: this.#lines.slice(0, count),
      columns: siColumns(this.#plan.columns, count),
      texts: this.#texted.map((texts) => texts?.splice(0)),
    });
    this.#rowsRead += count;
    this.#filled = 0;
  }
}

function planOf({ columns }: TableReading, planned: readonly PlannedColumn[]): Plan {
  const kinds = new Uint8Array(columns.length);
  const slots = new Int32Array(columns.length);
  planned.forEach(({ index, column }, slot) => {
    kinds[index] = column.holds === 'number' ? NUMBER : MOMENT;
    slots[index] = slot;
  });
  return { kinds, columns: planned, slots };
}

function refusedTable(message: string): Outcome<never> {
  return { ok: false, issues: [{ code: 'TABLE_NOT_READABLE', message, path: '' }] };
}

function joined(pieces: readonly Uint8Array[]): Uint8Array {
  if (pieces.length === 1) return pieces[0]!;
  const all = new Uint8Array(pieces.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const piece of pieces) {
    all.set(piece, at);
    at += piece.length;
  }
  return all;
}

function withLineEnd(bytes: Uint8Array, eol: number): Uint8Array {
  return joined([bytes, Uint8Array.of(eol)]);
}

/** Zero bytes in a row from which they are room that a logger keeps, not letters of two bytes [bytes]. */
const ROOM = 64;

/** Bytes up to where a logger has kept room behind what it wrote. */
function withoutRoom(bytes: Uint8Array): Uint8Array {
  let end = bytes.length;
  while (end > 0 && bytes[end - 1] === 0) end -= 1;
  if (bytes.length - end < ROOM) return bytes;
  // a last letter of two bytes may end in one of them
  const wide = bytes.subarray(0, end).includes(0);
  return bytes.subarray(0, wide ? end + (end % 2) : end);
}

/** Bytes up to the last line end, where they are cut; all of them where there is none. */
function wholeLines(bytes: Uint8Array, isCut: boolean): Uint8Array {
  const end = isCut ? Math.max(bytes.lastIndexOf(LF), bytes.lastIndexOf(CR)) : -1;
  return end > 0 ? bytes.subarray(0, end + 1) : bytes;
}
