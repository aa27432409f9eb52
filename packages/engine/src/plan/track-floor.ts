import { heightAt } from '../groove/index.ts';

/**
 * Floor under an electrode at a track: the deepest that any track's outline reaches there.
 * All passes of a job have one radius, so the floor is the union of one outline per track, and its shape
 * follows from the depths at the tracks' centre lines without a grid.
 */
export function floorAtTrack(
  depths: Float64Array,
  reach: Float64Array,
  tracks: number,
  track: number,
): number {
  let floor = depths[track]!;
  for (let other = 0; other < tracks; other += 1) {
    const at = depths[other]! - reach[Math.abs(other - track)]!;
    if (at > floor) floor = at;
  }
  return floor;
}

/** How far one track's outline has risen at the neighbour, the one after it and so on [m]. */
export function fillReach(reach: Float64Array, tracks: number, radius: number, spacing: number): void {
  for (let apart = 0; apart < tracks; apart += 1) reach[apart] = heightAt(radius, apart * spacing);
}
