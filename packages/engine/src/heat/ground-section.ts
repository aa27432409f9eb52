import type { SectionPoint } from '../groove/index.ts';

/** A section before and after the skin is ground away. */
export interface GroundSection {
  /** Area as gouged [m2]. */
  readonly gouged: number;
  /** Area after grinding [m2]. */
  readonly ground: number;
}

/** Points across the ground section [-]. */
const POINTS = 2000;

/** Depth of a floor given by points of rising offset; 0 outside. */
function depthAt(floor: readonly SectionPoint[], offset: number): number {
  const after = floor.findIndex((point) => point.offset >= offset);
  if (after < 0) return 0;
  const right = floor[after]!;
  const left = floor[after - 1];
  if (left === undefined) return right.offset === offset ? right.depth : 0;
  const width = right.offset - left.offset;
  return width <= 0
    ? right.depth
    : left.depth + ((right.depth - left.depth) * (offset - left.offset)) / width;
}

/**
 * Area of a groove's section before and after an allowance is ground off all round its face.
 *
 * Every point of metal within the allowance of the gouged face goes: the face moves out by the allowance along
 * its normals, and rounds the ends at the surface. Read on a grid of two thousand points across the section.
 *
 * @param floor - depth of the floor across the groove [list], offsets rising, depth 0 where nothing is gouged
 * @param allowance - what is ground off [m], >= 0
 * @returns both areas [m2]
 * @source geometry
 * @example
 * groundSection([{ offset: -0.005, depth: 0.004 }, { offset: 0.005, depth: 0.004 }], 0.001).gouged // => 0.00004000...
 */
export function groundSection(floor: readonly SectionPoint[], allowance: number): GroundSection {
  const gouged = floor.filter((point, index) => point.depth > 0 || (floor[index - 1]?.depth ?? 0) > 0);
  const first = gouged[0]?.offset ?? 0;
  const last = gouged.at(-1)?.offset ?? 0;
  const step = (last - first + 2 * allowance) / POINTS;
  if (step <= 0) return { gouged: 0, ground: 0 };
  const depths = Array.from({ length: POINTS + 1 }, (_, i) => depthAt(floor, first - allowance + i * step));
  const reach = Math.floor(allowance / step);
  const rise = Array.from({ length: reach + 1 }, (_, i) =>
    Math.sqrt(Math.max(0, allowance * allowance - (i * step) ** 2)),
  );
  let before = 0;
  let after = 0;
  for (let place = 0; place <= POINTS; place += 1) {
    let deepest = 0;
    for (let near = Math.max(0, place - reach); near <= Math.min(POINTS, place + reach); near += 1) {
      const depth = depths[near]!;
      if (depth > 0) deepest = Math.max(deepest, depth + rise[Math.abs(near - place)]!);
    }
    before += depths[place]! * step;
    after += deepest * step;
  }
  return { gouged: before, ground: after };
}
