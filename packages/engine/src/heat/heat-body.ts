import { type DiffusionKernel, diffusionKernel } from '../numeric/index.ts';
import type { Axis } from './axis.ts';
import type { SectionCells } from './section-cells.ts';
import { lossTable, type SurfaceLoss } from './surface-loss.ts';
import {
  enthalpyAt,
  layPieces,
  type ThermalProperties,
  type ThermalTables,
  thermalTables,
} from './thermal-tables.ts';

/** Cells across, below and along; a section has one cell of 1 m along. */
export interface HeatGrid {
  readonly across: Axis;
  readonly below: Axis;
  readonly along: Axis;
}

/** A cell's share in a free face, or in a source. */
export interface CellShare {
  /** Number of the cell in its section [-]. */
  readonly cell: number;
  /** Length of face across the section [m]. */
  readonly length: number;
  /** From the cell's middle to the face [m]. */
  readonly half: number;
}

/** A plate in memory, ready to be marched through time. */
export interface HeatBody {
  readonly grid: HeatGrid;
  readonly tables: ThermalTables;
  readonly kernel: DiffusionKernel;
  /** Cells of one section [-]. */
  readonly plane: number;
  /** Which cells hold metal, at each place along. */
  readonly sections: SectionCells[];
  /** Faces that lose heat, at each place along. */
  readonly free: (readonly CellShare[])[];
  /** Whether the first and the last section lose heat at their free side too. */
  readonly ends: { readonly front: boolean; readonly back: boolean };
  /** Volume of each cell [m3]. */
  readonly volume: Float64Array;
  /** Bound on the quickest rate of decay, at each place along [1/s]. */
  readonly stiffness: Float64Array;
  /** Heat per volume at the start, from which energies count [J/m3]. */
  readonly reference: number;
}

/** What a body is made of. */
export interface HeatBodyInput {
  readonly metal: ThermalProperties;
  readonly grid: HeatGrid;
  /** Temperature of the whole plate [K]. */
  readonly start: number;
  /** How free faces lose heat; null: not at all. */
  readonly loss: SurfaceLoss | null;
  readonly section: SectionCells;
  readonly free: readonly CellShare[];
  /** Whether the first and the last section lose heat at their free side too. */
  readonly ends?: { readonly front: boolean; readonly back: boolean };
  /** Most cells that will take heat at once [-]. */
  readonly sourcesMost: number;
  /** Error allowed in a step, root mean square of all cells [K]. */
  readonly tolerance: number;
  /** Which inner loop to run. */
  readonly form?: 'fastest' | 'typescript';
}

/** Heat that one kelvin means in the tolerance, about that of cold steel [J/(m3 K)]. */
const HEAT_PER_KELVIN = 3.5e6;

/** A plate of one temperature, the same section all along. */
export function heatBody(input: HeatBodyInput): HeatBody {
  const { grid, metal, loss } = input;
  const tables = thermalTables(metal);
  const across = grid.across.widths.length;
  const below = grid.below.widths.length;
  const along = grid.along.widths.length;
  const plane = across * below;
  const kernel = diffusionKernel(
    {
      across,
      below,
      along,
      nodes: tables.temperature.length,
      exposedMost: 4 * (across + below) * along + (along > 1 ? 2 * plane : 0),
      sourcesMost: input.sourcesMost,
    },
    input.form,
  );
  const { memory } = kernel;
  kernel.setUp({
    tableStart: tables.start,
    tablePerUnit: tables.perUnit,
    tolerance: HEAT_PER_KELVIN * input.tolerance,
  });
  layPieces(tables.potential, memory.potentialTable, 2, 0);
  if (loss) {
    const { flux, ratio } = lossTable(tables, loss);
    layPieces(flux, memory.lossTable, 4, 0);
    layPieces(ratio, memory.lossTable, 4, 2);
  }
  const reference = enthalpyAt(tables, input.start);
  memory.now.fill(reference);
  memory.peak.fill(reference);
  const body: HeatBody = {
    stiffness: new Float64Array(along),
    grid,
    tables,
    kernel,
    plane,
    sections: Array.from({ length: along }, () => input.section),
    free: Array.from({ length: along }, () => (loss ? input.free : [])),
    ends: input.ends ?? { front: false, back: false },
    volume: new Float64Array(memory.layout.cells),
    reference,
  };
  layCells(body, 0, along);
  layFree(body);
  return body;
}

