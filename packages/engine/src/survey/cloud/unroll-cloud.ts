import { EigenvalueDecomposition, Matrix } from 'ml-matrix';
import type { CloudPoints } from '../read/read-ply.ts';
import type { SectionScan } from '../section/scan.ts';

/** A groove's cloud in the frame of its seam. */
export interface UnrolledCloud {
  /** Length of the seam that the cloud shows [m]. */
  readonly length: number;
  readonly sections: readonly SectionScan[];
  readonly map: FloorMap;
}

/** The floor unrolled: mean depth below the plate in cells along and across the seam. */
export interface FloorMap {
  /** Length of a cell along [m]. */
  readonly along: number;
  /** Width of a cell across [m]. */
  readonly across: number;
  /** Cells along [-]. */
  readonly columns: number;
  /** Cells across [-]. */
  readonly rows: number;
  /** Place of the first row across, from the middle [m]. */
  readonly first: number;
  /** Depth in each cell, row by row; NaN where no point lies [m]. */
  readonly depth: Float32Array;
}

/** How a cloud is unrolled. */
export interface UnrollOptions {
  /** Sections wanted at most [-]; left out: 50. */
  readonly sections?: number;
  /** Called with the share done [-]. */
  readonly progress?: (share: number) => void;
}

const SAMPLE = 20_000;
/** Part of the depth below the plate from which points are the groove's own [-]. */
const DEEP = 0.35;
/** Cells of the floor map: a few to the millimetre across are no more than a page shows. */
const MAP = { columns: 240, rows: 48 } as const;
/** Points of a section aimed at [-]. */
const SECTION_POINTS = 1200;

interface Frame {
  readonly origin: readonly [number, number, number];
  readonly along: readonly [number, number, number];
  readonly across: readonly [number, number, number];
  readonly up: readonly [number, number, number];
}

/**
 * Unrolls the cloud of a groove: finds the plate and the seam's axis, cuts sections at even stations, maps the floor.
 *
 * The plate is the plane from which most points lie little away; the axis is the long way of the points below it.
 *
 * @param points - the cloud [record], in m, at least a few thousand points
 * @param options - how [record], any; left out: 50 sections
 * @returns sections and map; undefined where no groove can be told [record]
 * @source principal axes of the points
 * @example
 * unrollCloud({ x: new Float64Array(3), y: new Float64Array(3), z: new Float64Array(3) }) // => undefined
 */
export function unrollCloud(points: CloudPoints, options: UnrollOptions = {}): UnrolledCloud | undefined {
  const { x, y, z } = points;
  const n = x.length;
  const frame = frameOf(points);
  if (frame === undefined) return undefined;
  const { origin, along, across, up } = frame;
  const s = new Float32Array(n);
  const t = new Float32Array(n);
  const h = new Float32Array(n);
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  let left = Number.POSITIVE_INFINITY;
  let right = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < n; i += 1) {
    const dx = x[i]! - origin[0];
    const dy = y[i]! - origin[1];
    const dz = z[i]! - origin[2];
    const a = dx * along[0] + dy * along[1] + dz * along[2];
    const b = dx * across[0] + dy * across[1] + dz * across[2];
    s[i] = a;
    t[i] = b;
    h[i] = dx * up[0] + dy * up[1] + dz * up[2];
    if (a < low) low = a;
    if (a > high) high = a;
    if (b < left) left = b;
    if (b > right) right = b;
    if ((i & 0xfffff) === 0) options.progress?.((0.5 * i) / n);
  }
  const length = high - low;
  const count = Math.max(1, Math.min(options.sections ?? 50, Math.floor(n / 300)));
  const slice = Math.min(length / count, Math.max((length * SECTION_POINTS) / n, 1e-4));
  const picked: number[][] = Array.from({ length: count }, () => []);
  const sums = new Float64Array(MAP.columns * MAP.rows);
  const hits = new Uint32Array(MAP.columns * MAP.rows);
  const cell = { along: length / MAP.columns, across: (right - left) / MAP.rows };
  for (let i = 0; i < n; i += 1) {
    const a = s[i]! - low;
    const section = Math.max(0, Math.min(count - 1, Math.floor((a / length) * count)));
    const centre = ((section + 0.5) / count) * length;
    if (Math.abs(a - centre) <= slice / 2) picked[section]!.push(i);
    const column = Math.max(0, Math.min(MAP.columns - 1, Math.floor(a / cell.along)));
    const row = Math.max(0, Math.min(MAP.rows - 1, Math.floor((t[i]! - left) / cell.across)));
    const at = row * MAP.columns + column;
    sums[at]! -= h[i]!;
    hits[at]! += 1;
    if ((i & 0xfffff) === 0) options.progress?.(0.5 + (0.5 * i) / n);
  }
  options.progress?.(1);
  return {
    length,
    sections: picked.map((rows, k) => ({
      station: ((k + 0.5) / count) * length,
      across: Float64Array.from(rows, (i) => t[i]!),
      height: Float64Array.from(rows, (i) => h[i]!),
      rows: Float64Array.from(rows, (i) => i + 1),
    })),
    map: {
      ...cell,
      columns: MAP.columns,
      rows: MAP.rows,
      first: left + cell.across / 2,
      depth: Float32Array.from(sums, (sum, i) => (hits[i]! > 0 ? sum / hits[i]! : Number.NaN)),
    },
  };
}

