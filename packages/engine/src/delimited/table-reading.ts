import type { Outcome } from '../issue/index.ts';
import { type Dialect, splitText } from './dialect.ts';
import { type Encoding, guessEncoding, markLength, textOf, Utf16ToUtf8 } from './encoding.ts';
import type { GivenClock } from './given-clock.ts';
import type { GivenColumn, TableColumn } from './guess-columns.ts';
import { guessColumns } from './guess-columns.ts';
import { type GuessedDialect, guessDialect } from './guess-dialect.ts';
import { COMMENT, guessLayout } from './guess-layout.ts';
import { guessMarks, type NumberMarks } from './number-cell.ts';

/** What a choice is about. */
export type ChoiceAbout =
  | 'encoding'
  | 'delimiter'
  | 'quote'
  | 'decimal'
  | 'preamble'
  | 'header'
  | 'unit row'
  | 'clock'
  | 'column';

/** One choice of how a file is read, with its evidence in words. */
export interface Choice {
  readonly about: ChoiceAbout;
  /** Name or number of the column that it is about. */
  readonly column?: string;
  readonly says: string;
  /** False where a person should look at it. */
  readonly sure: boolean;
}

/** How a delimited file is read. */
export interface TableReading {
  readonly format: 'delimited' | 'json_lines' | 'parquet';
  readonly encoding: Encoding;
  readonly dialect: Dialect;
  readonly marks: NumberMarks;
  /** Mark at the start of a line that is a remark; empty where there is none. */
  readonly comment: string;
  /** Lines before the header [-]. */
  readonly preambleLines: number;
  /** Lines of the header, unit row included [-]. */
  readonly headerLines: number;
  readonly columns: readonly TableColumn[];
  /** What a person said of its clock. */
  readonly clock: GivenClock;
  /** The lines before the table, for what a logger writes there. */
  readonly preamble: readonly string[];
  /** Data rows of the head as written, for a preview. */
  readonly preview: readonly (readonly string[])[];
  /** Line of each row of the preview, from 1 [-]. */
  readonly previewLines: readonly number[];
  readonly choices: readonly Choice[];
}

/** What a person says of how a file is read; the rest is found. */
export interface GivenReading {
  readonly encoding?: Encoding | undefined;
  readonly delimiter?: string | undefined;
  readonly quote?: Dialect['quote'] | undefined;
  readonly insideQuote?: Dialect['insideQuote'] | undefined;
  readonly decimal?: NumberMarks['decimal'] | undefined;
  readonly thousands?: NumberMarks['thousands'] | undefined;
  /** Lines before the header [-]. */
  readonly preambleLines?: number | undefined;
  /** Lines of the header, unit row included [-]. */
  readonly headerLines?: number | undefined;
  readonly clock?: GivenClock | undefined;
  readonly columns?: readonly GivenColumn[] | undefined;
}

/** Rows kept for a preview. */
const PREVIEW_ROWS = 12;

/** Rows of the head by which the columns are judged. */
const HEAD_ROWS = 4000;

function refused(message: string, accepted: string): Outcome<never> {
  return { ok: false, issues: [{ code: 'TABLE_NOT_READABLE', message, path: '', accepted }] };
}

const TABLE = 'text with one row of numbers per line and a delimiter between them';

/** Whether bytes are no text: zeros, or many control characters. */
function isBinary(bytes: Uint8Array): boolean {
  let odd = 0;
  for (const byte of bytes) {
    if (byte === 0) return true;
    if (byte < 9 || (byte > 13 && byte < 32 && byte !== 27 && byte !== 26)) odd += 1;
  }
  return odd > 0.02 * bytes.length;
}

/**
 * Finds how the rows of a text are cut into cells, whatever it holds; a table of numbers is not asked for.
 *
 * @param head - the first bytes of the file [bytes], any
 * @param given - what is known of the dialect [record], any part
 * @returns delimiter and quote, and why [record]; no delimiter for one column
 * @source van den Burg, Nazabal, Sutton, arXiv 1811.11242; table uniformity as in doi 10.3233/DS-240062
 * @example
 * guessDialectOf(Uint8Array.from('a;b\n1;2\n3;4\n', (c) => c.charCodeAt(0))).dialect.delimiter // => ";"
 */
