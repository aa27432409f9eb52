import { type Axis, cellAt } from './axis.ts';
import type { FloorLine } from './floor-line.ts';
import type { SectionCells } from './section-cells.ts';

/** A short piece of the floor, and the cell behind it. */
export interface FacePiece {
  readonly cell: number;
  /** Length across the section [m]. */
  readonly length: number;
  /** Middle of the piece, from the groove's centre line [m]. */
  readonly offset: number;
  /** Middle of the piece below the surface [m]. */
  readonly depth: number;
}

/** Pieces that a cell's width is split into. */
const PIECES = 4;

/** The cell that holds the metal at a place of the floor, or the fullest of those around it. */
function cellBehind(cells: SectionCells, columns: number, cell: number): number {
  const own = cells.holder[cell]!;
  if (own >= 0) return own;
  let fullest = -1;
  for (const other of [cell + columns, cell - 1, cell + 1, cell - columns]) {
    const holder = cells.holder[other];
    if (holder === undefined || holder < 0) continue;
    if (fullest < 0 || cells.share[other]! > cells.share[fullest]!) fullest = other;
  }
  return fullest < 0 ? -1 : cells.holder[fullest]!;
}

/** The floor between its two ends in short pieces, each with the cell whose metal it bounds. */
export function facePieces(across: Axis, below: Axis, cells: SectionCells, floor: FloorLine): FacePiece[] {
  const columns = across.widths.length;
  const pieces: FacePiece[] = [];
  const thickness = below.edges.at(-1)!;
  for (let at = 0; at + 1 < floor.length; at += 1) {
    const from = floor[at]!;
    const to = floor[at + 1]!;
    const length = Math.hypot(to.offset - from.offset, to.depth - from.depth);
    const near = across.widths[cellAt(across, (from.offset + to.offset) / 2)]!;
    const count = Math.max(1, Math.ceil((length * PIECES) / near));
    for (let piece = 0; piece < count; piece += 1) {
      const share = (piece + 0.5) / count;
      const offset = from.offset + (to.offset - from.offset) * share;
      const depth = from.depth + (to.depth - from.depth) * share;
      if (depth >= thickness) continue;
      const cell = cellBehind(cells, columns, cellAt(below, depth) * columns + cellAt(across, offset));
      if (cell >= 0) pieces.push({ cell, length: length / count, offset, depth });
    }
  }
  return pieces;
}
