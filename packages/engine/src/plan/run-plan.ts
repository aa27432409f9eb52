import { halfWidthAt, heightAt, passArea } from '../groove/index.ts';
import { depthCeiling, REMOVAL_SHARE_MOST } from '../removal/index.ts';
import type { Course } from './make-tables.ts';
import { type Pattern, trackOffset } from './pattern.ts';
import { rowOf } from './reading-table.ts';
import { type SeamPaths, stationVariance } from './seam-paths.ts';
import { pathOf, SERIES, type ShopDraws } from './shop-draws.ts';
import { fillReach, floorAtTrack } from './track-floor.ts';
import { courseWeight, type Rig, RUN_IN_SHARE, type Way } from './way.ts';

/** What the groove asks of every run. */
export interface RunDemand {
  /** Width about the centre line over which the depth must be reached [m]. */
  readonly zoneWidth: number;
  /** Length each pass runs [m]. */
  readonly passLength: number;
  /** Standard deviation of one gauge reading [m]. */
  readonly readingSd: number;
  /** Range of the process along the seam [m]. */
  readonly seamRange: number;
  /** Energy to heat and melt a unit volume of the metal [J/m3]. */
  readonly meltingEnergy: number;
}

/** A way with its settings and tables, ready to be run. */
export interface Setup {
  readonly rig: Rig;
  readonly way: Way;
  readonly course: Course;
}

/** What came out in every shop, one value per shop. */
export interface RunOutcomes {
  /** Deepest point anywhere along the seam [m]. */
  readonly deepest: Float64Array;
  /** Shallowest point of the zone anywhere along the seam [m]. */
  readonly shallowest: Float64Array;
  /** Depth of the deepest track, the mean along the seam [m]. */
  readonly depth: Float64Array;
  /** Width at the surface where the floor is shallowest, and where it is deepest [m]. */
  readonly widthLeast: Float64Array;
  readonly widthMost: Float64Array;
  /** Width at the surface in the middle of the seam's variation [m]. */
  readonly width: Float64Array;
  /** Time under way along the seam, without dwells [s]. */
  readonly travelTime: Float64Array;
  /** Passes run on the seam [-]. */
  readonly passes: Float64Array;
  /** Stops at which every track was gauged [-]. */
  readonly gauged: Float64Array;
  /** 1 where a table said to stop and ask before anything was cut on the seam. */
  readonly notRun: Uint8Array;
}

/** Rows that readings fell into, where they are wanted: after the tryout, and before each layer on every track. */
export interface RowsRead {
  readonly tryout: Int16Array;
  readonly stops: readonly Int16Array[];
}

/** In place of a row where nothing was read [-]. */
export const NOT_READ = -1;

/** Lists to write the rows of a set-up into. */
export function rowsFor(setup: Setup, shops: number): RowsRead {
  const list = (): Int16Array => new Int16Array(shops).fill(NOT_READ);
  return {
    tryout: list(),
    stops: Array.from({ length: setup.way.shares.length * setup.rig.pattern.tracks }, list),
  };
}

/**
 * Runs a set-up in every shop and reads what came out.
 *
 * What is common to a job is one value per shop, each pass has its own, and the floor's least and greatest along the
 * seam come from courses of the process drawn on a fine grid for that length. The courses of several layers add up to
 * one of the same process, as strong as the root of the summed squares of their parts; a stop's stations lie on
 * a course that is correlated with it as those of the layers so far are. No pass cuts deeper than the energy balance allows.
 *
 * @param setup - what is run [record], from the search
 * @param demand - what every run of the job has in common [record], lengths > 0
 * @param draws - the shops [record], from `drawShops`
 * @param rows - lists to write the rows of the tables into [record], from `rowsFor`, or left out
 * @returns depths, widths, times and passes, one value per shop [record]
 * @source derived: log-linear depth law with four levels of spread over a floor of circular bottoms with flared walls
 * @example
 * typeof runPlan // => "function"
 */
