import { type Axis, stretchedAxis } from './axis.ts';
import type { FloorLine } from './floor-line.ts';
import { isMirrored, rightHalf } from './mirror.ts';

/** Metal beside and below the groove that is resolved as finely as the groove [m]. */
const MARGIN = 8e-3;
/** Fine cells across groove and margins, for a quick look [-]. */
const FINE_CELLS = 48;
const FINEST = 0.6e-3;
const COARSEST = 1.5e-3;
/** Growth from cell to cell beside the fine part, for a quick look [-]. */
const GROWTH = 1.18;
/** Across, that growth grows from cell to cell, for a quick look, and up to so much: far away the field is smooth [-]. */
const QUICKENS = 1.1;
const GROWTH_MOST = 1.6;
/** No cell below the groove is taller than so many fine ones [-]. */
const TALLEST = 6;

/** A section's grid: across and below. */
export interface SectionGrid {
  readonly across: Axis;
  readonly below: Axis;
  /** Width of the fine cells [m]. */
  readonly fine: number;
  /** Sides of the centre line that each cell stands for: 2 where the grid is the right half of a section that is its own mirror [-]. */
  readonly sides: 1 | 2;
}

/** A section's grid with the floors as they lie on it. */
export interface GriddedFloors {
  readonly grid: SectionGrid;
  readonly floors: readonly FloorLine[];
}

/** The grid of a section: half of it where all floors are their own mirror. */
export function griddedFloors(
  thickness: number,
  halfWidth: number,
  floors: readonly FloorLine[],
  halving: number,
): GriddedFloors {
  const half = floors.every(isMirrored);
  return {
    grid: sectionGrid(thickness, halfWidth, floors, halving, half ? 2 : 1),
    floors: half ? floors.map(rightHalf) : floors,
  };
}

/** Fine cells by the groove, growing ones outward; `halving` 1 halves every cell, 2 quarters it. */
function sectionGrid(
  thickness: number,
  halfWidth: number,
  floors: readonly FloorLine[],
  halving: number,
  sides: 1 | 2,
): SectionGrid {
  const points = floors.flat();
  const offsets = points.filter(({ depth }) => depth > 0).map(({ offset }) => Math.abs(offset));
  const reach = Math.max(
    2e-3,
    ...offsets,
    ...points.map(({ offset }) => Math.abs(offset)).filter((each) => each < 0.05),
  );
  const deepest = Math.max(1e-3, ...points.map(({ depth }) => depth));
  const cell = Math.min(COARSEST, Math.max(FINEST, (2 * (reach + MARGIN)) / FINE_CELLS));
  const coarse = Math.min(cell, thickness / 8);
  const fine = coarse / 2 ** halving;
  const growth = GROWTH ** (1 / 2 ** halving);
  // edges of a coarser grid stay edges of a finer one, so that both see the same place of the floor
  const fineTo = Math.min(halfWidth, Math.ceil((reach + MARGIN) / coarse) * coarse);
  const left = sides === 2 ? 0 : -1;
  const across = stretchedAxis([left * halfWidth, halfWidth], left * fineTo, fineTo, {
    fine,
    growth,
    quickens: { by: QUICKENS ** (1 / 2 ** halving), most: GROWTH_MOST },
    widest: halfWidth / 8,
  });
  const down = Math.min(thickness, Math.ceil((deepest + MARGIN) / coarse) * coarse);
  const below = stretchedAxis([0, thickness], 0, down, {
    fine,
    growth,
    widest: (TALLEST * coarse) / 2 ** halving,
  });
  return { across, below, fine, sides };
}
