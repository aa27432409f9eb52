import { convexHull, type PlanPoint } from './convex-hull.ts';
import type { FireZone } from './fire-zone.ts';

/** Corners of a circle as it is outlined. */
const CIRCLE_PARTS = 72;

/** Outlines of a fire zone in plan view. */
export interface ZoneOutlines {
  /** Everything within the radius of the seam [m]. */
  readonly round: readonly PlanPoint[];
  /** The same with the lobe that the jet throws ahead [m]. */
  readonly withJet: readonly PlanPoint[];
}

/**
 * Outlines of the fire zone around a seam in plan view.
 *
 * The torch pushes its jet ahead of its travel, so every stretch of the seam throws as far as `ahead` beyond its
 * end. Each outline is the convex hull of what lies within reach: it leaves nothing out, and its width between
 * circle and farthest point is a convention of the drawing, with no source.
 *
 * @param seam - corners of the seam in the order of travel [list], at least one
 * @param zone - reach all round and ahead [record], from `fireZone`
 * @param bothWays - whether the torch may travel either way or the work turns under it [-], true or false
 * @returns outlines, against the clock [list]
 * @source geometry
 * @example
 * Math.max(...zoneOutlines([{ x: 0, y: 0 }, { x: 6, y: 0 }], { radius: 10, ahead: 20, up: 4, down: 20 }, false).withJet.map(({ x }) => x)) // => 26
 */
export function zoneOutlines(seam: readonly PlanPoint[], zone: FireZone, bothWays: boolean): ZoneOutlines {
  const circles = seam.flatMap((point) => circle(point, zone.radius));
  const tips = seam.slice(1).flatMap((end, index) => {
    const start = seam[index]!;
    return [...tip(start, end, zone.ahead), ...(bothWays ? tip(end, start, zone.ahead) : [])];
  });
  return { round: convexHull(circles), withJet: convexHull([...circles, ...tips]) };
}

function circle({ x, y }: PlanPoint, radius: number): PlanPoint[] {
  // outside the circle by a hair, so that its corners leave nothing out
  const reach = radius / Math.cos(Math.PI / CIRCLE_PARTS);
  return Array.from({ length: CIRCLE_PARTS }, (_, index) => {
    const angle = (2 * Math.PI * (index + 0.5)) / CIRCLE_PARTS;
    return { x: x + reach * Math.cos(angle), y: y + reach * Math.sin(angle) };
  });
}

/** Where the jet of a torch at the end of a stretch reaches. */
function tip(start: PlanPoint, end: PlanPoint, ahead: number): PlanPoint[] {
  const length = Math.hypot(end.x - start.x, end.y - start.y);
  if (length === 0) return [];
  return [
    {
      x: end.x + ((end.x - start.x) / length) * ahead,
      y: end.y + ((end.y - start.y) / length) * ahead,
    },
  ];
}
