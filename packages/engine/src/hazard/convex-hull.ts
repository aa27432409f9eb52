/** A point of a plan view. */
export interface PlanPoint {
  /** To the right [m]. */
  readonly x: number;
  /** Up the plan [m]. */
  readonly y: number;
}

/**
 * Smallest convex outline around points, by Andrew's monotone chain.
 *
 * @param points - points [list], any number
 * @returns corners against the clock, the first not repeated [list]
 * @source Andrew 1979, Information Processing Letters 9
 * @example
 * convexHull([{ x: 0, y: 0 }, { x: 1, y: 1 }, { x: 2, y: 0 }, { x: 1, y: 0.2 }]) // => [{"x":0,"y":0},{"x":2,"y":0},{"x":1,"y":1}]
 */
export function convexHull(points: readonly PlanPoint[]): readonly PlanPoint[] {
  const sorted = [...points].sort((a, b) => a.x - b.x || a.y - b.y);
  if (sorted.length < 3) return sorted;
  const lower = chain(sorted);
  const upper = chain(sorted.reverse());
  return [...lower.slice(0, -1), ...upper.slice(0, -1)];
}

function chain(points: readonly PlanPoint[]): PlanPoint[] {
  const kept: PlanPoint[] = [];
  for (const point of points) {
    while (kept.length > 1 && turn(kept.at(-2)!, kept.at(-1)!, point) <= 0) kept.pop();
    kept.push(point);
  }
  return kept;
}

/** Twice the area of a triangle, positive against the clock. */
function turn(a: PlanPoint, b: PlanPoint, c: PlanPoint): number {
  return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}
