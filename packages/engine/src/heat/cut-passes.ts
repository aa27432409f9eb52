import type { FloorLine } from './floor-line.ts';
import { freeFaces, heatedShares } from './free-faces.ts';
import type { CellShare } from './heat-body.ts';
import { type SectionCells, sectionCells } from './section-cells.ts';
import type { GriddedFloors } from './section-grid.ts';
import type { SectionPass } from './section-heat.ts';

/** A pass with the cells it leaves and the shares of its heat. */
export interface CutPass extends SectionPass {
  readonly section: SectionCells;
  readonly free: readonly CellShare[];
  readonly heated: readonly { readonly cell: number; readonly share: number }[];
}

/** Cells, free faces and heat of each pass, worked out once; the floors are closed and lie on the grid. */
export function cutPasses<Pass extends SectionPass>(
  { grid, floors }: GriddedFloors,
  passes: readonly Pass[],
  first: SectionCells,
): (Pass & CutPass)[] {
  let before = first;
  let floorBefore: FloorLine = [];
  return passes.map((pass, number) => {
    const floor = floors[number]!;
    const section = sectionCells(grid.across, grid.below, floor, before);
    const free = freeFaces(grid.across, grid.below, section, floor);
    const heated = heatedShares(grid.across, grid.below, section, floor, floorBefore);
    before = section;
    floorBefore = floor;
    return { ...pass, floor, section, free, heated };
  });
}
