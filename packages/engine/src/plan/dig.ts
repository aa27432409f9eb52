import { halfWidthAt, heightAt } from '../groove/index.ts';
import type { Pattern } from './pattern.ts';
import { type ReadingTable, rowNear } from './reading-table.ts';
import type { Setup } from './setup.ts';
import type { ShopDraws } from './shop-draws.ts';
import { fillReach, floorAtTrack, readTrackFloor, type TrackFloorShape } from './track-floor.ts';

/** The groove of one set-up as it grows, in every shop: lists hold the tracks of one shop after those of another. */
interface Groove {
  readonly draws: ShopDraws;
  readonly pattern: Pattern;
  /** Electrode diameter [m]. */
  readonly diameter: number;
  /** Push angle, from 45 deg in units of 15 deg [-]. */
  readonly angleTerm: number;
  /** Depth at the centre line of every track [m]. */
  readonly depths: Float64Array;
  /** How far a track's outline has risen at its neighbours [m]; empty for one track. */
  readonly reach: Float64Array;
  /** Tracks on which no more passes are run; empty until a table is met. */
  finished: Uint8Array;
  /** Time under way, one value per shop [s]. */
  readonly time: Float64Array;
  /** Passes run, one value per shop [-]. */
  readonly passes: Float64Array;
}

/** The untouched plate in every shop. */
export function openGroove(setup: Setup, draws: ShopDraws): Groove {
  const { pattern, electrode, angleTerm } = setup;
  const { tracks } = pattern;
  const { count } = draws;
  return {
    draws,
    pattern,
    diameter: electrode.diameter,
    angleTerm,
    depths: new Float64Array(tracks * count),
    reach: tracks > 1 ? reachOf(pattern, electrode.diameter, draws) : NO_REACH,
    finished: new Uint8Array(0),
    time: new Float64Array(count),
    passes: new Float64Array(count),
  };
}

const NO_REACH = new Float64Array(0);

/** The reach of the latest pattern in each set of shops: the search tries many settings of one pattern. */
const reaches = new WeakMap<
  ShopDraws,
  { readonly pattern: Pattern; readonly diameter: number; readonly reach: Float64Array }
>();

/** How far tracks rise at their neighbours in every shop. */
function reachOf(pattern: Pattern, diameter: number, draws: ShopDraws): Float64Array {
  const latest = reaches.get(draws);
  const { tracks, spacing } = pattern;
  const same =
    latest?.diameter === diameter && latest.pattern.tracks === tracks && latest.pattern.spacing === spacing;
  if (same) return latest.reach;
  const reach = new Float64Array(tracks * draws.count);
  for (let shop = 0; shop < draws.count; shop += 1) {
    fillReach(reach, shop * tracks, tracks, (diameter + draws.extraWidth[shop]!) / 2, spacing);
  }
  reaches.set(draws, { pattern, diameter, reach });
  return reach;
}

/** Digs a layer at one setting in every shop. */
export function digSet(groove: Groove, layer: number, logEnergy: number, timeAtUnit: number): void {
  const { draws, pattern, diameter, depths, reach, finished, time, passes } = groove;
  const { tracks } = pattern;
  const { laterFactor, count } = draws;
  const gain = draws.energyGain(logEnergy);
  const passTime = timeAtUnit * Math.exp(logEnergy);
  const some = finished.length > 0;
  for (let track = 0; track < tracks; track += 1) {
    const lift = liftOf(groove, layer, track);
    for (let shop = 0; shop < count; shop += 1) {
      const first = shop * tracks;
      if (some && finished[first + track] === 1) continue;
      const onto = tracks > 1 ? floorAtTrack(depths, reach, first, tracks, track) : depths[shop]!;
      const factor = layer > 0 ? laterFactor[shop]! : 1;
      depths[first + track] = onto + factor * diameter * gain[shop]! * lift[shop]!;
      time[shop] = time[shop]! + passTime;
      passes[shop] = passes[shop]! + 1;
    }
  }
}

