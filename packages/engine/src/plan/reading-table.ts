/** What to do after a reading: rows of readings, each with the ln specific energy of the next pass. */
export interface ReadingTable {
  /** Upper edges of the rows, rising; the last row has none [m]. */
  readonly edges: readonly number[];
  /** ln specific energy of the next pass; NaN: run no more passes [-]. */
  readonly logEnergy: readonly number[];
  /** Reading for which each row was worked out [m]. */
  readonly readings: readonly number[];
}

/** Row of a table that a reading falls into. */
export function rowOf(table: ReadingTable, reading: number): number {
  return rowNear(table.edges, reading, 0);
}

/** The same, sought from a row it may well be, 0 to the number of edges. */
export function rowNear(edges: readonly number[], reading: number, guess: number): number {
  let row = guess;
  while (row < edges.length && reading >= edges[row]!) row += 1;
  while (row > 0 && reading < edges[row - 1]!) row -= 1;
  return row;
}