export function runPlan(setup: Setup, demand: RunDemand, draws: ShopDraws, rows?: RowsRead): RunOutcomes {
  const out = emptyOutcomes(draws.count);
  if (setup.way.tryout?.kind === 'run_in') runWithRunIn(setup, demand, draws, out, rows);
  else runLayers(setup, demand, draws, out, rows);
  return out;
}

function emptyOutcomes(count: number): RunOutcomes {
  const list = (): Float64Array => new Float64Array(count);
  return {
    deepest: list(),
    shallowest: list(),
    depth: list(),
    widthLeast: list(),
    widthMost: list(),
    width: list(),
    travelTime: list(),
    passes: list(),
    gauged: list(),
    notRun: new Uint8Array(count),
  };
}

/** Area that a circular bottom leaves standing in the corners of its square, per width squared, and that of the flare per depth squared [-]: a little less, and a little more. */
const CORNERS = 0.105;
const FLARE = 0.06;

/** What one pass cuts in a shop, held under the depth that the energy balance allows. */
function cutter(
  { rig }: Setup,
  demand: RunDemand,
  draws: ShopDraws,
): (shop: number, lift: number, logEnergy: number, noise: number) => number {
  const { diameter } = rig.electrode;
  const areaAtUnit = REMOVAL_SHARE_MOST * diameter ** 2;
  const { slope, passSd, extraWidth } = draws;
  return (shop, lift, logEnergy, noise) => {
    const cut = diameter * Math.exp(lift + slope[shop]! * logEnergy + passSd[shop]! * noise);
    const width = diameter + extraWidth[shop]!;
    const area = areaAtUnit * Math.exp(logEnergy);
    // A rectangle without its corners, and the flare with it, is more than any pass: most cuts need no closer look.
    const corners = cut > width / 2 ? CORNERS * width * width : 0;
    if (cut * (width + FLARE * cut) - corners <= area || passArea({ width, depth: cut }) <= area) return cut;
    const travel = rig.unitTravel * Math.exp(-logEnergy);
    const setting = { diameter, current: rig.current, voltage: rig.voltage, travel, pushAngle: 0 };
    return depthCeiling(setting, width, demand.meltingEnergy);
  };
}

/** Row after a trial or a run-in, from the reading in a shop. */
function tryoutReader(
  setup: Setup,
  demand: RunDemand,
  draws: ShopDraws,
): (shop: number, lift: number) => number {
  const { way, course } = setup;
  const tryout = way.tryout!;
  const cut = cutter(setup, demand, draws);
  const pass = draws.normals(SERIES.trialPass);
  const seam = draws.normals(SERIES.trialSeam);
  const gauge = draws.normals(SERIES.trialGauge);
  const seamPart = Math.sqrt(stationVariance(tryout.length, tryout.stations, demand.seamRange));
  const readingSd = demand.readingSd / Math.sqrt(tryout.stations);
  return (shop, lift) => {
    const depth = cut(shop, lift, course.tryoutEnergy, pass[shop]!);
    const reading = depth * Math.exp(draws.seamSd[shop]! * seamPart * seam[shop]!) + readingSd * gauge[shop]!;
    return rowOf(course.tryoutTable!, reading);
  };
}