function frameOf({ x, y, z }: CloudPoints): Frame | undefined {
  const n = x.length;
  const step = Math.max(1, Math.floor(n / SAMPLE));
  let sample: number[] = [];
  for (let i = 0; i < n; i += step)
    if (Number.isFinite(x[i]!) && Number.isFinite(y[i]!) && Number.isFinite(z[i]!)) sample.push(i);
  if (sample.length < 500) return undefined;
  const all = sample;
  // the plate: a plane, fitted again to the points that do not lie below it
  let plane = axesOf(all, x, y, z);
  for (let round = 0; round < 12; round += 1) {
    const away = all.map((i) => heightOver(plane, x[i]!, y[i]!, z[i]!));
    const sorted = [...away].sort((a, b) => a - b);
    const top = sorted[Math.floor(0.9 * sorted.length)]!;
    const reach = Math.max(
      1.5 * (sorted[Math.floor(0.97 * sorted.length)]! - top),
      0.06 * (top - sorted[0]!),
      1e-6,
    );
    sample = all.filter((_, k) => away[k]! > top - reach);
    if (sample.length < 100) break;
    plane = axesOf(sample, x, y, z);
  }
  const depths = all.map((i) => -heightOver(plane, x[i]!, y[i]!, z[i]!));
  const sorted = [...depths].sort((a, b) => a - b);
  const deepest = sorted[Math.floor(0.995 * sorted.length)]!;
  if (!(deepest > 3e-4)) return undefined;
  const deep = all.filter((_, k) => depths[k]! > DEEP * deepest);
  if (deep.length < 50) return undefined;
  const { axes } = axesOf(deep, x, y, z);
  const up = plane.axes[2]!;
  // the long way of the groove, laid into the plate
  const long = axes[0]!;
  const lift = dot(long, up);
  const along = unit([long[0] - lift * up[0], long[1] - lift * up[1], long[2] - lift * up[2]]);
  const way = along[0] + along[1] + along[2] < 0 ? (along.map((each) => -each) as unknown as Vector) : along;
  return { origin: plane.origin, along: way, across: cross(up, way), up };
}

type Vector = readonly [number, number, number];

interface Axes {
  readonly origin: Vector;
  /** Principal directions, the longest first; the last looks upwards. */
  readonly axes: readonly Vector[];
}

function axesOf(of: readonly number[], x: Float64Array, y: Float64Array, z: Float64Array): Axes {
  const mean = [x, y, z].map((column) => of.reduce((sum, i) => sum + column[i]!, 0) / of.length);
  const columns = [x, y, z];
  const matrix = columns.map((a, j) =>
    columns.map(
      (b, k) => of.reduce((sum, i) => sum + (a[i]! - mean[j]!) * (b[i]! - mean[k]!), 0) / of.length,
    ),
  );
  const decomposition = new EigenvalueDecomposition(new Matrix(matrix), { assumeSymmetric: true });
  const order = decomposition.realEigenvalues
    .map((value, i) => ({ value, i }))
    .sort((a, b) => b.value - a.value)
    .map(({ i }) => i);
  const vectors = decomposition.eigenvectorMatrix;
  const axes = order.map((i) => unit([vectors.get(0, i), vectors.get(1, i), vectors.get(2, i)]));
  const last = axes[2]!;
  if (last[2] < 0) axes[2] = [-last[0], -last[1], -last[2]];
  return { origin: mean as unknown as Vector, axes };
}

function heightOver({ origin, axes }: Axes, x: number, y: number, z: number): number {
  return dot([x - origin[0], y - origin[1], z - origin[2]], axes[2]!);
}

function dot(a: Vector, b: Vector): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

function unit(v: Vector): Vector {
  const length = Math.hypot(...v);
  return [v[0] / length, v[1] / length, v[2] / length];
}

function cross(a: Vector, b: Vector): Vector {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}
