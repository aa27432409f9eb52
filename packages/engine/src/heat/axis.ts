/** One direction of a grid: cells of a block. */
export interface Axis {
  /** Edges of the cells, increasing, one more than cells [m]. */
  readonly edges: Float64Array;
  /** Middles of the cells [m]. */
  readonly centres: Float64Array;
  /** Widths of the cells [m]. */
  readonly widths: Float64Array;
}

/** Axis with the edges given [m]. */
export function axisOf(edges: ArrayLike<number>): Axis {
  const at = Float64Array.from(edges);
  const cells = at.length - 1;
  const centres = new Float64Array(cells);
  const widths = new Float64Array(cells);
  for (let cell = 0; cell < cells; cell += 1) {
    centres[cell] = (at[cell]! + at[cell + 1]!) / 2;
    widths[cell] = at[cell + 1]! - at[cell]!;
  }
  return { edges: at, centres, widths };
}

/** Even cells from one place to another [m]. */
export function evenAxis(from: number, to: number, cells: number): Axis {
  return axisOf(Float64Array.from({ length: cells + 1 }, (_, at) => from + ((to - from) * at) / cells));
}

/** How fine an axis is and how quickly it coarsens away from the groove. */
export interface Stretch {
  /** Width of the fine cells [m]. */
  readonly fine: number;
  /** Growth from one cell to the next outside them [-]. */
  readonly growth: number;
  /** Widest cell [m]. */
  readonly widest: number;
  /** Growth of that growth from cell to cell, up to the greatest: far away the field is smooth; none where left out [-]. */
  readonly quickens?: { readonly by: number; readonly most: number };
}

/** Widths of growing cells that fill a length [m]. */
function growingWidths(length: number, { fine, growth: first, widest, quickens }: Stretch): number[] {
  const widths: number[] = [];
  let filled = 0;
  let width = fine;
  let growth = first;
  while (filled < length * (1 - 1e-12)) {
    width = Math.min(width * growth, widest);
    widths.push(width);
    filled += width;
    if (quickens !== undefined) growth = Math.max(first, Math.min(quickens.most, growth * quickens.by));
  }
  return widths.map((each) => (each * length) / filled);
}

/** Fine cells between two places, growing cells on to the ends; ends may lie at the fine part's own [m]. */
export function stretchedAxis(
  ends: readonly [number, number],
  fineFrom: number,
  fineTo: number,
  stretch: Stretch,
): Axis {
  const [start, end] = ends;
  const from = Math.max(start, fineFrom);
  const to = Math.min(end, fineTo);
  const count = Math.max(1, Math.round((to - from) / stretch.fine));
  const edges = Array.from({ length: count + 1 }, (_, at) => from + ((to - from) * at) / count);
  for (const width of growingWidths(end - to, stretch)) edges.push(edges.at(-1)! + width);
  const before = [from];
  for (const width of growingWidths(from - start, stretch)) before.push(before.at(-1)! - width);
  return axisOf([...before.slice(1).reverse(), ...edges]);
}

/** Number of the cell that holds a place; the first or last for a place outside [-]. */
export function cellAt({ edges }: Axis, place: number): number {
  let low = 0;
  let high = edges.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (edges[middle]! <= place) low = middle;
    else high = middle;
  }
  return low;
}
