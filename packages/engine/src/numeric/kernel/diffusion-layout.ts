/** How much room a diffusion problem needs. */
export interface DiffusionSize {
  /** Cells across the section [-]. */
  readonly across: number;
  /** Cells below the surface [-]. */
  readonly below: number;
  /** Cells along the seam; 1 for a section [-]. */
  readonly along: number;
  /** Nodes of the table over enthalpy [-]. */
  readonly nodes: number;
  /** Most cells that lose heat at a face, counted once for each face [-]. */
  readonly exposedMost: number;
  /** Most cells that take heat from outside [-]. */
  readonly sourcesMost: number;
}

/** Most stages of one step [-]. */
export const STAGES_MOST = 640;
/** Numbers that each stage has: c0, c1, c2, cf, cg [-]. */
export const STAGE_NUMBERS = 5;

/** The header's 32-bit numbers, in their order: sizes, then where each array begins, in bytes. */
const HEADER = [
  'cells',
  'row',
  'plane',
  'lastSegment',
  'now',
  'rate',
  'workA',
  'workB',
  'nextRate',
  'potential',
  'faceAcross',
  'faceBelow',
  'faceAlong',
  'inverseVolume',
  'peak',
  'potentialTable',
  'lossTable',
  'exposedCell',
  'exposedArea',
  'exposedHalf',
  'exposedCount',
  'sourceCell',
  'sourcePower',
  'sourceCount',
  'stages',
] as const;
type HeaderName = (typeof HEADER)[number];

/** The doubles behind the header, in their order. */
const SCALARS = [
  'tableStart',
  'tablePerUnit',
  'toleranceAbsolute',
  'toleranceRelative',
  'lossRate',
  'nextLossRate',
  'lost',
] as const;
const SCALARS_AT = 256;
const ARRAYS_AT = 512;

/** Place of one of the doubles behind the header [-]. */
export const SCALAR: Readonly<Record<(typeof SCALARS)[number], number>> = Object.fromEntries(
  SCALARS.map((name, at) => [name, at]),
) as Record<(typeof SCALARS)[number], number>;

/** Place of one of the header's numbers [-]. */
export const PLACE: Readonly<Record<HeaderName, number>> = Object.fromEntries(
  HEADER.map((name, at) => [name, at]),
) as Record<HeaderName, number>;

const CELL_ARRAYS = [
  'now',
  'rate',
  'workA',
  'workB',
  'nextRate',
  'potential',
  'faceAcross',
  'faceBelow',
  'faceAlong',
  'inverseVolume',
  'peak',
] as const;

/** Where everything lies in the memory of one problem. */
export interface DiffusionLayout {
  /** Cells, made even [-]. */
  readonly cells: number;
  /** Doubles before and behind each array of cells, so that a neighbour's place always exists [-]. */
  readonly pad: number;
  /** Cells from one row to the next [-]. */
  readonly row: number;
  /** Cells from one place along the seam to the next; 0 for a section [-]. */
  readonly plane: number;
  /** Where each array begins, behind its pad [B]. */
  readonly at: Readonly<Partial<Record<HeaderName, number>>>;
  /** Memory needed [B]. */
  readonly bytes: number;
}

/** The arrays of one problem, as views on its memory; arrays of cells have the pad left out. */
export interface DiffusionMemory {
  readonly layout: DiffusionLayout;
  /** Sizes, and where each array begins [cells or B]. */
  readonly header: Int32Array;
  /** Table's range, tolerances, loss rates [the unit of each]. */
  readonly scalars: Float64Array;
  /** Enthalpy [J/m3]. */
  readonly now: Float64Array;
  /** Rate of change of `now` [W/m3]. */
  readonly rate: Float64Array;
  /** Rate of change after the step tried last [W/m3]. */
  readonly nextRate: Float64Array;
  /** Conductance towards the next cell across, over the potential [m]. */
  readonly faceAcross: Float64Array;
  /** Conductance towards the next cell below [m]. */
  readonly faceBelow: Float64Array;
  /** Conductance towards the next cell along [m]. */
  readonly faceAlong: Float64Array;
  /** One over the volume; 0 for what is cut out [1/m3]. */
  readonly inverseVolume: Float64Array;
  /** Highest enthalpy so far [J/m3]. */
  readonly peak: Float64Array;
  /** Pairs of a straight piece: value at place 0, change per place; of the potential, the integral of k dT [W/m]. */
  readonly potentialTable: Float64Array;
  /** The same for the loss [W/m2] and for loss over potential from the surroundings [1/m]. */
  readonly lossTable: Float64Array;
  /** Cell behind each free face [-]. */
  readonly exposedCell: Int32Array;
  /** Area of the face [m2]. */
  readonly exposedArea: Float64Array;
  /** From the cell's middle to its face [m]. */
  readonly exposedHalf: Float64Array;
  /** Cell that takes heat [-]. */
  readonly sourceCell: Int32Array;
  /** Heat put into the cell [W]. */
  readonly sourcePower: Float64Array;
  /** c0, c1, c2 [-], cf and cg [s] of each stage. */
  readonly stages: Float64Array;
}

