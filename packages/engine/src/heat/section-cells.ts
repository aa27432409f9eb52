import type { Axis } from './axis.ts';
import { depthAt, type FloorLine } from './floor-line.ts';

/** Columns into which a cell is split to count how much of it the floor has left. */
const COLUMNS = 32;
/** A cell with less metal than this is counted to its neighbour: slivers would ask for tiny time steps [-]. */
const LEAST_SHARE = 0.5;
/** Metal too little to hold anywhere [-]. */
const NOTHING = 1e-3;

/** Which cells of a section hold metal above a floor; cells count across first, then below. */
export interface SectionCells {
  /** Share of each cell that is metal [-]. */
  readonly share: Float64Array;
  /** Cell that holds the metal of each cell: itself, a neighbour, or -1 for none. */
  readonly holder: Int32Array;
  /** Metal that each cell holds, its neighbours' slivers included [m2]. */
  readonly area: Float64Array;
  /** Open length over distance towards the next cell across [-]. */
  readonly openAcross: Float64Array;
  /** Open length over distance towards the next cell below [-]. */
  readonly openBelow: Float64Array;
}

/** Shares of metal, and open shares of the faces below and to the next cell across. */
interface Shares {
  readonly share: Float64Array;
  readonly across: Float64Array;
  readonly below: Float64Array;
}

function sharesUnder(across: Axis, below: Axis, floor: FloorLine): Shares {
  const columns = across.widths.length;
  const rows = below.widths.length;
  const share = new Float64Array(columns * rows).fill(1);
  const openAcross = new Float64Array(columns * rows).fill(1);
  const openBelow = new Float64Array(columns * rows).fill(1);
  const left = floor[0]?.offset ?? 0;
  const right = floor.at(-1)?.offset ?? 0;
  const clamp = (value: number): number => Math.min(1, Math.max(0, value));
  for (let i = 0; i < columns; i += 1) {
    if (across.edges[i + 1]! < left || across.edges[i]! > right) continue;
    const depths = Array.from({ length: COLUMNS }, (_, k) =>
      depthAt(floor, across.edges[i]! + (across.widths[i]! * (k + 0.5)) / COLUMNS),
    );
    const edgeDepth = depthAt(floor, across.edges[i + 1]!);
    const deepest = Math.max(edgeDepth, ...depths);
    for (let j = 0; j < rows && below.edges[j]! < deepest; j += 1) {
      const cell = j * columns + i;
      const bottom = below.edges[j + 1]!;
      const height = below.widths[j]!;
      let metal = 0;
      let open = 0;
      for (const depth of depths) {
        metal += clamp((bottom - depth) / height);
        if (depth < bottom) open += 1;
      }
      share[cell] = metal / COLUMNS;
      openBelow[cell] = open / COLUMNS;
      openAcross[cell] = clamp((bottom - edgeDepth) / height);
    }
  }
  return { share, across: openAcross, below: openBelow };
}

/** Each sliver goes to the neighbour with the widest face that holds its own metal. */
function holders(shares: Shares, columns: number, rows: number): Int32Array {
  const { share } = shares;
  const holder = Int32Array.from(share, (value, cell) => (value >= LEAST_SHARE ? cell : -1));
  for (let cell = 0; cell < share.length; cell += 1) {
    const value = share[cell]!;
    if (value >= LEAST_SHARE || value < NOTHING) continue;
    const i = cell % columns;
    const j = (cell - i) / columns;
    const neighbours: readonly (readonly [boolean, number, number])[] = [
      [j + 1 < rows, cell + columns, shares.below[cell]!],
      [i > 0, cell - 1, i > 0 ? shares.across[cell - 1]! : 0],
      [i + 1 < columns, cell + 1, shares.across[cell]!],
      [j > 0, cell - columns, j > 0 ? shares.below[cell - columns]! : 0],
    ];
    let widest = 0;
    for (const [inside, other, open] of neighbours) {
      if (!inside || open <= widest || share[other]! < LEAST_SHARE) continue;
      widest = open;
      holder[cell] = other;
    }
    // a thin cusp has no full neighbour: it stands for itself
    if (holder[cell]! < 0) holder[cell] = cell;
  }
  return holder;
}

/** Cells above a floor; no cell has more metal than before it. */
export function sectionCells(
  across: Axis,
  below: Axis,
  floor: FloorLine,
  before?: SectionCells,
): SectionCells {
  const columns = across.widths.length;
  const rows = below.widths.length;
  const shares = sharesUnder(across, below, floor);
  const { share } = shares;
  if (before)
    for (let cell = 0; cell < share.length; cell += 1)
      share[cell] = Math.min(share[cell]!, before.share[cell]!);
  const holder = holders(shares, columns, rows);
  const area = new Float64Array(share.length);
  const openAcross = new Float64Array(share.length);
  const openBelow = new Float64Array(share.length);
  for (let cell = 0; cell < share.length; cell += 1) {
    const i = cell % columns;
    const j = (cell - i) / columns;
    const holds = holder[cell]!;
    if (holds >= 0) area[holds] = area[holds]! + share[cell]! * across.widths[i]! * below.widths[j]!;
    if (holds !== cell) continue;
    if (i + 1 < columns && holder[cell + 1] === cell + 1) {
      const distance = across.centres[i + 1]! - across.centres[i]!;
      openAcross[cell] = (shares.across[cell]! * below.widths[j]!) / distance;
    }
    if (j + 1 < rows && holder[cell + columns] === cell + columns) {
      const distance = below.centres[j + 1]! - below.centres[j]!;
      openBelow[cell] = (shares.below[cell]! * across.widths[i]!) / distance;
    }
  }
  return { share, holder, area, openAcross, openBelow };
}
