import type { BayPoint } from './bay.ts';

/** Distance within which a point counts as on an edge [m]. */
const TOUCH = 1e-9;

/** Distance between two points. */
export function distanceOf(a: BayPoint, b: BayPoint): number {
  return Math.hypot(a.x - b.x, a.y - b.y);
}

/** Shortest distance from a point to a piece of a straight line. */
export function distanceToSegment(p: BayPoint, a: BayPoint, b: BayPoint): number {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const square = dx * dx + dy * dy;
  const t = square === 0 ? 0 : Math.min(1, Math.max(0, ((p.x - a.x) * dx + (p.y - a.y) * dy) / square));
  return Math.hypot(p.x - a.x - t * dx, p.y - a.y - t * dy);
}

/** Shortest distance from a point to the edges of a polygon. */
export function distanceToEdges(p: BayPoint, corners: readonly BayPoint[]): number {
  return Math.min(...corners.map((a, i) => distanceToSegment(p, a, corners[(i + 1) % corners.length]!)));
}

/** Where a point lies to a polygon. */
export function sideOf(p: BayPoint, corners: readonly BayPoint[]): 'inside' | 'edge' | 'outside' {
  let inside = false;
  for (const [i, a] of corners.entries()) {
    const b = corners[(i + 1) % corners.length]!;
    if (distanceToSegment(p, a, b) <= TOUCH) return 'edge';
    if (a.y > p.y !== b.y > p.y && p.x < a.x + ((p.y - a.y) / (b.y - a.y)) * (b.x - a.x)) inside = !inside;
  }
  return inside ? 'inside' : 'outside';
}

/** Where along a straight way, from 0 to 1, the edges of polygons meet it; both ends included, rising. */
function cutsOf(from: BayPoint, to: BayPoint, polygons: readonly (readonly BayPoint[])[]): readonly number[] {
  const cuts = [0, 1];
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  const square = dx * dx + dy * dy;
  for (const corners of polygons) {
    for (const [i, a] of corners.entries()) {
      const b = corners[(i + 1) % corners.length]!;
      const ex = b.x - a.x;
      const ey = b.y - a.y;
      const cross = dx * ey - dy * ex;
      if (Math.abs(cross) <= 1e-14 * Math.sqrt(square) * Math.hypot(ex, ey)) {
        if (square === 0) continue;
        for (const p of [a, b]) cuts.push(((p.x - from.x) * dx + (p.y - from.y) * dy) / square);
        continue;
      }
      const u = ((a.x - from.x) * dy - (a.y - from.y) * dx) / cross;
      if (u >= -1e-9 && u <= 1 + 1e-9) cuts.push(((a.x - from.x) * ey - (a.y - from.y) * ex) / cross);
    }
  }
  return cuts.filter((t) => t >= 0 && t <= 1).sort((a, b) => a - b);
}

/** Middles of the parts into which the edges of polygons cut a straight way, parts of no length left out. */
export function middlesOf(
  from: BayPoint,
  to: BayPoint,
  polygons: readonly (readonly BayPoint[])[],
): readonly BayPoint[] {
  const length = distanceOf(from, to);
  const cuts = cutsOf(from, to, polygons);
  return cuts.slice(1).flatMap((t, i) => {
    if ((t - cuts[i]!) * length <= 2 * TOUCH) return [];
    const middle = (t + cuts[i]!) / 2;
    return [{ x: from.x + middle * (to.x - from.x), y: from.y + middle * (to.y - from.y) }];
  });
}

/** The box around points. */
export interface PlaneBox {
  readonly left: number;
  readonly right: number;
  readonly low: number;
  readonly high: number;
}

/** The box around points. */
export function boxOf(points: readonly BayPoint[]): PlaneBox {
  const box = {
    left: Number.POSITIVE_INFINITY,
    right: Number.NEGATIVE_INFINITY,
    low: Number.POSITIVE_INFINITY,
    high: Number.NEGATIVE_INFINITY,
  };
  for (const { x, y } of points) {
    box.left = Math.min(box.left, x);
    box.right = Math.max(box.right, x);
    box.low = Math.min(box.low, y);
    box.high = Math.max(box.high, y);
  }
  return box;
}

/** Whether the box around a straight way has something in common with a box. */
export function meetsBox(from: BayPoint, to: BayPoint, { left, right, low, high }: PlaneBox): boolean {
  return (
    Math.min(from.x, to.x) <= right &&
    Math.max(from.x, to.x) >= left &&
    Math.min(from.y, to.y) <= high &&
    Math.max(from.y, to.y) >= low
  );
}