export function guessDialectOf(head: Uint8Array, given: Partial<Dialect> = {}): GuessedDialect {
  const { encoding } = guessEncoding(head);
  const bytes = plainBytes(head, encoding);
  return guessDialect(textOf(bytes, 0, bytes.length, encoding), given);
}

/** Bytes behind the mark of the encoding, those of UTF-16 as UTF-8. */
function plainBytes(head: Uint8Array, encoding: Encoding): Uint8Array {
  const body = head.subarray(markLength(encoding, head));
  return encoding === 'utf-16le' || encoding === 'utf-16be' ? new Utf16ToUtf8(encoding).push(body) : body;
}

/**
 * Finds how a file is read from its first bytes: encoding, delimiter, quote, decimal sign, lines before the table, header
 * and unit row, and what each column is, each with the reason; what is given is taken as it is.
 *
 * @param head - the first bytes of the file [bytes], whole lines where it can be; 64 KiB and more tell enough
 * @param given - what a person says of it [record], any part
 * @returns the reading, or why there is none [record]
 * @source van den Burg, Nazabal, Sutton, arXiv 1811.11242; table uniformity as in doi 10.3233/DS-240062
 * @example
 * const head = Uint8Array.from('t [s];U [V]\n0,1;41,5\n0,2;41,7\n', (c) => c.charCodeAt(0));
 * guessTable(head).value.columns.map(({ quantity, unit }) => [quantity, unit.name]) // => [["time","s"],["voltage","V"]]
 */
export function guessTable(head: Uint8Array, given: GivenReading = {}): Outcome<TableReading> {
  if (head.length === 0) return refused('The file is empty.', TABLE);
  const guessed = guessEncoding(head);
  const encoding = given.encoding ?? guessed.encoding;
  const bytes = plainBytes(head, encoding);
  if (isBinary(bytes)) return refused('The file is not text: it holds bytes that no text has.', TABLE);
  const text = textOf(bytes, 0, bytes.length, encoding);
  if (text.trim() === '') return refused('The file holds nothing but blank lines.', TABLE);
  const found = guessDialect(text, {
    ...(given.delimiter === undefined ? {} : { delimiter: given.delimiter }),
    ...(given.quote === undefined ? {} : { quote: given.quote }),
    ...(given.insideQuote === undefined ? {} : { insideQuote: given.insideQuote }),
  });
  const { dialect } = found;
  const { rows } = splitText(text, dialect, HEAD_ROWS);
  const lines = text.split(/\r\n|\n|\r/u, HEAD_ROWS);
  const layout = guessLayout(rows, (line) => lines[line - 1] ?? '', dialect, given);
  const cells = layout.data.flatMap((row) => row.cells);
  const marks = guessMarks(cells.slice(0, 20_000), given);
  const columns = guessColumns(layout, marks.marks, given);
  if (layout.data.length === 0) {
    return refused('The file has a header but no row of data.', TABLE);
  }
  const comment =
    COMMENT.exec(lines.find((line) => COMMENT.test(line) && !/^\s*[;*'!]/u.test(line)) ?? '')?.[0].trim() ??
    '';
  const choices: Choice[] = [
    given.encoding === undefined
      ? { about: 'encoding', says: guessed.says, sure: true }
      : { about: 'encoding', says: 'as given', sure: true },
    { about: 'delimiter', says: found.says, sure: found.sure || given.delimiter !== undefined },
    ...(dialect.quote === ''
      ? []
      : [{ about: 'quote' as const, says: `cells in ${dialect.quote}`, sure: true }]),
    { about: 'decimal', says: marks.says, sure: marks.sure },
    ...layout.says.map(({ about, says }) => ({ about, says, sure: true })),
    ...columns.map((column, index) => ({
      about: 'column' as const,
      column: column.name === '' ? String(index + 1) : column.name,
      says: column.says,
      sure: !column.asks,
    })),
  ];
  return {
    ok: true,
    value: {
      format: 'delimited',
      encoding,
      dialect,
      marks: marks.marks,
      comment,
      preambleLines: layout.preambleLines,
      headerLines: layout.headerLines,
      columns,
      clock: given.clock ?? {},
      preamble: lines.slice(0, layout.preambleLines),
      preview: layout.data.slice(0, PREVIEW_ROWS).map((row) => row.cells),
      previewLines: layout.data.slice(0, PREVIEW_ROWS).map(({ line }) => line),
      choices,
    },
  };
}
