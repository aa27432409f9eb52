/**
 * Why a hand is to ask: the reading lies outside what was expected; more is missing than a pass takes off; neither leaving the
 * floor nor the thinnest pass holds what the drawing asks for along the whole seam; it most likely is too deep somewhere.
 */
export type AskReason = 'unexpected' | 'out_of_reach' | 'nothing_holds' | 'too_deep';

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
  /** Why to ask; undefined unless the action is `ask`. */
  readonly reason?: AskReason;
}

/** Runs no more passes. */
export const DONE: ReadingRow = { action: 'done', logEnergy: [], cuts: [] };

/** Stops and asks. */
export function askFor(reason: AskReason): ReadingRow {
  return { action: 'ask', logEnergy: [], cuts: [], reason };
}

/** Edges are written in steps of this much [m]. */
export const EDGE_STEP = 0.1e-3;
/** Rows of a table at most, the open ones at its ends included [-]: more do not fit the card. */
const ROWS_MOST = 16;
/** Readings are expected this many standard deviations to either side of the middle [-]; beyond, the hand asks. */
export const EXPECTED = 2.8;

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

/** Edges that rise by the same factor, written in whole steps. */
export function geometricEdges(low: number, high: number): number[] {
  const bands = ROWS_MOST - 2;
  return written(Array.from({ length: bands + 1 }, (_, i) => low * (high / low) ** (i / bands)));
}

/** Part of the standard deviation of a reading below which no row is narrower [-]: a gauge tells nothing finer. */
const ROW_LEAST = 0.5;

/** Even edges, written in whole steps, of rows that a gauge can tell apart. */
export function evenEdges(low: number, high: number, readingSd: number): number[] {
  const least = Math.max(EDGE_STEP, ROW_LEAST * readingSd);
  const bands = Math.max(1, Math.min(ROWS_MOST - 2, Math.round((high - low) / least)));
  return written(Array.from({ length: bands + 1 }, (_, i) => low + ((high - low) * i) / bands));
}

/** Rounds edges to whole steps. */
export function written(edges: readonly number[]): number[] {
  const rounded = edges.map((edge) => Math.max(1, Math.round(edge / EDGE_STEP)) * EDGE_STEP);
  return rounded.filter((edge, index) => index === 0 || edge > rounded[index - 1]! + 1e-9);
}