/** Trial, if there is one, and layers over the whole seam with their stops. */
function runLayers(
  setup: Setup,
  demand: RunDemand,
  draws: ShopDraws,
  out: RunOutcomes,
  rows?: RowsRead,
): void {
  const { rig, way, course } = setup;
  const { tracks, spacing } = rig.pattern;
  const { diameter } = rig.electrode;
  const { count, level, angle, seamSd, laterFactor, extraWidth } = draws;
  const layers = way.shares.length;
  const cut = cutter(setup, demand, draws);
  const readTrial = way.tryout && tryoutReader(setup, demand, draws);
  const noise = Array.from({ length: layers * tracks }, (_, series) => draws.normals(series));
  const paths = draws.paths(demand.passLength);
  const weight = courseWeight(way.shares);
  const stops = stopParts(way, demand, draws, tracks);
  const [slowest, quickest] = [rig.energyRange[1], rig.energyRange[0]];
  const timeAtUnit = demand.passLength / rig.unitTravel;
  const depths = new Float64Array(tracks);
  const energies = new Float64Array(tracks);
  const finished = new Uint8Array(tracks);
  const reach = new Float64Array(tracks);
  for (let shop = 0; shop < count; shop += 1) {
    const lift = level[shop]! + angle[shop]! * rig.angleTerm;
    let set = course.middle;
    if (readTrial !== undefined) {
      const index = readTrial(shop, lift);
      if (rows !== undefined) rows.tryout[shop] = index;
      const row = course.tryoutTable!.rows[index]!;
      if (row.action !== 'run') {
        out.notRun[shop] = 1;
        continue;
      }
      set = row.logEnergy;
    }
    const radius = (diameter + extraWidth[shop]!) / 2;
    depths.fill(0);
    finished.fill(0);
    if (tracks > 1) fillReach(reach, tracks, radius, spacing);
    for (let layer = 0; layer < layers; layer += 1) {
      const table = course.stopTables[layer];
      const stop = stops[layer];
      if (table !== undefined) out.gauged[shop] = out.gauged[shop]! + 1;
      for (let track = 0; track < tracks; track += 1) {
        if (finished[track] === 1) continue;
        const floor = tracks > 1 ? floorAtTrack(depths, reach, tracks, track) : depths[0]!;
        let logEnergy = set[layer]!;
        if (table !== undefined) {
          const reading = stop!.read(shop, track, floor);
          const index = rowOf(table, reading);
          if (rows !== undefined) rows.stops[layer * tracks + track]![shop] = index;
          const row = table.rows[index]!;
          if (row.action !== 'run') {
            finished[track] = 1;
            continue;
          }
          logEnergy = Math.min(slowest, Math.max(quickest, energies[track]! + row.logEnergy[0]!));
        }
        energies[track] = logEnergy;
        const factor = layer > 0 ? laterFactor[shop]! : 1;
        depths[track] = floor + factor * cut(shop, lift, logEnergy, noise[layer * tracks + track]![shop]!);
        out.travelTime[shop] = out.travelTime[shop]! + timeAtUnit * Math.exp(logEnergy);
        out.passes[shop] = out.passes[shop]! + 1;
      }
    }
    const sway = seamSd[shop]! * weight;
    if (tracks === 1) {
      const path = pathOf(0, shop, paths.count);
      const low = depths[0]! * Math.exp(sway * paths.least[path]!);
      const high = depths[0]! * Math.exp(sway * paths.greatest[path]!);
      readOneTrack(out, shop, radius, demand.zoneWidth, depths[0]!, low, high);
    } else {
      readTracks(out, shop, rig.pattern, demand.zoneWidth, paths, depths, radius, sway);
    }
  }
}

/** How stations read the floor before each layer that waits for a stop. */
function stopParts(
  way: Way,
  demand: RunDemand,
  draws: ShopDraws,
  tracks: number,
): ({ read: (shop: number, track: number, floor: number) => number } | undefined)[] {
  const layers = way.shares.length;
  const paths = draws.paths(demand.passLength);
  const readingSd = demand.readingSd / Math.sqrt(way.stations);
  const whole = courseWeight(way.shares);
  return way.shares.map((_, layer) => {
    if (layer < layers - way.stops) return undefined;
    const means = paths.stationMean(way.stations);
    const before = way.shares.slice(0, layer);
    const part = courseWeight(before);
    const sum = before.reduce((total, share) => total + share, 0);
    const along = part / whole;
    const beside = Math.sqrt(Math.max(0, 1 - along ** 2));
    const { seamSd } = draws;
    const noise = Array.from({ length: tracks }, (_, track) =>
      draws.normals(SERIES.gauge + layer * tracks + track),
    );
    return {
      read: (shop, track, floor) => {
        const own = means[pathOf(track, shop, paths.count)]!;
        const other = means[pathOf(SERIES.beside + layer * tracks + track, shop, paths.count)]!;
        const sway = (seamSd[shop]! * part) / sum;
        return floor * Math.exp(sway * (along * own + beside * other)) + readingSd * noise[track]![shop]!;
      },
    };
  });
}

