import type { PlateLine } from './plate-line.ts';
import { runningMedian } from './plate-line.ts';
import type { Points } from './scan.ts';

/** The points of a groove in the frame of the plate line: along it, and square to it downwards. */
export interface GrooveFrame {
  /** Place along the plate line [m]. */
  readonly u: Float64Array;
  /** Depth below the plate line, square to it [m]. */
  readonly d: Float64Array;
  /** The same over a running median of five. */
  readonly smooth: Float64Array;
  /** Index of each point in the scan. */
  readonly index: Uint32Array;
  /** Depth of the left and right shoulder below the plate line: half of the step between the plates [m]. */
  readonly shoulder: readonly [number, number];
  /** Indices of points that stand alone against all their neighbours. */
  readonly outliers: readonly number[];
  /** Noise of one point, square to the line [m]. */
  readonly noise: number;
  readonly spacing: number;
}

/** Deviations of a single point, in standard deviations of the noise, from which it is an outlier [-]. */
const OUTLIER = 6;
/** Neighbours on either side that a point is held against [-]. */
const NEIGHBOURS = 3;

/** A point of the scan along the plate line, and square to it downwards [m]. */
export function inFrame(
  { slope, centre, left, right }: PlateLine,
  y: number,
  z: number,
): { readonly u: number; readonly d: number } {
  const cosine = 1 / Math.hypot(1, slope);
  const across = y - centre;
  const up = z - (left + right) / 2;
  return { u: (across + up * slope) * cosine, d: (across * slope - up) * cosine };
}

/** Marks single points that lie outside what their neighbours span, and turns the rest into the plate line's frame. */
export function grooveFrame(points: Points, plate: PlateLine): GrooveFrame {
  const cosine = 1 / Math.hypot(1, plate.slope);
  const middle = (plate.left + plate.right) / 2;
  const n = points.y.length;
  const u = new Float64Array(n);
  const d = new Float64Array(n);
  for (let i = 0; i < n; i += 1) {
    const across = points.y[i]! - plate.centre;
    const up = points.z[i]! - middle;
    u[i] = (across + up * plate.slope) * cosine;
    d[i] = (across * plate.slope - up) * cosine;
  }
  const bad = lonely(d, points.noise);
  const count = bad.reduce((sum, each) => sum - each, n);
  const outliers: number[] = [];
  const kept = { u: new Float64Array(count), d: new Float64Array(count), index: new Uint32Array(count) };
  let at = 0;
  for (let i = 0; i < n; i += 1) {
    if (bad[i] === 1) {
      outliers.push(points.index[i]!);
      continue;
    }
    kept.u[at] = u[i]!;
    kept.d[at] = d[i]!;
    kept.index[at] = points.index[i]!;
    at += 1;
  }
  return {
    ...kept,
    smooth: runningMedian(kept.d, 2),
    shoulder: [(middle - plate.left) * cosine, (middle - plate.right) * cosine],
    outliers,
    noise: points.noise * cosine,
    spacing: points.spacing,
  };
}

function lonely(d: Float64Array, noise: number): Uint8Array {
  const n = d.length;
  const bad = new Uint8Array(n);
  const around = new Float64Array(2 * NEIGHBOURS);
  for (let i = 0; i < n; i += 1) {
    // quick way out: between its two neighbours, or near one of them
    const left = d[Math.max(0, i - 1)]!;
    const right = d[Math.min(n - 1, i + 1)]!;
    const value = d[i]!;
    const near = OUTLIER * noise;
    if (value > Math.min(left, right) - near && value < Math.max(left, right) + near && i > 0 && i < n - 1)
      continue;
    const from = Math.max(0, Math.min(i - NEIGHBOURS, n - 1 - 2 * NEIGHBOURS));
    let count = 0;
    let jumps = 0;
    for (let k = from; k < Math.min(n, from + 2 * NEIGHBOURS + 1); k += 1) {
      if (k === i) continue;
      around[count] = d[k]!;
      count += 1;
    }
    if (count < 2 * NEIGHBOURS) continue;
    for (let k = 1; k < count; k += 1) jumps = Math.max(jumps, Math.abs(around[k]! - around[k - 1]!) / 2);
    const sorted = around.slice(0, count).sort();
    const low = sorted[1]!;
    const high = sorted[count - 2]!;
    const typical = Math.min(jumps, sorted[count - 1]! - sorted[0]!);
    const reach = near + Math.min(typical, 1.5 * medianJump(around, count));
    if (value < low - reach || value > high + reach) bad[i] = 1;
  }
  return bad;
}

function medianJump(values: Float64Array, count: number): number {
  const jumps = new Float64Array(count - 1);
  for (let k = 1; k < count; k += 1) jumps[k - 1] = Math.abs(values[k]! - values[k - 1]!);
  jumps.sort();
  return jumps[jumps.length >> 1]!;
}
