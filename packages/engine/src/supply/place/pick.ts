import type { Counts } from './bay.ts';

/** One kind of lead or hose, with what it costs to lay. */
export interface Piece {
  /** Length of one [m]. */
  readonly length: number;
  /** How many [-]. */
  readonly count: number;
  /** Loss of one [W]. */
  readonly loss: number;
}

/** A run put together from pieces. */
interface Combination {
  readonly counts: Counts;
  readonly length: number;
  readonly loss: number;
}

/** Pieces from which runs are picked, every combination known beforehand. */
export interface Shelf {
  readonly pieces: readonly Piece[];
  /** Combinations by rising loss. */
  readonly combinations: readonly Combination[];
  readonly picked: Map<string, Picked | undefined>;
  /** Distinct lengths of the combinations, rising [m]. */
  readonly lengths: readonly number[];
}

/** The pick of least loss for several runs at once. */
export interface Picked {
  /** Loss of all runs [W]. */
  readonly loss: number;
  /** Counts of each kind, by run. */
  readonly runs: readonly Counts[];
}

/** Pieces that one run is made of at most: more joints than that is not good practice. */
const PIECES_MOST = 5;
/** Combinations that a shelf may have. */
const COMBINATIONS_MOST = 5_000;

/** Lays out every combination of at most PIECES_MOST pieces; undefined where there are too many. */
export function shelfOf(pieces: readonly Piece[], jointLoss: number): Shelf | undefined {
  const combinations: Combination[] = [];
  const counts: number[] = pieces.map(() => 0);
  const visit = (kind: number, used: number, length: number, loss: number): boolean => {
    if (kind === pieces.length) {
      if (used > 0) combinations.push({ counts: [...counts], length, loss: loss + (used - 1) * jointLoss });
      return combinations.length <= COMBINATIONS_MOST;
    }
    const piece = pieces[kind]!;
    for (let n = 0; n <= Math.min(piece.count, PIECES_MOST - used); n += 1) {
      counts[kind] = n;
      if (!visit(kind + 1, used + n, length + n * piece.length, loss + n * piece.loss)) return false;
    }
    counts[kind] = 0;
    return true;
  };
  if (!visit(0, 0, 0, 0)) return undefined;
  const lengths = [...new Set(combinations.map(({ length }) => length))].sort((a, b) => a - b);
  return { pieces, combinations: combinations.sort((a, b) => a.loss - b.loss), picked: new Map(), lengths };
}

/**
 * Pieces of least loss that make every run long enough; undefined where stock does not do. Exact: every run tries
 * its combinations by rising loss, until the loss so far and the least of the runs left exceed the best found.
 */
export function pick(shelf: Shelf, asked: readonly number[]): Picked | undefined {
  // However short the way, a run is one piece at least.
  const needs = asked.map((need) => Math.max(need, Number.MIN_VALUE));
  const ranks = needs.map((need) => rankOf(shelf.lengths, need));
  if (ranks.some((rank) => rank === shelf.lengths.length)) return undefined;
  const key = ranks.join(' ');
  if (!shelf.picked.has(key)) shelf.picked.set(key, solve(shelf, needs));
  return shelf.picked.get(key);
}

/** Place of the first length that is enough. */
function rankOf(lengths: readonly number[], need: number): number {
  let low = 0;
  let high = lengths.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (lengths[middle]! >= need) high = middle;
    else low = middle + 1;
  }
  return low;
}

function solve({ pieces, combinations }: Shelf, needs: readonly number[]): Picked | undefined {
  // A combination that is long enough without one of its pieces is never better than without it.
  const choices = needs.map((need) =>
    combinations.filter(
      ({ counts, length }) =>
        length >= need && counts.every((n, kind) => n === 0 || length - pieces[kind]!.length < need),
    ),
  );
  const leastFrom = choices.map((_, run) =>
    choices.slice(run).reduce((sum, of) => sum + (of[0]?.loss ?? 0), 0),
  );
  const left = pieces.map(({ count }) => count);
  const chosen: Counts[] = [];
  let best: Picked | undefined;
  const visit = (run: number, loss: number): void => {
    if (run === needs.length) {
      best = { loss, runs: [...chosen] };
      return;
    }
    for (const choice of choices[run]!) {
      if (best !== undefined && loss + choice.loss + (leastFrom[run + 1] ?? 0) >= best.loss) return;
      if (choice.counts.some((n, kind) => n > left[kind]!)) continue;
      for (const [kind, n] of choice.counts.entries()) left[kind]! -= n;
      chosen.push(choice.counts);
      visit(run + 1, loss + choice.loss);
      chosen.pop();
      for (const [kind, n] of choice.counts.entries()) left[kind]! += n;
    }
  };
  visit(0, 0);
  return best;
}
