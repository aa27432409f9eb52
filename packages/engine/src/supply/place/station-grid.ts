/** A rectangle of cells of the grid, ends excluded. */
export interface Block {
  /** First column [-]. */
  readonly left: number;
  /** Column after the last [-]. */
  readonly right: number;
  /** First row [-]. */
  readonly low: number;
  /** Row after the last [-]. */
  readonly high: number;
}

/** What a cell or a block is judged by: the first decides, the second between equals. */
export type Score = readonly [number, number];

/** What is asked of a grid. */
export interface GridProblem {
  readonly columns: number;
  readonly rows: number;
  /** A score that no cell of the block betters. */
  readonly bound: (block: Block) => Score;
  /** Score of one cell, undefined where the station cannot stand. */
  readonly score: (column: number, row: number) => Score | undefined;
}

/** The best cell, with the work it took. */
export interface BestCell {
  /** Column [-]. */
  readonly column: number;
  /** Row [-]. */
  readonly row: number;
  readonly score: Score;
}

/** What a search over a grid found. */
export interface GridSearch {
  readonly best: BestCell | undefined;
  /** Cells that were judged one by one [-]. */
  readonly judged: number;
  /** Blocks left out because of their bound [-]. */
  readonly ruledOut: number;
}

/** Whether one score is better than another. */
export function isBetter(a: Score, b: Score): boolean {
  return a[0] !== b[0] ? a[0] < b[0] : a[1] < b[1];
}

/**
 * The best cell of a grid, from coarse to fine: a block is halved, its better half looked at first, and left out
 * where its bound is no better than the best cell found. The bound makes the answer that of looking at every cell.
 */
export function bestCell({ columns, rows, bound, score }: GridProblem): GridSearch {
  let best: BestCell | undefined;
  let judged = 0;
  let ruledOut = 0;
  const visit = (block: Block, least: Score): void => {
    if (least[0] === Number.POSITIVE_INFINITY || (best !== undefined && !isBetter(least, best.score))) {
      ruledOut += 1;
      return;
    }
    if (block.right - block.left === 1 && block.high - block.low === 1) {
      judged += 1;
      const found = score(block.left, block.low);
      if (found === undefined || found[0] === Number.POSITIVE_INFINITY) return;
      if (best === undefined || isBetter(found, best.score))
        best = { column: block.left, row: block.low, score: found };
      return;
    }
    const halves = halvesOf(block).map((half) => ({ half, least: bound(half) }));
    halves.sort((a, b) => (isBetter(a.least, b.least) ? -1 : isBetter(b.least, a.least) ? 1 : 0));
    for (const each of halves) visit(each.half, each.least);
  };
  const whole: Block = { left: 0, right: columns, low: 0, high: rows };
  visit(whole, bound(whole));
  return { best, judged, ruledOut };
}

function halvesOf(block: Block): readonly [Block, Block] {
  const { left, right, low, high } = block;
  if (right - left >= high - low) {
    const middle = (left + right) >> 1;
    return [
      { ...block, right: middle },
      { ...block, left: middle },
    ];
  }
  const middle = (low + high) >> 1;
  return [
    { ...block, high: middle },
    { ...block, low: middle },
  ];
}
