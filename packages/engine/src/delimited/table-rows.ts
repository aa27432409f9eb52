import { type PlannedColumn, planColumns, type readCell, siColumns, storeCell } from './planned-column.ts';
import type { Cell } from './record-cutter.ts';
import type { TableReading } from './table-reading.ts';
import type { TableBatch } from './table-source.ts';

/** Rows of a table as they are read, until they are given away. */
export class TableRows {
  readonly columns: readonly PlannedColumn[];
  /** Numbers and lines of the rows at hand [-]. */
  readonly rows: Float64Array;
  readonly lines: Float64Array;
  /** Rows at hand [-]. */
  filled = 0;
  /** Number of the data row that was met last [-]. */
  row = 0;
  /** Line of the file that comes next, from 1 [-]. */
  line = 1;
  /** Rows that were given away [-]. */
  given = 0;
  readonly #texts: readonly (string[] | undefined)[];

  constructor(reading: TableReading, batchRows: number, withTexts: boolean) {
    this.columns = planColumns(reading, batchRows);
    this.rows = new Float64Array(batchRows);
    this.lines = new Float64Array(batchRows);
    this.#texts = withTexts ? reading.columns.map(({ holds }) => (holds === 'text' ? [] : undefined)) : [];
  }

  get isFull(): boolean {
    return this.filled === this.rows.length;
  }

  /** Keeps a row that was read cell by cell, with what each column holds. */
  keep(line: number, read: readonly ReturnType<typeof readCell>[], cells: readonly Cell[]): void {
    const at = this.filled;
    this.columns.forEach((planned, slot) => {
      storeCell(planned, at, read[slot], line, cells[planned.index]!.text);
    });
    this.#texts.forEach((texts, index) => {
      texts?.push(cells[index]!.text.trim());
    });
    this.rows[at] = this.row;
    this.lines[at] = line;
    this.filled += 1;
  }

  /** Numbers the rows that were filled in up to a count, each on a line of its own. */
  count(filled: number): void {
    for (let at = this.filled; at < filled; at += 1) {
      this.row += 1;
      this.rows[at] = this.row;
      this.lines[at] = this.line;
      this.line += 1;
    }
    this.filled = filled;
  }

  /** Gives the rows at hand away; undefined where there are none. */
  take(): TableBatch | undefined {
    const count = this.filled;
    if (count === 0) return undefined;
    this.given += count;
    this.filled = 0;
    return {
      row: this.rows.slice(0, count),
      line: this.lines.slice(0, count),
      columns: siColumns(this.columns, count),
      texts: this.#texts.map((texts) => texts?.splice(0)),
    };
  }
}
