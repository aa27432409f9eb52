import { halfWidthAt, heightAt, passArea } from '../groove/index.ts';
import { depthCeiling, REMOVAL_SHARE_MOST } from '../removal/index.ts';
import type { Course } from './make-tables.ts';
import { type Pattern, trackOffset } from './pattern.ts';
import { rowOf } from './reading-table.ts';
import { stationVariance } from './seam-paths.ts';
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

/** What one pass cuts in a shop, held under the depth that the energy balance allows; the energy goes beside its logarithm. */
function cutter(
  { rig }: Setup,
  demand: RunDemand,
  draws: ShopDraws,
): (shop: number, lift: number, logEnergy: number, energy: number, noise: number) => number {
  const { diameter } = rig.electrode;
  const areaAtUnit = REMOVAL_SHARE_MOST * diameter ** 2;
  const { slope, passSd, extraWidth } = draws;
  return (shop, lift, logEnergy, energy, noise) => {
    const cut = diameter * Math.exp(lift + slope[shop]! * logEnergy + passSd[shop]! * noise);
    const width = diameter + extraWidth[shop]!;
    const area = areaAtUnit * energy;
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
  const along = draws.kept(`trial ${seamPart}`, (shop) =>
    Math.exp(draws.seamSd[shop]! * seamPart * seam[shop]!),
  );
  const energy = Math.exp(course.tryoutEnergy);
  const readingSd = demand.readingSd / Math.sqrt(tryout.stations);
  return (shop, lift) => {
    const depth = cut(shop, lift, course.tryoutEnergy, energy, pass[shop]!);
    return rowOf(course.tryoutTable!, depth * along[shop]! + readingSd * gauge[shop]!);
  };
}

/** Settings of the layers: ln specific energies, and the energies themselves. */
interface Settings {
  readonly logs: readonly number[];
  readonly energies: readonly number[];
}

/** Factors on the depth at the least and the greatest of a course, one per shop. */
interface Extremes {
  readonly low: Float64Array;
  readonly high: Float64Array;
}

/** The same of every track, and of the least of the ridge after each track but the last. */
export interface TrackExtremes {
  readonly low: readonly Float64Array[];
  readonly high: readonly Float64Array[];
  readonly ridge: readonly Float64Array[];
}

/** Extremes along a length of the course that belongs to a series, as strong as a weight makes it. */
function extremesAlong(draws: ShopDraws, length: number, weight: number, series: number): Extremes {
  const { least, greatest, count } = draws.paths(length);
  const { seamSd } = draws;
  const name = `${length} ${weight} ${series}`;
  return {
    low: draws.kept(`low ${name}`, (shop) =>
      Math.exp(seamSd[shop]! * weight * least[pathOf(series, shop, count)]!),
    ),
    high: draws.kept(`high ${name}`, (shop) =>
      Math.exp(seamSd[shop]! * weight * greatest[pathOf(series, shop, count)]!),
    ),
  };
}

/** A ridge follows the mean of its two neighbours, which is a course of the same kind, weaker by the root of two. */
function ridgeAlong(draws: ShopDraws, length: number, weight: number, track: number): Float64Array {
  const { least, count } = draws.paths(length);
  return draws.kept(`ridge ${length} ${weight} ${track}`, (shop) => {
    const path = pathOf(SERIES.beside - 1 - track, shop, count);
    return Math.exp((draws.seamSd[shop]! * weight * least[path]!) / Math.SQRT2);
  });
}

function trackExtremes(draws: ShopDraws, length: number, weight: number, tracks: number): TrackExtremes {
  const own = Array.from({ length: tracks }, (_, track) => extremesAlong(draws, length, weight, track));
  return {
    low: own.map(({ low }) => low),
    high: own.map(({ high }) => high),
    ridge: own.slice(1).map((_, track) => ridgeAlong(draws, length, weight, track)),
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
  const { count, level, angle, laterFactor, extraWidth } = draws;
  const layers = way.shares.length;
  const cut = cutter(setup, demand, draws);
  const readTrial = way.tryout && tryoutReader(setup, demand, draws);
  const noise = Array.from({ length: layers * tracks }, (_, series) => draws.normals(series));
  const extremes = trackExtremes(draws, demand.passLength, courseWeight(way.shares), tracks);
  const [lowest, highest] = [extremes.low[0]!, extremes.high[0]!];
  const stops = stopParts(way, demand, draws, tracks);
  const [slowest, quickest] = [rig.energyRange[1], rig.energyRange[0]];
  const timeAtUnit = demand.passLength / rig.unitTravel;
  const middle: Settings = { logs: course.middle, energies: course.middle.map(Math.exp) };
  const afterTrial = course.tryoutTable?.rows.map(
    ({ logEnergy }): Settings => ({ logs: logEnergy, energies: logEnergy.map(Math.exp) }),
  );
  const depths = new Float64Array(tracks);
  const energies = new Float64Array(tracks);
  const finished = new Uint8Array(tracks);
  const reach = new Float64Array(tracks);
  for (let shop = 0; shop < count; shop += 1) {
    const lift = level[shop]! + angle[shop]! * rig.angleTerm;
    let set = middle;
    if (readTrial !== undefined) {
      const index = readTrial(shop, lift);
      if (rows !== undefined) rows.tryout[shop] = index;
      const row = course.tryoutTable!.rows[index]!;
      if (row.action !== 'run') {
        out.notRun[shop] = 1;
        continue;
      }
      set = afterTrial![index]!;
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
        let logEnergy = set.logs[layer]!;
        let energy = set.energies[layer]!;
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
          energy = Math.exp(logEnergy);
        }
        energies[track] = logEnergy;
        const factor = layer > 0 ? laterFactor[shop]! : 1;
        depths[track] =
          floor + factor * cut(shop, lift, logEnergy, energy, noise[layer * tracks + track]![shop]!);
        out.travelTime[shop] = out.travelTime[shop]! + timeAtUnit * energy;
        out.passes[shop] = out.passes[shop]! + 1;
      }
    }
    if (tracks === 1) {
      const low = depths[0]! * lowest[shop]!;
      const high = depths[0]! * highest[shop]!;
      readOneTrack(out, shop, radius, demand.zoneWidth, depths[0]!, low, high);
    } else {
      readTracks(out, shop, rig.pattern, demand.zoneWidth, extremes, depths, radius);
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
    const swayed = Array.from({ length: tracks }, (_, track) =>
      draws.kept(
        `stop ${demand.passLength} ${way.stations} ${layer * tracks + track} ${track} ${part} ${whole} ${sum}`,
        (shop) => {
          const own = means[pathOf(track, shop, paths.count)]!;
          const other = means[pathOf(SERIES.beside + layer * tracks + track, shop, paths.count)]!;
          const sway = (seamSd[shop]! * part) / sum;
          return Math.exp(sway * (along * own + beside * other));
        },
      ),
    );
    return {
      read: (shop, track, floor) => floor * swayed[track]![shop]! + readingSd * noise[track]![shop]!,
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

/** Reads the floor of several tracks, each with its own course along the seam. */
export function readTracks(
  out: Pick<RunOutcomes, 'deepest' | 'depth' | 'shallowest' | 'width' | 'widthLeast' | 'widthMost'>,
  shop: number,
  pattern: Pattern,
  zoneWidth: number,
  { low, high, ridge }: TrackExtremes,
  depths: Float64Array,
  radius: number,
): void {
  const { tracks, spacing } = pattern;
  const zone = zoneWidth / 2;
  const last = tracks - 1;
  let deepest = 0;
  let middle = 0;
  for (let track = 0; track < tracks; track += 1) {
    const depth = depths[track]!;
    middle = Math.max(middle, depth);
    deepest = Math.max(deepest, depth * high[track]![shop]!);
  }
  const between = shallowestRidge(shop, pattern, zone, ridge, depths, radius);
  const shallowest = Math.min(
    between,
    edgeFloor(shop, pattern, -zone, low, depths, radius),
    edgeFloor(shop, pattern, zone, low, depths, radius),
  );
  const [first, end] = [depths[0]!, depths[last]!];
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
  depths: Float64Array,
  radius: number,
): number {
  const { tracks, spacing } = pattern;
  let shallowest = Number.POSITIVE_INFINITY;
  for (let track = 0; track < tracks - 1; track += 1) {
    const both = ridge[track]![shop]!;
    const left = depths[track]! * both;
    const right = depths[track + 1]! * both;
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
  depths: Float64Array,
  radius: number,
): number {
  const last = pattern.tracks - 1;
  const nearest = Math.min(last, Math.max(0, Math.round(edge / pattern.spacing + last / 2)));
  let floor = 0;
  for (let track = Math.max(0, nearest - 1); track <= Math.min(last, nearest + 1); track += 1) {
    const rise = heightAt(radius, Math.abs(edge - trackOffset(pattern, track)));
    floor = Math.max(floor, depths[track]! * low[track]![shop]! - rise);
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
  const means = onRunIn.stationMean(stations);
  const shares = [RUN_IN_SHARE, 1 - RUN_IN_SHARE];
  const weight = courseWeight(shares);
  const along = RUN_IN_SHARE / weight;
  const beside = Math.sqrt(1 - along ** 2);
  const { diameter } = rig.electrode;
  const begunEnergy = Math.exp(course.tryoutEnergy);
  const energies = course.tryoutTable!.rows.map(({ logEnergy }) => logEnergy.map(Math.exp));
  const restLength = demand.passLength - length;
  const atFirst = extremesAlong(draws, length, 1, 0);
  const deepened = extremesAlong(draws, length, weight, 0);
  const onRest = extremesAlong(draws, restLength, 1, 1);
  const swayed = draws.kept(`run-in ${length} ${stations}`, (shop) => {
    const own = means[pathOf(0, shop, onRunIn.count)]!;
    const other = means[pathOf(SERIES.beside, shop, onRunIn.count)]!;
    return Math.exp(draws.seamSd[shop]! * (along * own + beside * other));
  });
  const time = (energy: number, stretch: number): number => (stretch * energy) / rig.unitTravel;
  for (let shop = 0; shop < draws.count; shop += 1) {
    const lift = draws.level[shop]! + draws.angle[shop]! * rig.angleTerm;
    const radius = (diameter + draws.extraWidth[shop]!) / 2;
    const begun = cut(shop, lift, course.tryoutEnergy, begunEnergy, first[shop]!);
    const index = rowOf(course.tryoutTable!, begun * swayed[shop]! + readingSd * gauge[shop]!);
    if (rows !== undefined) rows.tryout[shop] = index;
    out.gauged[shop] = 0;
    out.passes[shop] = 1;
    out.travelTime[shop] = time(begunEnergy, length);
    const row = course.tryoutTable!.rows[index]!;
    if (row.action !== 'run') {
      // The first stretch is begun and nothing more: it must not be too deep, and the depth is not reached.
      out.notRun[shop] = 1;
      out.deepest[shop] = begun * atFirst.high[shop]!;
      continue;
    }
    const [toRest, toDeepen] = row.logEnergy as [number, number];
    const [restEnergy, deepenEnergy] = energies[index] as [number, number];
    const long = cut(shop, lift, toRest, restEnergy, rest[shop]!);
    const short = begun + draws.laterFactor[shop]! * cut(shop, lift, toDeepen, deepenEnergy, again[shop]!);
    const low = Math.min(long * onRest.low[shop]!, short * deepened.low[shop]!);
    const high = Math.max(long * onRest.high[shop]!, short * deepened.high[shop]!);
    readOneTrack(out, shop, radius, demand.zoneWidth, long, low, high);
    out.passes[shop] = 3;
    out.travelTime[shop] = out.travelTime[shop]! + time(restEnergy, restLength) + time(deepenEnergy, length);
  }
}
