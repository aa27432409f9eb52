import type { Outcome } from '../issue/index.ts';
import { markLength, Utf16ToUtf8 } from './encoding.ts';
import { joined, wholeLines, withLineEnd, withoutRoom } from './head-bytes.ts';
import { judgeRecord } from './judge-record.ts';
import { unreadCells } from './planned-column.ts';
import type { QuickWalk } from './quick-walk.ts';
import { type CutMarks, cutRecord } from './record-cutter.ts';
import { type GivenReading, guessTable, type TableReading } from './table-reading.ts';
import { TableRows } from './table-rows.ts';
import type { RejectedLine, TableBatch, TableEnd, TableReaderOptions, TableSource } from './table-source.ts';
import { walkKernel } from './walk-kernel.ts';
import { WalkTwin } from './walk-twin.ts';

const HEAD_BYTES = 1 << 18;
const BATCH_ROWS = 8192;
/** Longest line that is read [bytes]. */
const LINE_MOST = 1 << 20;
const REJECTED_KEPT = 1000;

const [LF, CR] = [10, 13];

/** A table whose reading is known. */
interface Begun {
  readonly reading: TableReading;
  readonly marks: CutMarks;
  readonly rows: TableRows;
  readonly walk: QuickWalk;
  /** Makes UTF-8 of what comes; undefined where it is. */
  readonly wide: Utf16ToUtf8 | undefined;
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
  readonly #form: 'fastest' | 'typescript';
  #head: Uint8Array[] = [];
  #headLength = 0;
  #begun: Begun | undefined;
  #failed: Outcome<never> | undefined;
  #carry: Uint8Array = new Uint8Array(0);
  /** Inside a line that is too long to be read. */
  #skipping = false;
  #out: TableBatch[] = [];
  #rejectedCount = 0;
  #rejected: RejectedLine[] = [];
  #blankLines = 0;
  #headerAgain: number[] = [];
  /** Whether the row at hand is the last and no line end stands behind it. */
  #open = false;

  constructor(
    given: GivenReading = {},
    { batchRows = BATCH_ROWS, texts = false, form = 'fastest' }: TableReaderOptions = {},
  ) {
    this.#given = given;
    this.#batchRows = batchRows;
    this.#texts = texts;
    this.#form = form;
  }

  /** How the file is read; undefined until enough of it has come. */
  get reading(): TableReading | undefined {
    return this.#begun?.reading;
  }