function even(count: number): number {
  return count + (count % 2);
}

/** Lays a problem out in one memory: header, arrays of cells with their pads, tables and lists. */
export function diffusionLayout(size: DiffusionSize): DiffusionLayout {
  const cells = even(size.across * size.below * size.along);
  const plane = size.along > 1 ? size.across * size.below : 0;
  const pad = even(Math.max(size.across, plane) + 2);
  const at: Partial<Record<HeaderName, number>> = {};
  let end = ARRAYS_AT;
  for (const name of CELL_ARRAYS) {
    at[name] = end + 8 * pad;
    end += 8 * (cells + 2 * pad);
  }
  const rest: readonly (readonly [HeaderName, number])[] = [
    ['potentialTable', 16 * size.nodes],
    ['lossTable', 32 * size.nodes],
    ['stages', 8 * STAGE_NUMBERS * STAGES_MOST],
    ['exposedArea', 8 * even(size.exposedMost)],
    ['exposedHalf', 8 * even(size.exposedMost)],
    ['sourcePower', 8 * even(size.sourcesMost)],
    ['exposedCell', 8 * even(size.exposedMost)],
    ['sourceCell', 8 * even(size.sourcesMost)],
  ];
  for (const [name, bytes] of rest) {
    at[name] = end;
    end += bytes;
  }
  return { cells, pad, row: size.across, plane, at, bytes: end };
}

/** Views of a problem's arrays on its memory, header filled in. */
export function diffusionMemory(
  layout: DiffusionLayout,
  size: DiffusionSize,
  buffer: ArrayBuffer,
): DiffusionMemory {
  const header = new Int32Array(buffer, 0, HEADER.length);
  for (const [name, at] of Object.entries(layout.at)) header[PLACE[name as HeaderName]] = at;
  header[PLACE.cells] = layout.cells;
  header[PLACE.row] = layout.row;
  header[PLACE.plane] = layout.plane;
  header[PLACE.lastSegment] = size.nodes - 2;
  const doubles = (name: HeaderName, length = layout.cells): Float64Array =>
    new Float64Array(buffer, layout.at[name], length);
  return {
    layout,
    header,
    scalars: new Float64Array(buffer, SCALARS_AT, SCALARS.length),
    now: doubles('now'),
    rate: doubles('rate'),
    nextRate: doubles('nextRate'),
    faceAcross: doubles('faceAcross'),
    faceBelow: doubles('faceBelow'),
    faceAlong: doubles('faceAlong'),
    inverseVolume: doubles('inverseVolume'),
    peak: doubles('peak'),
    potentialTable: doubles('potentialTable', 2 * size.nodes),
    lossTable: doubles('lossTable', 4 * size.nodes),
    exposedCell: new Int32Array(buffer, layout.at.exposedCell, size.exposedMost),
    exposedArea: doubles('exposedArea', size.exposedMost),
    exposedHalf: doubles('exposedHalf', size.exposedMost),
    sourceCell: new Int32Array(buffer, layout.at.sourceCell, size.sourcesMost),
    sourcePower: doubles('sourcePower', size.sourcesMost),
    stages: doubles('stages', STAGE_NUMBERS * STAGES_MOST),
  };
}