/** Reads the floor of one track that goes from a least to a greatest depth along the seam. */
function readOneTrack(
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

/**
 * Reads the floor of several tracks. Each has its own course along the seam; a ridge follows the mean of its two
 * neighbours, which is a course of the same kind, weaker by the root of two.
 */
export function readTracks(
  out: Pick<RunOutcomes, 'deepest' | 'depth' | 'shallowest' | 'width' | 'widthLeast' | 'widthMost'>,
  shop: number,
  pattern: Pattern,
  zoneWidth: number,
  paths: Pick<SeamPaths, 'count' | 'least' | 'greatest'>,
  depths: Float64Array,
  radius: number,
  sway: number,
): void {
  const { tracks, spacing } = pattern;
  const zone = zoneWidth / 2;
  const low = (series: number): number => Math.exp(sway * paths.least[pathOf(series, shop, paths.count)]!);
  const high = (series: number): number =>
    Math.exp(sway * paths.greatest[pathOf(series, shop, paths.count)]!);
  const last = tracks - 1;
  let deepest = 0;
  let middle = 0;
  let shallowest = Number.POSITIVE_INFINITY;
  for (let track = 0; track < tracks; track += 1) {
    const depth = depths[track]!;
    middle = Math.max(middle, depth);
    deepest = Math.max(deepest, depth * high(track));
  }
  for (let track = 0; track < last; track += 1) {
    const ridge = SERIES.beside - 1 - track;
    const least = paths.least[pathOf(ridge, shop, paths.count)]!;
    const both = Math.exp((sway * least) / Math.SQRT2);
    const [left, right] = [depths[track]! * both, depths[track + 1]! * both];
    const along = crossingOf(left, right, spacing, radius);
    const offset = trackOffset(pattern, track) + along;
    if (Math.abs(offset) > zone + 1e-12) continue;
    shallowest = Math.min(
      shallowest,
      Math.max(left - heightAt(radius, along), right - heightAt(radius, spacing - along)),
    );
  }
  for (const edge of [-zone, zone]) {
    const nearest = Math.min(last, Math.max(0, Math.round(edge / spacing + last / 2)));
    let floor = 0;
    for (const track of [nearest - 1, nearest, nearest + 1]) {
      if (track < 0 || track > last) continue;
      const rise = heightAt(radius, Math.abs(edge - trackOffset(pattern, track)));
      floor = Math.max(floor, depths[track]! * low(track) - rise);
    }
    shallowest = Math.min(shallowest, floor);
  }
  const edges = (factor: (track: number) => number): number => {
    const outer = (track: number): number => halfWidthAt(radius, depths[track]! * factor(track));
    return last * spacing + outer(0) + outer(last);
  };
  out.deepest[shop] = deepest;
  out.depth[shop] = middle;
  out.shallowest[shop] = Math.max(0, shallowest);
  out.width[shop] = edges(() => 1);
  out.widthLeast[shop] = edges(low);
  out.widthMost[shop] = edges(high);
}

/** Halvings for a ridge on a flared wall, where two arcs do not meet [-]: to well below a thousandth of a millimetre. */
const HALVINGS = 24;

/** Where the outlines of two neighbouring tracks cross, from the first [m]; at a centre line where one covers the other. */
function crossingOf(left: number, right: number, spacing: number, radius: number): number {
  /** How much deeper the first outline is than the second; it falls from the first centre line to the second. */
  const ahead = (along: number): number =>
    left - heightAt(radius, along) - right + heightAt(radius, spacing - along);
  if (ahead(0) <= 0) return 0;
  if (ahead(spacing) >= 0) return spacing;
  const step = right - left;
  const square = radius * radius - (spacing * spacing + step * step) / 4;
  if (square > 0) {
    const along = spacing / 2 - step * Math.sqrt(square / (spacing * spacing + step * step));
    if (along >= 0 && along <= spacing && Math.abs(ahead(along)) < 1e-9) return along;
  }
  let [low, high] = [0, spacing];
  for (let halving = 0; halving < HALVINGS; halving += 1) {
    const middle = (low + high) / 2;
    if (ahead(middle) > 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Series of the passes of a plan with a run-in: the first stretch, the rest, and the first deepened. */
const RUN_IN_PASSES = [0, 1, 2] as const;

/** A run-in on the first stretch of the seam, the rest at what the table says, the first stretch deepened at the end. */
function runWithRunIn(
  setup: Setup,
  demand: RunDemand,
  draws: ShopDraws,
  out: RunOutcomes,
  rows?: RowsRead,
): void {
  const { rig, way, course } = setup;
  const { length, stations } = way.tryout!;
  const cut = cutter(setup, demand, draws);
  const [first, rest, again] = RUN_IN_PASSES.map((series) => draws.normals(series)) as [
    Float64Array,
    Float64Array,
    Float64Array,
  ];
  const gauge = draws.normals(SERIES.trialGauge);
  const readingSd = demand.readingSd / Math.sqrt(stations);
  const onRunIn = draws.paths(length);
  const onRest = draws.paths(demand.passLength - length);
  const means = onRunIn.stationMean(stations);
  const shares = [RUN_IN_SHARE, 1 - RUN_IN_SHARE];
  const weight = courseWeight(shares);
  const along = RUN_IN_SHARE / weight;
  const beside = Math.sqrt(1 - along ** 2);
  const { diameter } = rig.electrode;
  const time = (logEnergy: number, stretch: number): number =>
    (stretch * Math.exp(logEnergy)) / rig.unitTravel;
  for (let shop = 0; shop < draws.count; shop += 1) {
    const lift = draws.level[shop]! + draws.angle[shop]! * rig.angleTerm;
    const sd = draws.seamSd[shop]!;
    const radius = (diameter + draws.extraWidth[shop]!) / 2;
    const path = pathOf(0, shop, onRunIn.count);
    const other = pathOf(SERIES.beside, shop, onRunIn.count);
    const begun = cut(shop, lift, course.tryoutEnergy, first[shop]!);
    const reading =
      begun * Math.exp(sd * (along * means[path]! + beside * means[other]!)) + readingSd * gauge[shop]!;
    const index = rowOf(course.tryoutTable!, reading);
    if (rows !== undefined) rows.tryout[shop] = index;
    out.gauged[shop] = 0;
    out.passes[shop] = 1;
    out.travelTime[shop] = time(course.tryoutEnergy, length);
    const row = course.tryoutTable!.rows[index]!;
    if (row.action !== 'run') {
      // The first stretch is begun and nothing more: it must not be too deep, and the depth is not reached.
      out.notRun[shop] = 1;
      out.deepest[shop] = begun * Math.exp(sd * onRunIn.greatest[path]!);
      continue;
    }
    const [toRest, toDeepen] = row.logEnergy as [number, number];
    const long = cut(shop, lift, toRest, rest[shop]!);
    const short = begun + draws.laterFactor[shop]! * cut(shop, lift, toDeepen, again[shop]!);
    const restPath = pathOf(1, shop, onRest.count);
    const low = Math.min(
      long * Math.exp(sd * onRest.least[restPath]!),
      short * Math.exp(sd * weight * onRunIn.least[path]!),
    );
    const high = Math.max(
      long * Math.exp(sd * onRest.greatest[restPath]!),
      short * Math.exp(sd * weight * onRunIn.greatest[path]!),
    );
    readOneTrack(out, shop, radius, demand.zoneWidth, long, low, high);
    out.passes[shop] = 3;
    out.travelTime[shop] =
      out.travelTime[shop]! + time(toRest, demand.passLength - length) + time(toDeepen, length);
  }
}
