import type { Axis } from './axis.ts';
import { facePieces } from './face-pieces.ts';
import { depthAt, type FloorLine } from './floor-line.ts';
import type { CellShare } from './heat-body.ts';
import type { SectionCells } from './section-cells.ts';

/** Gathers lengths by cell. */
function gathered(lengths: ReadonlyMap<number, number>, half: (cell: number) => number): CellShare[] {
  return [...lengths].map(([cell, length]) => ({ cell, length, half: half(cell) }));
}

/** All faces of a section that meet the air: groove, surface beside it and back; the far ends are closed. */
export function freeFaces(across: Axis, below: Axis, cells: SectionCells, floor: FloorLine): CellShare[] {
  const columns = across.widths.length;
  const rows = below.widths.length;
  const lengths = new Map<number, number>();
  const add = (cell: number, length: number): void => {
    if (cell >= 0 && length > 0) lengths.set(cell, (lengths.get(cell) ?? 0) + length);
  };
  for (const { cell, length } of facePieces(across, below, cells, floor)) add(cell, length);
  const left = floor[0]?.offset ?? 0;
  const right = floor.at(-1)?.offset ?? 0;
  for (let i = 0; i < columns; i += 1) {
    const covered = Math.min(across.edges[i + 1]!, right) - Math.max(across.edges[i]!, left);
    add(cells.holder[i]!, across.widths[i]! - Math.max(0, covered));
  }
  const top = gathered(lengths, (cell) => below.widths[Math.floor(cell / columns)]! / 2);
  lengths.clear();
  for (let i = 0; i < columns; i += 1) add(cells.holder[(rows - 1) * columns + i]!, across.widths[i]!);
  return [...top, ...gathered(lengths, (cell) => below.widths[Math.floor(cell / columns)]! / 2)];
}

/** Depth by which a floor must have gone down to count as newly cut [m]. */
const NEWLY = 1e-6;

/** Shares of a pass's heat by cell, even over the face that it newly cut; over the whole groove if it cut none. */
export function heatedShares(
  across: Axis,
  below: Axis,
  cells: SectionCells,
  floor: FloorLine,
  before: FloorLine,
): { readonly cell: number; readonly share: number }[] {
  const pieces = facePieces(across, below, cells, floor).filter(({ depth }) => depth > NEWLY);
  const cut = pieces.filter(({ offset, depth }) => depth > depthAt(before, offset) + NEWLY);
  const lengths = new Map<number, number>();
  for (const { cell, length } of cut.length > 0 ? cut : pieces)
    lengths.set(cell, (lengths.get(cell) ?? 0) + length);
  const total = [...lengths.values()].reduce((sum, each) => sum + each, 0);
  return [...lengths].map(([cell, length]) => ({ cell, share: length / total }));
}
