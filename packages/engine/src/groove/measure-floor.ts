import { fitRadius, type SectionPoint } from './circle-fit.ts';
import type { Floor } from './floor.ts';

/** Shape numbers read off a floor, not off the inputs that made it. */
export interface FloorShape {
  /** Deepest point [m]. */
  readonly deepest: number;
  /** Width at the surface [m]. */
  readonly width: number;
  /** Radius fitted to the lowest arc; undefined for an untouched floor [m]. */
  readonly rootRadius: number | undefined;
  /** Angle of the outer walls from the vertical, the mean of both [rad]. */
  readonly wallAngle: number;
  /** Highest ridge between neighbouring valleys, from the shallower valley up; 0 without a ridge [m]. */
  readonly cuspHeight: number;
  /** Area removed [m2]. */
  readonly area: number;
}

/** Depth below which a point counts as gouged [m]. */
const TOUCHED = 1e-9;
/** Part of the deepest depth, from the bottom up, that counts as the root when its radius is fitted [-]. */
const ROOT_PART = 0.4;
/** Stretch of the depth over which the wall's angle is read, from the surface down [-]. */
const WALL_PART = [0.1, 0.5] as const;

/**
 * Reads the shape of a floor: depth, width, root radius, wall angle, cusp height and area.
 *
 * Between grid points the floor is a straight line; edges and levels are found on those lines.
 *
 * @param floor - the floor [record], any
 * @returns the shape numbers [record]
 * @source geometry; area by the trapezium rule
 * @example
 * measureFloor(cutPass(flatFloor(0.02, 0.0001), { offset: 0, width: 0.016, depth: 0.01 })).rootRadius // => 0.00800
 */
export function measureFloor(floor: Floor): FloorShape {
  const { depth, step } = floor;
  const deepestIndex = depth.reduce((best, value, index) => (value > depth[best]! ? index : best), 0);
  const deepest = depth[deepestIndex]!;
  if (deepest <= TOUCHED) {
    return { deepest: 0, width: 0, rootRadius: undefined, wallAngle: 0, cuspHeight: 0, area: 0 };
  }
  const [left, right] = edges(floor, TOUCHED);
  const area = depth.reduce((sum, value) => sum + value, 0) * step;
  return {
    deepest,
    width: right - left,
    rootRadius: fitRadius(rootPoints(floor, deepestIndex)),
    wallAngle: wallAngle(floor, deepest),
    cuspHeight: cuspHeight(depth),
    area,
  };
}

/**
 * Ligament: the plate left under the deepest point of a floor; below 0 where the groove goes through.
 *
 * @param floor - the floor [record], any
 * @param thickness - thickness of the plate [m], > 0
 * @returns plate left [m]
 * @source geometry
 * @example
 * ligamentUnder(cutPass(flatFloor(0.02, 0.0005), { offset: 0, width: 0.016, depth: 0.01 }), 0.032) // => 0.022
 */
export function ligamentUnder(floor: Floor, thickness: number): number {
  return thickness - floor.depth.reduce((deepest, depth) => Math.max(deepest, depth), 0);
}

/**
 * Shallowest depth of a floor over a zone about the centre line.
 *
 * @param floor - the floor [record], wide enough for the zone
 * @param zoneWidth - width of the zone [m], >= 0
 * @returns shallowest depth in the zone [m]
 * @source none: bookkeeping
 * @example
 * shallowestIn(cutPass(flatFloor(0.02, 0.0001), { offset: 0, width: 0.016, depth: 0.01 }), 0) // => 0.01
 */
export function shallowestIn(floor: Floor, zoneWidth: number): number {
  let shallowest = Number.POSITIVE_INFINITY;
  for (let index = 0; index < floor.depth.length; index += 1) {
    const offset = floor.first + index * floor.step;
    if (Math.abs(offset) <= zoneWidth / 2 + floor.step * 1e-6) {
      shallowest = Math.min(shallowest, floor.depth[index]!);
    }
  }
  return shallowest;
}

/**
 * Offsets at which the floor first and last passes a level, on the lines between grid points. The floor is cut
 * off at the surface, so in the outermost cell the wall's own line from further in is drawn on instead.
 */
function edges(floor: Floor, level: number): [number, number] {
  const { depth, first, step } = floor;
  let low = 0;
  while (low < depth.length && depth[low]! <= level) low += 1;
  let high = depth.length - 1;
  while (high >= 0 && depth[high]! <= level) high -= 1;
  const cross = (inside: number, outside: number): number => {
    const a = depth[inside]!;
    const b = outside < 0 || outside >= depth.length ? a : depth[outside]!;
    const inner = depth[2 * inside - outside] ?? a;
    const fall = b <= TOUCHED && inner > a ? inner - a : a - b;
    const part = fall === 0 ? 0 : (a - level) / fall;
    return first + step * (inside + (outside - inside) * Math.min(1, part));
  };
  return [cross(low, low - 1), cross(high, high + 1)];
}

/** Points of the arc about the deepest point: down from the root's part of the depth, or to the next ridge. */
function rootPoints(floor: Floor, deepestIndex: number): SectionPoint[] {
  const { depth, first, step } = floor;
  const level = depth[deepestIndex]! * (1 - ROOT_PART);
  const points: SectionPoint[] = [];
  const walk = (direction: -1 | 1): void => {
    let before = depth[deepestIndex]!;
    for (let index = deepestIndex + direction; index >= 0 && index < depth.length; index += direction) {
      const value = depth[index]!;
      if (value < level || value > before) return;
      points.push({ offset: first + index * step, depth: value });
      before = value;
    }
  };
  points.push({ offset: first + deepestIndex * step, depth: depth[deepestIndex]! });
  walk(-1);
  walk(1);
  return points;
}

function wallAngle(floor: Floor, deepest: number): number {
  const [upper, lower] = WALL_PART.map((part) => part * deepest) as [number, number];
  const [outerLeft, outerRight] = edges(floor, upper);
  const [innerLeft, innerRight] = edges(floor, lower);
  const run = (innerLeft - outerLeft + outerRight - innerRight) / 2;
  return Math.atan2(run, lower - upper);
}

/** Highest ridge between valleys: at each point, the shallower of the deepest depths to either side less its own. */
function cuspHeight(depth: Float64Array): number {
  const deepestRight = new Float64Array(depth.length);
  let running = 0;
  for (let index = depth.length - 1; index >= 0; index -= 1) {
    running = Math.max(running, depth[index]!);
    deepestRight[index] = running;
  }
  let deepestLeft = 0;
  let highest = 0;
  for (let index = 0; index < depth.length; index += 1) {
    deepestLeft = Math.max(deepestLeft, depth[index]!);
    highest = Math.max(highest, Math.min(deepestLeft, deepestRight[index]!) - depth[index]!);
  }
  return highest;
}
