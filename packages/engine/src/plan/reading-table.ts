/** What to do after a reading. */
export interface ReadingRow {
  readonly action: 'run' | 'done' | 'ask';
  /**
   * ln specific energy of what is run next, one per pass that the table sets [-]. After a trial or a run-in as it is;
   * after a stop against that of the pass before on the same track. Empty unless the action is `run`.
   */
  readonly logEnergy: readonly number[];
  /** What each of them is expected to cut [m]. */
  readonly cuts: readonly number[];
}

/** Rows of readings, each with what to do. */
export interface ReadingTable {
  /** Upper edges of the rows, rising; the last row has none [m]. */
  readonly edges: readonly number[];
  readonly rows: readonly ReadingRow[];
}

/** Row of a table that a reading falls into, found from the row that an even table would have it in. */
export function rowOf(table: ReadingTable, reading: number): number {
  const { edges } = table;
  const last = edges.length;
  const low = edges[0] ?? 0;
  const guess = Math.ceil(((reading - low) * (last - 1)) / Math.max(1e-12, (edges[last - 1] ?? 0) - low));
  let row = guess > 0 ? Math.min(guess, last) : 0;
  while (row < last && reading >= edges[row]!) row += 1;
  while (row > 0 && reading < edges[row - 1]!) row -= 1;
  return row;
}
