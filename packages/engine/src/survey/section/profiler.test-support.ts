import { type DrawStream, drawStream } from '../../numeric/index.ts';
import type { SectionScan } from './scan.ts';

/** A groove in closed form: depth below the plate over the distance from its centre line; its walls go on above the plate [m]. */
export interface ClosedGroove {
  readonly depthAt: (offset: number) => number;
  readonly depth: number;
  readonly halfWidth: number;
  readonly radius: number | undefined;
  readonly wall: number | undefined;
  readonly area: number;
}

function withArea(groove: Omit<ClosedGroove, 'area'>): ClosedGroove {
  const steps = 20_000;
  let sum = 0;
  for (let i = 0; i < steps; i += 1)
    sum += groove.depthAt(((i + 0.5) / steps) * groove.halfWidth) * (groove.halfWidth / steps) * 2;
  return { ...groove, area: sum };
}

/** A circular segment. */
export function segmentGroove(width: number, depth: number): ClosedGroove {
  const half = width / 2;
  const radius = (half * half + depth * depth) / (2 * depth);
  const depthAt = (y: number): number =>
    depth - radius + (Math.abs(y) < radius ? Math.sqrt(radius * radius - y * y) : Number.NEGATIVE_INFINITY);
  return withArea({ depthAt, depth, halfWidth: half, radius, wall: undefined });
}

/** A U with straight walls at an angle against the square to the plate, tangent to the root's arc. */
export function uGroove(depth: number, radius: number, wall: number): ClosedGroove {
  const touch = radius * Math.cos(wall);
  const touchDepth = depth - radius + radius * Math.sin(wall);
  const half = touch + touchDepth * Math.tan(wall);
  const depthAt = (y: number): number => {
    const t = Math.abs(y);
    return t <= touch ? depth - radius + Math.sqrt(radius * radius - t * t) : (half - t) / Math.tan(wall);
  };
  return withArea({ depthAt, depth, halfWidth: half, radius, wall });
}

/** A flat floor between straight walls. */
export function trapezoidGroove(depth: number, floor: number, wall: number): ClosedGroove {
  const half = floor / 2 + depth * Math.tan(wall);
  const depthAt = (y: number): number => Math.min(depth, (half - Math.abs(y)) / Math.tan(wall));
  return withArea({ depthAt, depth, halfWidth: half, radius: undefined, wall });
}

/** How a simulated profiler sees a groove. */
export interface Profiler {
  readonly noise: number;
  readonly tilt?: number;
  /** Right plate above the left one [m]. */
  readonly step?: number;
  /** Range of the scan across, and its points. */
  readonly from?: number;
  readonly to?: number;
  readonly points?: number;
  /** Share of points that are missing. */
  readonly dropouts?: number;
  /** Points that are wild: how many. */
  readonly wild?: number;
  /** Burr at both edges: how high [m]. */
  readonly burr?: number;
  /** The scanner looks from this side: angle of its beam against the upright; what a wall hides is missing [rad]. */
  readonly beam?: number;
  readonly seed: number;
}

/** Scans a groove: one point per step across, heights upwards, the first row being 1. */
export function scanGroove(groove: ClosedGroove, profiler: Profiler): SectionScan & { wildRows: number[] } {
  const { noise, tilt = 0, step = 0, points = 800, dropouts = 0, wild = 0, burr = 0, beam = 0 } = profiler;
  const { from = -groove.halfWidth - 0.012, to = groove.halfWidth + 0.012 } = profiler;
  const draws = drawStream(profiler.seed);
  const surface = (u: number): number => {
    const plate = u < 0 ? step / 2 : -step / 2;
    const beside = Math.abs(u) - groove.halfWidth - Math.abs(step);
    const crest =
      burr > 0 && beside > -1e-4 && beside < 1.5e-3
        ? burr * Math.sin((Math.PI * (beside + 1e-4)) / 1.6e-3)
        : 0;
    return Math.max(plate, groove.depthAt(u)) - crest;
  };
  const dense = 6000;
  const line = Array.from({ length: dense + 1 }, (_, i) => {
    const u = from - 0.01 + ((to - from + 0.02) * i) / dense;
    const d = surface(u);
    return [u * Math.cos(tilt) + d * Math.sin(tilt), u * Math.sin(tilt) - d * Math.cos(tilt)] as const;
  });
  const across = new Float64Array(points);
  const height = new Float64Array(points);
  const shift = draws.uniform() - 0.5;
  let k = 0;
  for (let i = 0; i < points; i += 1) {
    const y = from + ((to - from) * (i + 0.5 + 0.9 * shift)) / points;
    while (k < dense - 1 && line[k + 1]![0] < y) k += 1;
    const [a, b] = [line[k]!, line[k + 1]!];
    const part = Math.min(1, Math.max(0, (y - a[0]) / (b[0] - a[0] || 1)));
    across[i] = y;
    height[i] = a[1] + part * (b[1] - a[1]) + noise * draws.normal();
  }
  if (beam !== 0) hide(across, height, beam);
  if (dropouts > 0)
    for (let i = 0; i < points; i += 1) if (draws.uniform() < dropouts) height[i] = Number.NaN;
  const wildRows = wildPoints(height, wild, draws, noise);
  return { across, height, wildRows };
}

function hide(across: Float64Array, height: Float64Array, beam: number): void {
  let horizon = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < across.length; i += 1) {
    const seen = height[i]! + across[i]! / Math.tan(beam);
    if (seen < horizon - 2e-4) height[i] = Number.NaN;
    horizon = Math.max(horizon, seen);
  }
}

function wildPoints(height: Float64Array, wild: number, draws: DrawStream, noise: number): number[] {
  const rows = new Set<number>();
  while (rows.size < wild) {
    const i = 5 + Math.floor(draws.uniform() * (height.length - 10));
    if (Number.isNaN(height[i]!) || [...rows].some((row) => Math.abs(row - 1 - i) < 8)) continue;
    height[i]! += (draws.uniform() < 0.5 ? -1 : 1) * (Math.max(3e-3, 40 * noise) + 2e-3 * draws.uniform());
    rows.add(i + 1);
  }
  return [...rows].sort((a, b) => a - b);
}
