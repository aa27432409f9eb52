import { halfWidthAt, heightAt } from '../groove/index.ts';
import { type Pattern, trackOffset } from './pattern.ts';
import type { RunOutcomes } from './run-record.ts';
import type { TrackExtremes } from './track-extremes.ts';

/** Reads the floor of one track that goes from a least to a greatest depth along the seam. */
export function readOneTrack(
  out: RunOutcomes,
  shop: number,
  radius: number,
  zoneWidth: number,
  depth: number,
  low: number,
  high: number,
): void {
  out.deepest[shop] = high;
  out.depth[shop] = depth;
  out.shallowest[shop] = zoneWidth > 0 ? Math.max(0, low - heightAt(radius, zoneWidth / 2)) : low;
  out.width[shop] = 2 * halfWidthAt(radius, depth);
  out.widthLeast[shop] = 2 * halfWidthAt(radius, low);
  out.widthMost[shop] = 2 * halfWidthAt(radius, high);
}

/** Reads the floor of several tracks, each with its own course along the seam. */
export function readTracks(
  out: Pick<RunOutcomes, 'deepest' | 'depth' | 'shallowest' | 'width' | 'widthLeast' | 'widthMost'>,
  shop: number,
  pattern: Pattern,
  zoneWidth: number,
  { low, high, ridge }: TrackExtremes,
  depths: readonly Float64Array[],
  radius: number,
): void {
  const { tracks, spacing } = pattern;
  const zone = zoneWidth / 2;
  const last = tracks - 1;
  let deepest = 0;
  let middle = 0;
  for (let track = 0; track < tracks; track += 1) {
    const depth = depths[track]![shop]!;
    middle = Math.max(middle, depth);
    deepest = Math.max(deepest, depth * high[track]![shop]!);
  }
  const between = shallowestRidge(shop, pattern, zone, ridge, depths, radius);
  const shallowest = Math.min(
    between,
    edgeFloor(shop, pattern, -zone, low, depths, radius),
    edgeFloor(shop, pattern, zone, low, depths, radius),
  );
  const [first, end] = [depths[0]![shop]!, depths[last]![shop]!];
  out.deepest[shop] = deepest;
  out.depth[shop] = middle;
  out.shallowest[shop] = Math.max(0, shallowest);
  out.width[shop] = last * spacing + halfWidthAt(radius, first) + halfWidthAt(radius, end);
  out.widthLeast[shop] =
    last * spacing +
    halfWidthAt(radius, first * low[0]![shop]!) +
    halfWidthAt(radius, end * low[last]![shop]!);
  out.widthMost[shop] =
    last * spacing +
    halfWidthAt(radius, first * high[0]![shop]!) +
    halfWidthAt(radius, end * high[last]![shop]!);
}

/** Depth of the shallowest ridge inside the zone [m]; without any: no bound. */
function shallowestRidge(
  shop: number,
  pattern: Pattern,
  zone: number,
  ridge: TrackExtremes['ridge'],
  depths: readonly Float64Array[],
  radius: number,
): number {
  const { tracks, spacing } = pattern;
  let shallowest = Number.POSITIVE_INFINITY;
  for (let track = 0; track < tracks - 1; track += 1) {
    const both = ridge[track]![shop]!;
    const left = depths[track]![shop]! * both;
    const right = depths[track + 1]![shop]! * both;
    const along = crossingOf(left, right, spacing, radius);
    const offset = trackOffset(pattern, track) + along;
    if (Math.abs(offset) > zone + 1e-12) continue;
    const floor = Math.max(left - heightAt(radius, along), right - heightAt(radius, spacing - along));
    if (floor < shallowest) shallowest = floor;
  }
  return shallowest;
}

/** Floor at an edge of the zone [m]: the deepest of the tracks near it. */
function edgeFloor(
  shop: number,
  pattern: Pattern,
  edge: number,
  low: TrackExtremes['low'],
  depths: readonly Float64Array[],
  radius: number,
): number {
  const last = pattern.tracks - 1;
  const nearest = Math.min(last, Math.max(0, Math.round(edge / pattern.spacing + last / 2)));
  let floor = 0;
  for (let track = Math.max(0, nearest - 1); track <= Math.min(last, nearest + 1); track += 1) {
    const rise = heightAt(radius, Math.abs(edge - trackOffset(pattern, track)));
    floor = Math.max(floor, depths[track]![shop]! * low[track]![shop]! - rise);
  }
  return floor;
}

/** Halvings for a ridge on a flared wall, where two arcs do not meet [-]: to well below a thousandth of a millimetre. */
const HALVINGS = 24;

/** Where the outlines of two neighbouring tracks cross, from the first [m]; at a centre line where one covers the other. */
function crossingOf(left: number, right: number, spacing: number, radius: number): number {
  const far = heightAt(radius, spacing);
  if (left - right + far <= 0) return 0;
  if (left - far - right >= 0) return spacing;
  const step = right - left;
  const square = radius * radius - (spacing * spacing + step * step) / 4;
  if (square > 0) {
    const along = spacing / 2 - step * Math.sqrt(square / (spacing * spacing + step * step));
    if (along >= 0 && along <= spacing && Math.abs(aheadAt(along, left, right, spacing, radius)) < 1e-9)
      return along;
  }
  let [low, high] = [0, spacing];
  for (let halving = 0; halving < HALVINGS; halving += 1) {
    const middle = (low + high) / 2;
    if (aheadAt(middle, left, right, spacing, radius) > 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** How much deeper the first outline is than the second; it falls from the first centre line to the second. */
function aheadAt(along: number, left: number, right: number, spacing: number, radius: number): number {
  return left - heightAt(radius, along) - right + heightAt(radius, spacing - along);
}