/** Lays volumes and faces down for the places along from one up to another, after their sections changed. */
export function layCells(body: HeatBody, from: number, to: number): void {
  const { plane, kernel, grid, sections, volume } = body;
  const { faceAcross, faceBelow, inverseVolume } = kernel.memory;
  const lengths = grid.along.widths;
  for (let place = from; place < to; place += 1) {
    const length = lengths[place]!;
    const { area, openAcross, openBelow } = sections[place]!;
    for (let cell = 0, at = place * plane; cell < plane; cell += 1, at += 1) {
      volume[at] = area[cell]! * length;
      inverseVolume[at] = area[cell]! > 0 ? 1 / volume[at]! : 0;
      faceAcross[at] = openAcross[cell]! * length;
      faceBelow[at] = openBelow[cell]! * length;
    }
  }
  for (let place = Math.max(0, from - 1); place < Math.min(to, lengths.length - 1); place += 1)
    layJoint(body, place);
  const last = Math.min(to + 1, lengths.length);
  for (let place = Math.max(0, from - 1); place < last; place += 1)
    body.stiffness[place] = stiffnessAt(body, place);
}

/** Faces between a place along and the next: as much as both sides have metal. */
function layJoint({ plane, kernel, grid, sections }: HeatBody, place: number): void {
  const here = sections[place]!.area;
  const there = sections[place + 1]!.area;
  const distance = grid.along.centres[place + 1]! - grid.along.centres[place]!;
  for (let cell = 0, at = place * plane; cell < plane; cell += 1, at += 1) {
    kernel.memory.faceAlong[at] = Math.min(here[cell]!, there[cell]!) / distance;
  }
}

/** Bound on the quickest rate of decay at a place along (Gershgorin), free faces included [1/s]. */
function stiffnessAt(body: HeatBody, place: number): number {
  const { plane, kernel, tables } = body;
  const { faceAcross, faceBelow, faceAlong, inverseVolume, layout } = kernel.memory;
  const faces = new Float64Array(plane);
  const start = place * plane;
  for (let cell = 0, at = start; cell < plane; cell += 1, at += 1) {
    const before = (face: Float64Array, step: number): number =>
      at >= step && step > 0 ? face[at - step]! : 0;
    faces[cell] =
      2 *
      (faceAcross[at]! +
        before(faceAcross, 1) +
        faceBelow[at]! +
        before(faceBelow, layout.row) +
        (layout.plane > 0 ? faceAlong[at]! + before(faceAlong, layout.plane) : 0));
  }
  for (const { cell, area, half } of freeAreas(body, place)) faces[cell] = faces[cell]! + area / half;
  let most = 0;
  for (let cell = 0; cell < plane; cell += 1)
    most = Math.max(most, faces[cell]! * inverseVolume[start + cell]!);
  return most * tables.diffusivityMost;
}

/** Free faces of one section with their areas, those at the plate's ends included. */
function freeAreas(
  { free, ends, grid, sections }: HeatBody,
  place: number,
): { readonly cell: number; readonly area: number; readonly half: number }[] {
  const width = grid.along.widths[place]!;
  const areas = free[place]!.map(({ cell, length, half }) => ({ cell, area: length * width, half }));
  const last = grid.along.widths.length - 1;
  const sides = Number(ends.front && place === 0) + Number(ends.back && place === last);
  if (sides === 0) return areas;
  sections[place]!.area.forEach((area, cell) => {
    if (area > 0) areas.push({ cell, area: area * sides, half: width / 2 });
  });
  return areas;
}

/** Lays the lists of free faces down, after sections or their free faces changed. */
export function layFree(body: HeatBody): void {
  const { exposedCell, exposedArea, exposedHalf } = body.kernel.memory;
  let count = 0;
  for (let place = 0; place < body.sections.length; place += 1) {
    for (const { cell, area, half } of freeAreas(body, place)) {
      exposedCell[count] = place * body.plane + cell;
      exposedArea[count] = area;
      exposedHalf[count] = half;
      count += 1;
    }
  }
  body.kernel.countExposed(count);
}
