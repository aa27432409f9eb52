import { halfWidthAt, heightAt } from '../groove/index.ts';
import type { Pattern } from './pattern.ts';
import { type ReadingTable, rowOf } from './reading-table.ts';
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
  const { tracks, spacing } = pattern;
  const { count, extraWidth } = draws;
  const reach = new Float64Array(tracks > 1 ? tracks * count : 0);
  for (let shop = 0; tracks > 1 && shop < count; shop += 1) {
    fillReach(reach, shop * tracks, tracks, (electrode.diameter + extraWidth[shop]!) / 2, spacing);
  }
  return {
    draws,
    pattern,
    diameter: electrode.diameter,
    angleTerm,
    depths: new Float64Array(tracks * count),
    reach,
    finished: new Uint8Array(0),
    time: new Float64Array(count),
    passes: new Float64Array(count),
  };
}

/** Digs a layer at one setting in every shop. */
export function digSet(groove: Groove, layer: number, logEnergy: number, timeAtUnit: number): void {
  const { draws, pattern, diameter, depths, reach, finished, time, passes } = groove;
  const { tracks } = pattern;
  const { slope, laterFactor, count } = draws;
  const lifts = liftsOf(groove, layer);
  const some = finished.length > 0;
  const passTime = timeAtUnit * Math.exp(logEnergy);
  for (let shop = 0; shop < count; shop += 1) {
    const cutAtUnit = (layer > 0 ? laterFactor[shop]! : 1) * diameter * Math.exp(slope[shop]! * logEnergy);
    const first = shop * tracks;
    for (let track = 0; track < tracks; track += 1) {
      if (some && finished[first + track] === 1) continue;
      const onto = tracks > 1 ? floorAtTrack(depths, reach, first, tracks, track) : depths[shop]!;
      depths[first + track] = onto + cutAtUnit * lifts[track]![shop]!;
      time[shop]! += passTime;
      passes[shop]! += 1;
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
  const lifts = liftsOf(groove, layer);
  const errors = Array.from({ length: tracks }, (_, track) => draws.gaugeNoise(layer * tracks + track));
  const energies = Float64Array.from(table.logEnergy);
  const times = energies.map((energy) => timeAtUnit * Math.exp(energy));
  const before = new Float64Array(tracks);
  for (let shop = 0; shop < count; shop += 1) {
    const first = shop * tracks;
    const factor = layer > 0 ? laterFactor[shop]! : 1;
    // All tracks are gauged before the layer starts.
    for (let track = 0; track < tracks; track += 1) {
      before[track] = tracks > 1 ? floorAtTrack(depths, reach, first, tracks, track) : depths[shop]!;
    }
    for (let track = 0; track < tracks; track += 1) {
      if (finished[first + track] === 1) continue;
      const row = rowOf(table, before[track]! + errors[track]![shop]! * readingSd);
      if (rows !== undefined) rows[layer * tracks + track]![shop] = row;
      const logEnergy = energies[row]!;
      // Who is told to run no more passes on a track runs none there after later stops either.
      if (Number.isNaN(logEnergy)) {
        finished[first + track] = 1;
        continue;
      }
      const onto = tracks > 1 ? floorAtTrack(depths, reach, first, tracks, track) : depths[shop]!;
      depths[first + track] =
        onto + factor * diameter * Math.exp(slope[shop]! * logEnergy) * lifts[track]![shop]!;
      time[shop]! += times[row]!;
      passes[shop]! += 1;
    }
  }
}

/** What the passes of a layer dig at specific energy 1, one list per track. */
function liftsOf(groove: Groove, layer: number): Float64Array[] {
  const { tracks } = groove.pattern;
  return Array.from({ length: tracks }, (_, track) =>
    groove.draws.passLift(layer * tracks + track, groove.angleTerm),
  );
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
