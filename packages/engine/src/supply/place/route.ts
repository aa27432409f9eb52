import type { BayPoint } from './bay.ts';
import { boxOf, distanceOf, meetsBox, middlesOf, type PlaneBox, sideOf } from './plane.ts';

/** Distance to the side at which a way along an edge is looked for room: a slit narrower than this is shut [m]. */
const ASIDE = 1e-3;

/** What a way may not pass: outside the outline, inside an obstacle. */
export interface Ground {
  readonly outline: readonly BayPoint[];
  readonly blocks: readonly (readonly BayPoint[])[];
  /** The box around each block. */
  readonly boxes: readonly PlaneBox[];
  /** Corners at which a shortest way can turn. */
  readonly corners: readonly BayPoint[];
  /** Corners that see each other, by corner: index and distance. */
  readonly sights: readonly (readonly Sight[])[];
}

interface Sight {
  readonly to: number;
  /** Distance [m]. */
  readonly distance: number;
}

/** Shortest distances from one point to every corner, and the corner before on that way. */
export interface Spread {
  readonly origin: BayPoint;
  readonly distances: readonly number[];
  /** Corner before, -1 where the origin is. */
  readonly before: readonly number[];
}

/** A shortest way between two points. */
export interface Way {
  /** Length, infinite where there is no way [m]. */
  readonly length: number;
  readonly points: readonly BayPoint[];
}

/** Sees which corners of a bay see each other: the visibility graph, on which every shortest way lies. */
export function groundOf(outline: readonly BayPoint[], blocks: readonly (readonly BayPoint[])[]): Ground {
  const all = [...outline, ...blocks.flat()];
  // A corner inside another block, or outside the bay, is on no way.
  const corners = all.filter(
    (corner) =>
      sideOf(corner, outline) !== 'outside' && blocks.every((block) => sideOf(corner, block) !== 'inside'),
  );
  const bare: Ground = { outline, blocks, boxes: blocks.map(boxOf), corners, sights: [] };
  const sights: Sight[][] = corners.map(() => []);
  for (const [i, a] of corners.entries()) {
    for (let to = i; to < corners.length; to += 1) {
      if (!isClear(bare, a, corners[to]!)) continue;
      const distance = distanceOf(a, corners[to]!);
      sights[i]!.push({ to, distance });
      if (to !== i) sights[to]!.push({ to: i, distance });
    }
  }
  return { ...bare, sights };
}

/** Corners seen from a point. */
export function sightsFrom(ground: Ground, from: BayPoint): readonly Sight[] {
  return ground.corners.flatMap((corner, to) =>
    isClear(ground, from, corner) ? [{ to, distance: distanceOf(from, corner) }] : [],
  );
}

/** Whether the straight way between two points is free; along an edge it is where there is room on one side. */
function isClear({ outline, blocks, boxes }: Ground, from: BayPoint, to: BayPoint): boolean {
  const near = blocks.filter((_, i) => meetsBox(from, to, boxes[i]!));
  const length = distanceOf(from, to);
  const aside = { x: (-(to.y - from.y) / length) * ASIDE, y: ((to.x - from.x) / length) * ASIDE };
  const stateOf = (p: BayPoint): 'free' | 'edge' | 'blocked' => {
    const side = sideOf(p, outline);
    if (side === 'outside') return 'blocked';
    const sides = near.map((block) => sideOf(p, block));
    if (sides.includes('inside')) return 'blocked';
    return side === 'edge' || sides.includes('edge') ? 'edge' : 'free';
  };
  return middlesOf(from, to, [outline, ...near]).every((p) => {
    const state = stateOf(p);
    if (state !== 'edge') return state === 'free';
    return [1, -1].some((way) => stateOf({ x: p.x + way * aside.x, y: p.y + way * aside.y }) === 'free');
  });
}

/** Shortest distances from a point to every corner (Dijkstra). */
export function spreadFrom(ground: Ground, origin: BayPoint): Spread {
  const distances: number[] = ground.corners.map(() => Number.POSITIVE_INFINITY);
  const before: number[] = ground.corners.map(() => -1);
  for (const { to, distance } of sightsFrom(ground, origin)) distances[to] = distance;
  const open = new Set(ground.corners.keys());
  while (open.size > 0) {
    let next = -1;
    for (const corner of open) if (next < 0 || distances[corner]! < distances[next]!) next = corner;
    open.delete(next);
    if (distances[next] === Number.POSITIVE_INFINITY) break;
    for (const { to, distance } of ground.sights[next]!) {
      const length = distances[next]! + distance;
      if (length < distances[to]!) {
        distances[to] = length;
        before[to] = next;
      }
    }
  }
  return { origin, distances, before };
}

/** Shortest way from a point, whose sights are known, to the origin of a spread. */
export function wayTo(ground: Ground, from: BayPoint, sights: readonly Sight[], spread: Spread): Way {
  if (isClear(ground, from, spread.origin)) {
    return { length: distanceOf(from, spread.origin), points: [from, spread.origin] };
  }
  let length = Number.POSITIVE_INFINITY;
  let first = -1;
  for (const { to, distance } of sights) {
    if (distance + spread.distances[to]! >= length) continue;
    length = distance + spread.distances[to]!;
    first = to;
  }
  if (first < 0) return { length, points: [] };
  const points = [from];
  for (let corner = first; corner >= 0; corner = spread.before[corner]!) points.push(ground.corners[corner]!);
  return { length, points: [...points, spread.origin] };
}

/** How often a way goes through areas. */
export function crossingsOf(points: readonly BayPoint[], areas: readonly (readonly BayPoint[])[]): number {
  return areas.reduce((sum, area) => sum + passes(points, area), 0);
}

function passes(points: readonly BayPoint[], area: readonly BayPoint[]): number {
  let count = 0;
  let within = false;
  for (const [i, to] of points.slice(1).entries()) {
    for (const middle of middlesOf(points[i]!, to, [area])) {
      const inside = sideOf(middle, area) === 'inside';
      if (inside && !within) count += 1;
      within = inside;
    }
  }
  return count;
}
