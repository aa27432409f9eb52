import type { KitElectrode } from '../job/index.ts';
import type { Pattern } from './pattern.ts';
import type { ShopDraws } from './shop-draws.ts';
import { fillReach, floorAtTrack, readTrackFloor, type TrackFloorShape } from './track-floor.ts';

/** What to do after a reading: rows of readings, each with the ln specific energy of the next pass. */
export interface ReadingTable {
  /** Upper edges of the rows, rising; the last row has none [m]. */
  readonly edges: readonly number[];
  /** ln specific energy of the next pass; NaN: run no more passes [-]. */
  readonly logEnergy: readonly number[];
  /** Reading for which each row was worked out [m]. */
  readonly readings: readonly number[];
}

/** How one layer is set: blind, or from the reading under each track. */
export type LayerRule =
  | { readonly kind: 'set'; readonly logEnergy: number }
  | { readonly kind: 'table'; readonly table: ReadingTable; readonly stations: number };

/** A set-up ready to be run: which electrode, how many tracks, how each layer is set. */
export interface Setup {
  readonly electrode: KitElectrode;
  /** Current [A]. */
  readonly current: number;
  /** Arc voltage [V]. */
  readonly voltage: number;
  /** Push angle, from 45 deg in units of 15 deg [-]. */
  readonly angleTerm: number;
  /** Travel at specific energy 1 [m/s]. */
  readonly unitTravel: number;
  readonly pattern: Pattern;
  readonly layers: readonly LayerRule[];
}

/** What the groove asks of every run. */
export interface RunDemand {
  /** Width about the centre line over which the depth must be reached [m]. */
  readonly zoneWidth: number;
  /** Length each pass runs [m]. */
  readonly passLength: number;
  /** Standard deviation of one gauge reading [m]. */
  readonly readingSd: number;
}

/** What came out in every shop, one value per shop. */
export interface RunOutcomes {
  /** Deepest point [m]. */
  readonly deepest: Float64Array;
  /** Shallowest point of the zone [m]. */
  readonly shallowest: Float64Array;
  /** Width at the surface [m]. */
  readonly width: Float64Array;
  /** Sum over the passes of length over travel, without dwells [s]. */
  readonly travelTime: Float64Array;
  /** Passes run [-]. */
  readonly passes: Float64Array;
}

/** Row of a table that a reading falls into. */
export function rowOf(table: ReadingTable, reading: number): number {
  let row = 0;
  while (row < table.edges.length && reading >= table.edges[row]!) row += 1;
  return row;
}

/**
 * Runs a set-up in every shop and reads what came out.
 *
 * Each pass digs from the local floor under its track; the floor is read in closed form. Where `rows` is given,
 * the row of the table that each reading fell into is written there, one list per pass; a track that is finished
 * is not read.
 *
 * @param setup - electrode, current, pattern and layers [record], at least one layer
 * @param demand - what every run of the job has in common [record], lengths > 0
 * @param draws - the shops [record], from `drawShops`
 * @param rows - lists to write the rows into [list], one per pass, each as long as there are shops
 * @returns depths, width, travel time and passes, one value per shop [record]
 * @source derived: log-linear depth law over a floor of circular bottoms with flared walls
 * @example
 * typeof runPlan // => "function"
 */
export function runPlan(
  setup: Setup,
  demand: RunDemand,
  draws: ShopDraws,
  rows?: readonly Int16Array[],
): RunOutcomes {
  const { pattern, layers, electrode } = setup;
  const { tracks } = pattern;
  const { count } = draws;
  const outcomes: RunOutcomes = {
    deepest: new Float64Array(count),
    shallowest: new Float64Array(count),
    width: new Float64Array(count),
    travelTime: new Float64Array(count),
    passes: new Float64Array(count),
  };
  const noise = Array.from({ length: tracks * layers.length }, (_, pass) => draws.passNoise(pass));
  const gauge = Array.from({ length: tracks * layers.length }, (_, pass) =>
    layers[Math.floor(pass / tracks)]?.kind === 'table' ? draws.gaugeNoise(pass) : undefined,
  );
  const depths = new Float64Array(tracks);
  const before = new Float64Array(tracks);
  const reach = new Float64Array(tracks);
  const finished = new Uint8Array(tracks);
  const shape: TrackFloorShape = { deepest: 0, shallowest: 0, width: 0 };
  const timeAtUnit = demand.passLength / setup.unitTravel;
  const passTimes = layers.map((rule) =>
    (rule.kind === 'set' ? [rule.logEnergy] : rule.table.logEnergy).map(
      (energy) => timeAtUnit * Math.exp(energy),
    ),
  );
  const layerCount = layers.length;
  const { diameter } = electrode;
  for (let shop = 0; shop < count; shop += 1) {
    const radius = (diameter + draws.extraWidth[shop]!) / 2;
    const base = draws.level[shop]! + draws.angle[shop]! * setup.angleTerm;
    const slope = draws.slope[shop]!;
    const spread = draws.spread[shop]!;
    const later = draws.laterFactor[shop]!;
    // For so few tracks a loop is much quicker than the arrays' own fill.
    for (let track = 0; track < tracks; track += 1) {
      depths[track] = 0;
      finished[track] = 0;
    }
    if (tracks > 1) fillReach(reach, radius, pattern.spacing);
    let time = 0;
    let passes = 0;
    for (let layer = 0; layer < layerCount; layer += 1) {
      const rule = layers[layer]!;
      const times = passTimes[layer]!;
      const factor = layer > 0 ? later : 1;
      const gauged = rule.kind === 'table';
      // All tracks are gauged before the next layer starts.
      for (let track = 0; gauged && track < tracks; track += 1) {
        before[track] = tracks > 1 ? floorAtTrack(depths, reach, track) : depths[track]!;
      }
      for (let track = 0; track < tracks; track += 1) {
        if (finished[track] === 1) continue;
        const pass = layer * tracks + track;
        let row = 0;
        let logEnergy: number;
        if (rule.kind === 'set') logEnergy = rule.logEnergy;
        else {
          const error = (gauge[pass]![shop]! * demand.readingSd) / Math.sqrt(rule.stations);
          row = rowOf(rule.table, before[track]! + error);
          if (rows !== undefined) rows[pass]![shop] = row;
          logEnergy = rule.table.logEnergy[row]!;
          // Who is told to run no more passes on a track runs none there after later stops either.
          if (Number.isNaN(logEnergy)) {
            finished[track] = 1;
            continue;
          }
        }
        const onto = tracks > 1 ? floorAtTrack(depths, reach, track) : depths[track]!;
        depths[track] =
          onto + factor * diameter * Math.exp(base + slope * logEnergy + spread * noise[pass]![shop]!);
        time += times[row]!;
        passes += 1;
      }
    }
    readTrackFloor(depths, reach, pattern, radius, demand.zoneWidth, shape);
    outcomes.deepest[shop] = shape.deepest;
    outcomes.shallowest[shop] = shape.shallowest;
    outcomes.width[shop] = shape.width;
    outcomes.travelTime[shop] = time;
    outcomes.passes[shop] = passes;
  }
  return outcomes;
}
