import type { TableReading } from './table-reading.ts';
import type { TableRows } from './table-rows.ts';

/**
 * Reads rows that are as expected straight from their bytes into the rows at hand, without a text for any cell.
 *
 * There are two, which do the same: one in WebAssembly, and its twin in TypeScript for where that does not run.
 */
export interface QuickWalk {
  /** Takes the bytes to walk over, which end with the end of a line. */
  readonly take: (bytes: Uint8Array) => void;
  /** Walks over whole rows from a place on; gives the place of the first that is not as expected, or that has no room. */
  readonly walk: (begin: number) => number;
}

/** What is done with a cell: a kind of 0 is passed over. */
export const NUMBER = 1;
export const MOMENT = 2;

/** What is done with each cell of a row. */
export interface CellsOfRow {
  readonly kinds: Uint8Array;
  /** Column to which a cell goes, by its place. */
  readonly slots: Int32Array;
  /** The byte of the decimal sign. */
  readonly decimal: number;
}

/** What is done with each cell of a row of a table. */
export function cellsOfRow({ columns, marks }: TableReading, rows: TableRows): CellsOfRow {
  const kinds = new Uint8Array(columns.length);
  const slots = new Int32Array(columns.length);
  rows.columns.forEach(({ index, column }, slot) => {
    kinds[index] = column.holds === 'number' ? NUMBER : MOMENT;
    slots[index] = slot;
  });
  return { kinds, slots, decimal: marks.decimal === ',' ? 44 : 46 };
}