  /** Takes the next bytes and gives the batches that they complete. */
  push(bytes: Uint8Array): readonly TableBatch[] {
    if (this.#failed) return [];
    if (this.#begun) this.#take(this.#begun.wide?.push(bytes) ?? bytes, this.#begun);
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
    if (!this.#begun && !this.#failed) this.#begin();
    if (this.#failed) return this.#failed;
    const begun = this.#begun!;
    if (this.#carry.length > 0) {
      this.#open = true;
      if (this.#skipping) this.#skipping = false;
      else this.#scan(withLineEnd(this.#carry, begun.marks.eol), true, begun);
      this.#carry = new Uint8Array(0);
    }
    this.#give(begun.rows);
    if (begun.rows.given === 0 && this.#rejectedCount === 0)
      return refusedTable('The file has a header but no row of data.');
    const end: TableEnd = {
      reading: begun.reading,
      rowsRead: begun.rows.given,
      rejectedCount: this.#rejectedCount,
      rejected: this.#rejected,
      blankLines: this.#blankLines,
      unread: unreadCells(begun.rows.columns),
      headerAgain: this.#headerAgain,
      remarks: [],
    };
    return { ok: true, value: { batches: this.#handOver(), end } };
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
    const { dialect, encoding } = reading;
    const wide = encoding === 'utf-16le' || encoding === 'utf-16be' ? new Utf16ToUtf8(encoding) : undefined;
    const body = all.subarray(markLength(encoding, all));
    const plain = wide?.push(body) ?? body;
    const marks: CutMarks = {
      delimiter: dialect.delimiter === '' ? -1 : dialect.delimiter.charCodeAt(0),
      quote: dialect.quote === '' ? -1 : dialect.quote.charCodeAt(0),
      eol: plain.includes(LF) || !plain.includes(CR) ? LF : CR,
      repeated: dialect.repeated,
      insideQuote: dialect.insideQuote,
      encoding,
    };
    const rows = new TableRows(reading, this.#batchRows, this.#texts);
    const walk =
      (this.#form === 'fastest' ? walkKernel(reading, rows, marks) : undefined) ??
      new WalkTwin(reading, rows, marks);
    this.#begun = { reading, marks, rows, walk, wide };
    this.#take(plain, this.#begun);
  }

  #take(piece: Uint8Array, begun: Begun): void {
    const { eol } = begun.marks;
    let bytes = piece;
    if (this.#skipping) {
      const end = bytes.indexOf(eol);
      if (end < 0) return;
      this.#skipping = false;
      begun.rows.line += 1;
      bytes = bytes.subarray(end + 1);
    }
    if (this.#carry.length > 0) bytes = this.#carryOn(this.#carry, bytes, begun);
    const end = bytes.lastIndexOf(eol) + 1;
    const done =
      end === 0 ? 0 : this.#scan(end === bytes.length ? bytes : bytes.subarray(0, end), false, begun);
    const rest = bytes.subarray(done);
    if (rest.length > LINE_MOST) {
      this.#reject(begun.rows.line, `longer than ${LINE_MOST / 1024} KiB`);
      this.#skipping = true;
      this.#carry = new Uint8Array(0);
      const next = rest.indexOf(eol);
      // an open quote, not a long line: go on behind its first line
      if (next >= 0) this.#take(new Uint8Array(rest), begun);
    } else this.#carry = new Uint8Array(rest);
  }

  /** Reads what was left over together with the line that ends it; gives what is still to be read. */
  #carryOn(carry: Uint8Array, bytes: Uint8Array, begun: Begun): Uint8Array {
    const first = bytes.indexOf(begun.marks.eol) + 1;
    if (first === 0) return joined([carry, bytes]);
    const line = joined([carry, bytes.subarray(0, first)]);
    const done = this.#scan(line, false, begun);
    const rest = bytes.subarray(first);
    return done === line.length ? rest : joined([line.subarray(done), rest]);
  }

  /** Reads whole rows; gives the place behind the last that was complete. */
  #scan(bytes: Uint8Array, last: boolean, begun: Begun): number {
    const { reading, marks, rows, walk } = begun;
    const before = reading.preambleLines + reading.headerLines;
    let at = 0;
    while (at < bytes.length && rows.line <= before) {
      at = bytes.indexOf(marks.eol, at) + 1;
      rows.line += 1;
    }
    walk.take(bytes);
    while (at < bytes.length) {
      // texts are given of every row, so that each is cut
      if (!this.#texts) at = walk.walk(at);
      if (at < bytes.length && !rows.isFull) {
        const next = this.#judge(bytes, at, last, begun);
        if (next < 0) return at;
        at = next;
      }
      if (rows.isFull) this.#give(rows);
    }
    return at;
  }

  /** Cuts one row and judges it; gives the place behind it, or -1 where more bytes are needed. */
  #judge(bytes: Uint8Array, start: number, last: boolean, { reading, marks, rows }: Begun): number {
    const cut = cutRecord(bytes, start, bytes.length, marks);
    if (!cut || (cut.strays && cut.lines > 1)) {
      if (!cut && !last && bytes.length - start <= LINE_MOST) return -1;
      this.#reject(rows.line, 'a quote is opened and not closed');
      rows.row += 1;
      rows.line += 1;
      return bytes.indexOf(marks.eol, start) + 1;
    }
    const { line } = rows;
    rows.line += cut.lines;
    const judged = judgeRecord(cut, reading, rows.columns, this.#open && cut.end >= bytes.length);
    switch (judged.is) {
      case 'blank':
        this.#blankLines += 1;
        break;
      case 'header':
        if (this.#headerAgain.length < REJECTED_KEPT) this.#headerAgain.push(line);
        this.#reject(line, 'the header again');
        break;
      case 'rejected':
        this.#reject(line, judged.why);
        if (judged.numbered) rows.row += 1;
        break;
      case 'row':
        rows.row += 1;
        rows.keep(line, judged.read, judged.cells);
        break;
    }
    return cut.end;
  }

  #reject(line: number, why: string): void {
    this.#rejectedCount += 1;
    if (this.#rejected.length < REJECTED_KEPT) this.#rejected.push({ line, why });
  }

  /** Gives the rows at hand away. */
  #give(rows: TableRows): void {
    const batch = rows.take();
    if (batch !== undefined) this.#out.push(batch);
  }
}

function refusedTable(message: string): Outcome<never> {
  return { ok: false, issues: [{ code: 'TABLE_NOT_READABLE', message, path: '' }] };
}