/** Gauges every track in every shop, and digs the layer that the table asks for at each reading. */
export function digFromTable(
  groove: Groove,
  layer: number,
  table: ReadingTable,
  readingSd: number,
  timeAtUnit: number,
  rows?: readonly Int16Array[],
): void {
  const { draws, pattern, diameter, depths, reach, time, passes } = groove;
  const { tracks } = pattern;
  const { slope, laterFactor, count } = draws;
  if (groove.finished.length === 0) groove.finished = new Uint8Array(tracks * count);
  const { finished } = groove;
  const energies = Float64Array.from(table.logEnergy);
  const times = energies.map((energy) => timeAtUnit * Math.exp(energy));
  const { edges } = table;
  const lowest = edges[0] ?? 0;
  const perEdge = (edges.length - 1) / Math.max(1e-12, (edges.at(-1) ?? 0) - lowest);
  const readings = floorsAtTracks(groove);
  for (let track = 0; track < tracks; track += 1) {
    const lift = liftOf(groove, layer, track);
    const error = draws.gaugeNoise(layer * tracks + track);
    const rowsRead = rows?.[layer * tracks + track];
    for (let shop = 0; shop < count; shop += 1) {
      const first = shop * tracks;
      if (finished[first + track] === 1) continue;
      const reading = readings[first + track]! + error[shop]! * readingSd;
      // The edges are mostly even, so that the row can be told without a search.
      const guess = Math.ceil((reading - lowest) * perEdge);
      const row = rowNear(edges, reading, guess > 0 ? Math.min(guess, edges.length) : 0);
      if (rowsRead !== undefined) rowsRead[shop] = row;
      const logEnergy = energies[row]!;
      // Who is told to run no more passes on a track runs none there after later stops either.
      if (Number.isNaN(logEnergy)) {
        finished[first + track] = 1;
        continue;
      }
      const onto = tracks > 1 ? floorAtTrack(depths, reach, first, tracks, track) : depths[shop]!;
      const factor = layer > 0 ? laterFactor[shop]! : 1;
      depths[first + track] = onto + factor * diameter * Math.exp(slope[shop]! * logEnergy) * lift[shop]!;
      time[shop] = time[shop]! + times[row]!;
      passes[shop] = passes[shop]! + 1;
    }
  }
}

/** The floor under the electrode at every track, before a layer is dug. */
function floorsAtTracks(groove: Groove): Float64Array {
  const { depths, reach, pattern } = groove;
  const { tracks } = pattern;
  // One track is read before it is dug, shop by shop.
  if (tracks === 1) return depths;
  const floors = new Float64Array(depths.length);
  for (let first = 0; first < depths.length; first += tracks) {
    for (let track = 0; track < tracks; track += 1) {
      floors[first + track] = floorAtTrack(depths, reach, first, tracks, track);
    }
  }
  return floors;
}

/** What the pass of a layer on a track digs at specific energy 1 and an electrode of unit diameter. */
function liftOf(groove: Groove, layer: number, track: number): Float64Array {
  return groove.draws.passLift(layer * groove.pattern.tracks + track, groove.angleTerm);
}

/** What the finished floors look like, one value per shop. */
interface Floors {
  /** Deepest point [m]. */
  readonly deepest: Float64Array;
  /** Shallowest point of the zone [m]. */
  readonly shallowest: Float64Array;
  /** Width at the surface [m]. */
  readonly width: Float64Array;
}

/** Reads the finished floor in every shop. */
export function readFloors(groove: Groove, zoneWidth: number): Floors {
  const { draws, pattern, diameter, depths, reach } = groove;
  const { count, extraWidth } = draws;
  const width = new Float64Array(count);
  const shallowest = new Float64Array(count);
  if (pattern.tracks === 1) {
    for (let shop = 0; shop < count; shop += 1) {
      const radius = (diameter + extraWidth[shop]!) / 2;
      const depth = depths[shop]!;
      shallowest[shop] = zoneWidth > 0 ? Math.max(0, depth - heightAt(radius, zoneWidth / 2)) : depth;
      width[shop] = 2 * halfWidthAt(radius, depth);
    }
    return { deepest: depths, shallowest, width };
  }
  const deepest = new Float64Array(count);
  const shape: TrackFloorShape = { deepest: 0, shallowest: 0, width: 0 };
  for (let shop = 0; shop < count; shop += 1) {
    const radius = (diameter + extraWidth[shop]!) / 2;
    readTrackFloor(depths, reach, shop * pattern.tracks, pattern, radius, zoneWidth, shape);
    deepest[shop] = shape.deepest;
    shallowest[shop] = shape.shallowest;
    width[shop] = shape.width;
  }
  return { deepest, shallowest, width };
}
