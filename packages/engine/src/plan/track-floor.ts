import { halfWidthAt, heightAt, WALL_FLARE } from '../groove/index.ts';
import { type Pattern, trackOffset } from './pattern.ts';

const COS = Math.cos(WALL_FLARE);
/** Halvings when two walls, or a wall and an arc, cross [-]. */
const HALVINGS = 24;

/** Deepest, shallowest and width of the floor that tracks of one radius leave. */
export interface TrackFloorShape {
  /** Deepest point [m]. */
  deepest: number;
  /** Shallowest point in the zone where the depth must be reached [m]. */
  shallowest: number;
  /** Width at the surface [m]. */
  width: number;
}

/**
 * Floor under an electrode at a track: the deepest that any track's outline reaches there.
 * All passes of a job have one radius, so the floor is the union of one outline per track, and its shape
 * follows from the depths at the tracks' centre lines without a grid. The lists may hold many shops one after the
 * other, as many values each as there are tracks: `first` is where the shop's values begin.
 */
export function floorAtTrack(
  depths: Float64Array,
  reach: Float64Array,
  first: number,
  tracks: number,
  track: number,
): number {
  let floor = depths[first + track]!;
  for (let other = 0; other < tracks; other += 1) {
    const at = depths[first + other]! - reach[first + Math.abs(other - track)]!;
    if (at > floor) floor = at;
  }
  return floor;
}

/** How far one track's outline has risen at the neighbour, the one after it and so on [m]. */
export function fillReach(
  reach: Float64Array,
  first: number,
  tracks: number,
  radius: number,
  spacing: number,
): void {
  for (let apart = 0; apart < tracks; apart += 1) reach[first + apart] = heightAt(radius, apart * spacing);
}

/** Reads the shape of the floor off the depths at the centre lines of several tracks, into `shape`. */
export function readTrackFloor(
  depths: Float64Array,
  reach: Float64Array,
  first: number,
  pattern: Pattern,
  radius: number,
  zoneWidth: number,
  shape: TrackFloorShape,
): void {
  const { tracks, spacing } = pattern;
  let deepest = 0;
  let left = 0;
  let right = 0;
  for (let track = 0; track < tracks; track += 1) {
    const depth = depths[first + track]!;
    const offset = trackOffset(pattern, track);
    const half = halfWidthAt(radius, depth);
    if (depth > deepest) deepest = depth;
    left = Math.max(left, half - offset);
    right = Math.max(right, half + offset);
  }
  const zone = zoneWidth / 2;
  let shallowest = depthAtOffset(depths, first, pattern, radius, zone);
  shape.deepest = deepest;
  shape.width = left + right;
  // Without a zone only the floor at the centre line counts, and no ridge lies beside it.
  if (zone === 0) {
    shape.shallowest = shallowest;
    return;
  }
  shallowest = Math.min(shallowest, depthAtOffset(depths, first, pattern, radius, -zone));
  // Ridges stand where two outlines cross between their centre lines: those of neighbours, and those of tracks
  // further apart where all between them lie below what these two reach.
  let hidden = floorAtTrack(depths, reach, first, tracks, 0) > depths[first]!;
  for (let track = 0; track + 1 < tracks; track += 1) {
    const firstHidden = hidden;
    hidden = floorAtTrack(depths, reach, first, tracks, track + 1) > depths[first + track + 1]!;
    let otherHidden = hidden;
    for (let other = track + 1; other < tracks; other += 1) {
      if (other > track + 1) {
        otherHidden = floorAtTrack(depths, reach, first, tracks, other) > depths[first + other]!;
      }
      const along = crossing(
        depths[first + track]!,
        depths[first + other]!,
        (other - track) * spacing,
        radius,
      );
      const offset = trackOffset(pattern, track) + along;
      if (Math.abs(offset) <= zone) {
        // Where neither track lies below what others reach, no other outline passes their crossing.
        const clear = other === track + 1 && !firstHidden && !otherHidden;
        const depth = clear
          ? Math.max(0, depths[first + track]! - heightAt(radius, along))
          : depthAtOffset(depths, first, pattern, radius, offset);
        if (depth < shallowest) shallowest = depth;
      }
      if (!otherHidden) break;
    }
  }
  shape.shallowest = shallowest;
}

function depthAtOffset(
  depths: Float64Array,
  first: number,
  pattern: Pattern,
  radius: number,
  offset: number,
): number {
  let floor = 0;
  for (let track = 0; track < pattern.tracks; track += 1) {
    const at = depths[first + track]! - heightAt(radius, Math.abs(offset - trackOffset(pattern, track)));
    if (at > floor) floor = at;
  }
  return floor;
}

/** Where the outlines of two tracks cross, or the nearer of their centre lines: distance from the first. */
function crossing(first: number, second: number, spacing: number, radius: number): number {
  const step = second - first;
  const square = radius * radius - (spacing * spacing + step * step) / 4;
  if (square > 0) {
    // Both on their arcs: two equal circles meet on the line midway between their centres.
    const along = spacing / 2 - step * Math.sqrt(square / (spacing * spacing + step * step));
    const arc = radius * COS;
    if (along >= 0 && along <= spacing && along <= arc && spacing - along <= arc) {
      // Far apart in depth, the circles cross on the upper half of the deeper one, where its wall stands instead.
      const apart = first - heightAt(radius, along) - (second - heightAt(radius, spacing - along));
      if (Math.abs(apart) < 1e-6 * radius) return along;
    }
  }
  let low = 0;
  let high = spacing;
  for (let halving = 0; halving < HALVINGS; halving += 1) {
    const middle = (low + high) / 2;
    if (first - heightAt(radius, middle) > second - heightAt(radius, spacing - middle)) low = middle;
    else high = middle;
  }
  return low;
}
