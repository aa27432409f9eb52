import type { Outcome } from '../issue/index.ts';
import type { ColumnQuantity } from './column-name.ts';
import type { UnreadCells } from './planned-column.ts';
import type { TableReading } from './table-reading.ts';

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
  /** Which of the two forms of the quick walk runs: in WebAssembly where there is one, or its twin. */
  readonly form?: 'fastest' | 'typescript';
}
