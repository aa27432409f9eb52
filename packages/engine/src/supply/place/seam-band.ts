import type { BayPoint } from './bay.ts';
import { distanceOf, distanceToSegment } from './plane.ts';

/** One stretch of the seam with its directions. */
interface Stretch {
  readonly start: BayPoint;
  readonly end: BayPoint;
  readonly length: number;
  readonly along: BayPoint;
}

function stretchesOf(seam: readonly BayPoint[]): readonly Stretch[] {
  return seam.slice(1).flatMap((end, i) => {
    const start = seam[i]!;
    const length = distanceOf(start, end);
    if (length === 0) return [];
    return [{ start, end, length, along: { x: (end.x - start.x) / length, y: (end.y - start.y) / length } }];
  });
}

/** The point so far along a stretch from its start and so far to its left. */
function pointAt({ start, along }: Stretch, forward: number, left: number): BayPoint {
  return {
    x: start.x + forward * along.x - left * along.y,
    y: start.y + forward * along.y + left * along.x,
  };
}

/** What leads keep clear of along a seam: a box around each stretch, this far out on every side. */
export function seamBand(seam: readonly BayPoint[], clearance: number): readonly (readonly BayPoint[])[] {
  if (clearance === 0) return [];
  return stretchesOf(seam).map((stretch) => [
    pointAt(stretch, -clearance, -clearance),
    pointAt(stretch, stretch.length + clearance, -clearance),
    pointAt(stretch, stretch.length + clearance, clearance),
    pointAt(stretch, -clearance, clearance),
  ]);
}

/**
 * Where a way enters the band to come to a point: straight across it, at right angles to the seam, from either side;
 * beyond an end of the seam also from ahead of that end. The point itself where it lies outside the band.
 */
export function accessesOf(
  point: BayPoint,
  seam: readonly BayPoint[],
  clearance: number,
): readonly BayPoint[] {
  const near = stretchesOf(seam).flatMap((stretch) => {
    const x = point.x - stretch.start.x;
    const y = point.y - stretch.start.y;
    const forward = x * stretch.along.x + y * stretch.along.y;
    const left = y * stretch.along.x - x * stretch.along.y;
    const inside = Math.abs(left) < clearance && forward > -clearance && forward < stretch.length + clearance;
    return inside ? [{ stretch, forward, left }] : [];
  });
  if (near.length === 0) return [point];
  return near.flatMap(({ stretch, forward, left }) => [
    pointAt(stretch, forward, clearance),
    pointAt(stretch, forward, -clearance),
    ...(forward < 0 ? [pointAt(stretch, -clearance, left)] : []),
    ...(forward > stretch.length ? [pointAt(stretch, stretch.length + clearance, left)] : []),
  ]);
}

/** Whether a way comes nearer to the seam than it should, its last piece at right angles or beyond an end left out. */
export function runsBeside(
  points: readonly BayPoint[],
  seam: readonly BayPoint[],
  clearance: number,
): boolean {
  return points.slice(1).some((to, i) => {
    const from = points[i]!;
    const middle = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
    return stretchesOf(seam).some((stretch) => {
      if (distanceToSegment(middle, stretch.start, stretch.end) >= clearance * (1 - 1e-9)) return false;
      const length = distanceOf(from, to);
      const across = Math.abs((to.x - from.x) * stretch.along.x + (to.y - from.y) * stretch.along.y);
      return across > 0.2 * length;
    });
  });
}
