import { MAD, medianOf } from './circle.ts';
import { gaussianFilter } from './profile-filter.ts';

/** One scanned cross-section: points across the seam, in file order; SI. */
export interface SectionScan {
  /** Place along the seam, where it is known [m]. */
  readonly station?: number;
  /** Place of each point across the seam; NaN where it is missing [m]. */
  readonly across: Float64Array;
  /** Height of each point, upwards; NaN where it is missing [m]. */
  readonly height: Float64Array;
  /** Row of each point in its file, from 1; left out: its number in the list [-]. */
  readonly rows?: Float64Array;
}

/** The points of a section that were read, from left to right. */
export interface Points {
  readonly y: Float64Array;
  readonly z: Float64Array;
  /** Index of each in the scan. */
  readonly index: Uint32Array;
  readonly missing: number;
  /** Standard deviation of the noise of one point, from second differences [m]. */
  readonly noise: number;
  /** Usual distance between neighbours [m]. */
  readonly spacing: number;
}

/** Sorts the points of a scan from left to right, leaves out what is missing, estimates their noise, and smooths them where a cutoff is named. */
export function pointsOf(scan: SectionScan, cutoff?: number): Points {
  const { across, height } = scan;
  const keep: number[] = [];
  let sorted = true;
  let before = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < across.length; i += 1) {
    if (!Number.isFinite(across[i]!) || !Number.isFinite(height[i]!)) continue;
    if (across[i]! < before) sorted = false;
    before = across[i]!;
    keep.push(i);
  }
  if (!sorted) keep.sort((a, b) => across[a]! - across[b]! || a - b);
  const index = Uint32Array.from(keep);
  const n = index.length;
  const y = new Float64Array(n);
  let z: Float64Array = new Float64Array(n);
  for (let i = 0; i < n; i += 1) {
    y[i] = across[index[i]!]!;
    z[i] = height[index[i]!]!;
  }
  const noise = noiseOf(y, z);
  if (cutoff !== undefined) z = gaussianFilter(y, z, cutoff);
  const gaps = new Float64Array(Math.max(0, n - 1));
  for (let i = 1; i < n; i += 1) gaps[i - 1] = y[i]! - y[i - 1]!;
  return { y, z, index, missing: across.length - n, noise, spacing: medianOf(gaps) };
}

/** Noise of one point: how far it lies off the line through its neighbours, by the median, so that walls do not count. */
function noiseOf(y: Float64Array, z: Float64Array): number {
  const n = y.length;
  if (n < 5) return 0;
  const off = new Float64Array(n - 2);
  for (let i = 1; i < n - 1; i += 1) {
    const run = y[i + 1]! - y[i - 1]!;
    const part = run > 0 ? (y[i]! - y[i - 1]!) / run : 0.5;
    const away = z[i]! - z[i - 1]! - part * (z[i + 1]! - z[i - 1]!);
    off[i - 1] = Math.abs(away) / Math.sqrt(1 + part * part + (1 - part) ** 2);
  }
  return MAD * medianOf(off);
}
