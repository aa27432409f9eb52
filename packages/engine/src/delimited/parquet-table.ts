import { type FileMetaData, parquetMetadataAsync, parquetRead } from 'hyparquet';
import type { Outcome } from '../issue/index.ts';
import type { TextRow } from './dialect.ts';
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
import type { TableBatch, TableEnd } from './table-source.ts';

/** A file of which any piece can be read. */
export interface ParquetFile {
  /** Its length [bytes]. */
  readonly byteLength: number;
  /** Gives the bytes from one place to another. */
  slice(start: number, end?: number): ArrayBuffer | Promise<ArrayBuffer>;
}

const BATCH_ROWS = 8192;
const HEAD_ROWS = 4000;

/** A Parquet file as a table: how it is read, its rows, and at last what became of them. */
export interface ParquetTable {
  readonly reading: TableReading;
  batches(): AsyncGenerator<TableBatch>;
  /** What became of the file, once all batches have been taken. */
  end(): TableEnd;
}

function cellOf(value: unknown): string {
  if (value === null || value === undefined) return '';
  return value instanceof Date ? value.toISOString() : String(value);
}

async function readRows(
  file: ParquetFile,
  metadata: FileMetaData,
  names: readonly string[],
  from: number,
  to: number,
): Promise<ArrayLike<unknown>[]> {
  const columns: unknown[][] = names.map(() => new Array(to - from));
  await parquetRead({
    file,
    metadata,
    columns: [...names],
    rowStart: from,
    rowEnd: to,
    onChunk: ({ columnName, columnData, rowStart, rowEnd }) => {
      const column = columns[names.indexOf(columnName)];
      if (!column) return;
      const first = Math.max(from, rowStart);
      for (let row = first; row < Math.min(to, rowEnd); row += 1)
        column[row - from] = columnData[row - rowStart];
    },
  });
  return columns;
}

/**
 * Opens a Parquet file of plain columns as a table; units are read from the names of the columns.
 *
 * @param file - the file [record], its length and its pieces
 * @param given - what a person says of its columns [record], any part
 * @returns the table, or why there is none [record]
 * @source Apache Parquet, as read by hyparquet
 * @example
 * const torn = { byteLength: 4, slice: async () => new ArrayBuffer(4) };
 * openParquet(torn).then(({ issues }) => issues[0].code) // => "TABLE_NOT_READABLE"
 */
export async function openParquet(
  file: ParquetFile,
  given: GivenReading = {},
): Promise<Outcome<ParquetTable>> {
  let metadata: FileMetaData;
  let head: ArrayLike<unknown>[];
  let names: string[];
  try {
    metadata = await parquetMetadataAsync(file);
    names = metadata.schema
      .slice(1)
      .filter(({ num_children }) => num_children === undefined)
      .map(({ name }) => name);
    const count = Math.min(HEAD_ROWS, Number(metadata.num_rows));
    head = await readRows(file, metadata, names, 0, count);
  } catch (error) {
    return unreadable(
      `The Parquet file cannot be read: ${error instanceof Error ? error.message.slice(0, 120) : 'unknown'}.`,
    );
  }
  const total = Number(metadata.num_rows);
  if (total === 0) return unreadable('The Parquet file has no rows.');
  const data = Array.from(
    { length: head[0]?.length ?? 0 },
    (_, at): TextRow => ({
      line: at + 1,
      lines: 1,
      cells: head.map((column) => cellOf(column[at])),
      quoted: names.map(() => false),
    }),
  );
  const quoting = { quote: '', insideQuote: 'doubled' } as const;
  const reading = readingOfNames({ format: 'parquet', quoting, names, data, choices: [] }, given);
  const planned = planColumns(reading, BATCH_ROWS);
  const wanted = planned.map(({ index }) => names[index]!);
  return {
    ok: true,
    value: {
      reading,
      async *batches() {
        // a row group at a time: its pages are unpacked once
        let start = 0;
        for (const { num_rows } of metadata.row_groups) {
          const rows = Number(num_rows);
          const group =
            wanted.length === 0 ? [] : await readRows(file, metadata, wanted, start, start + rows);
          for (let from = 0; from < rows; from += BATCH_ROWS) {
            yield batchOf(planned, group, start, from, Math.min(rows, from + BATCH_ROWS));
          }
          start += rows;
        }
      },
      end: () => ({
        reading,
        rowsRead: total,
        rejectedCount: 0,
        rejected: [],
        blankLines: 0,
        unread: unreadCells(planned),
        headerAgain: [],
        remarks: [],
      }),
    },
  };
}

function batchOf(
  planned: readonly PlannedColumn[],
  group: readonly ArrayLike<unknown>[],
  start: number,
  from: number,
  to: number,
): TableBatch {
  const count = to - from;
  planned.forEach((column, slot) => {
    for (let at = 0; at < count; at += 1) {
      const value = group[slot]![from + at];
      if (typeof value === 'number' && Number.isFinite(value)) column.values[at] = value;
      else {
        const text = cellOf(value);
        storeCell(column, at, readCell(column, text, PLAIN_MARKS), start + from + at + 1, text);
      }
    }
  });
  const row = Float64Array.from({ length: count }, (_, at) => start + from + at + 1);
  return { row, line: row, columns: siColumns(planned, count), texts: [] };
}

function unreadable(message: string): Outcome<never> {
  return { ok: false, issues: [{ code: 'TABLE_NOT_READABLE', message, path: '' }] };
}
