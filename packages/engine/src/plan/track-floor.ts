import { heightAt } from '../groove/index.ts';
import type { ShopDraws } from './shop-draws.ts';

/**
 * Floor under an electrode at a track, in every shop: the deepest that any track's outline reaches there.
 * All passes of a job have one radius, so the floor is the union of one outline per track, and its shape
 * follows from the depths at the tracks' centre lines without a grid.
 */
export function fillFloor(
  floor: Float64Array,
  depths: readonly Float64Array[],
  reach: readonly Float64Array[],
  track: number,
): void {
  floor.set(depths[track]!);
  for (let other = 0; other < depths.length; other += 1) {
    if (other !== track) deepenFloor(floor, depths[other]!, reach[Math.abs(other - track)]!);
  }
}

function deepenFloor(floor: Float64Array, depth: Float64Array, reach: Float64Array): void {
  for (let shop = 0; shop < floor.length; shop += 1) {
    const at = depth[shop]! - reach[shop]!;
    if (at > floor[shop]!) floor[shop] = at;
  }
}

/** How far one track's outline has risen at itself, at the neighbour, the one after it and so on, in every shop [m]. */
export function reachOf(
  draws: Pick<ShopDraws, 'extraWidth' | 'kept'>,
  diameter: number,
  tracks: number,
  spacing: number,
): Float64Array[] {
  return Array.from({ length: tracks }, (_, apart) =>
    draws.kept(`reach ${diameter} ${spacing} ${apart}`, (shop) =>
      heightAt((diameter + draws.extraWidth[shop]!) / 2, apart * spacing),
    ),
  );
}
