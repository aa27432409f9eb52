import { cutter } from './pass-cut.ts';
import { readOneTrack, readTracks } from './read-floor.ts';
import { type ReadingTable, rowOf } from './reading-table.ts';
import type { RowsRead, RunDemand, RunOutcomes, Setup } from './run-record.ts';
import { stationVariance } from './seam-paths.ts';
import { pathOf, SERIES, type ShopDraws } from './shop-draws.ts';
import { trackExtremes } from './track-extremes.ts';
import { fillFloor, reachOf } from './track-floor.ts';
import { courseWeight, type Way } from './way.ts';

/**
 * Trial, if there is one, and layers over the whole seam with their stops. Each step goes over all shops in a loop of its
 * own: short loops over lists are what runs quickly from the first plan on.
 */
export function runLayers(
  setup: Setup,
  demand: RunDemand,
  draws: ShopDraws,
  out: RunOutcomes,
  rows?: RowsRead,
): void {
  const { rig, way, course } = setup;
  const { tracks, spacing } = rig.pattern;
  const { diameter } = rig.electrode;
  const { count } = draws;
  const cut = cutter(setup, demand, draws);
  const lift = draws.kept(
    `lift ${rig.angleTerm}`,
    (shop) => draws.level[shop]! + draws.angle[shop]! * rig.angleTerm,
  );
  const { depths, open, layers, set, before, under } = workspaceOf(count, tracks);
  const reach = tracks > 1 ? reachOf(draws, diameter, tracks, spacing) : [];
  const read = way.tryout && readTryout(setup, demand, draws, lift, out, rows);
  if (read !== undefined) for (const each of open) closeNotRun(each, out.notRun);
  const floor = tracks > 1 ? under : depths[0]!;
  const timeAtUnit = demand.passLength / rig.unitTravel;
  for (let layer = 0; layer < way.shares.length; layer += 1) {
    const table = course.stopTables[layer];
    if (table !== undefined) countStop(out);
    else if (read === undefined) fillSetting(set, course.middle[layer]!);
    else fillFromRows(set, course.tryoutTable!, layer, read);
    for (let track = 0; track < tracks; track += 1) {
      const pass = layer * tracks + track;
      if (tracks > 1) fillFloor(floor, depths, reach, track);
      if (table !== undefined) {
        const gauge = gaugeOf(way, demand, draws, layer, track, tracks);
        const told = rows?.stops[pass];
        setByGauge(set, table, { gauge, floor, before: before[track]! }, rig.energyRange, open[track]!, told);
      }
      if (way.stops > 0) before[track]!.set(set.logs);
      const noise = draws.normals(pass);
      const later = layer > 0 ? draws.laterFactor : undefined;
      cutPass(cut, { depth: depths[track]!, floor, lift, noise, later }, set, open[track]!);
      countLayer(layers[track]!, open[track]!);
      addPass(out, open[track]!, set.energies, timeAtUnit);
    }
  }
  const extremes = trackExtremes(draws, demand.passLength, weightsOf(way), layers);
  const [lowest, highest, first] = [extremes.low[0]!, extremes.high[0]!, depths[0]!];
  for (let shop = 0; shop < count; shop += 1) {
    if (out.notRun[shop] === 1) continue;
    const radius = (diameter + draws.extraWidth[shop]!) / 2;
    if (tracks > 1) readTracks(out, shop, rig.pattern, demand.zoneWidth, extremes, depths, radius);
    else {
      const depth = first[shop]!;
      const [low, high] = [depth * lowest[shop]!, depth * highest[shop]!];
      readOneTrack(out, shop, radius, demand.zoneWidth, depth, low, high);
    }
  }
}

/** How strongly the course along the seam shows in floors of so many layers: a floor that is left has fewer of them. */
function weightsOf({ shares, stops }: Way): readonly number[] {
  return shares.map((_, last) => {
    const run = shares.slice(0, last + 1);
    return last < shares.length - 1 - stops
      ? Number.NaN
      : courseWeight(run) / run.reduce((sum, share) => sum + share, 0);
  });
}

function countLayer(layers: Uint8Array, open: Uint8Array): void {
  for (let shop = 0; shop < open.length; shop += 1) layers[shop] = layers[shop]! + open[shop]!;
}

/** What a pass is run at in every shop: ln specific energy, and the energy itself [-]. */
interface Setting {
  readonly logs: Float64Array;
  readonly energies: Float64Array;
}

/** Lists that a run writes on its way and nobody keeps, one value per shop. */
interface Workspace {
  readonly depths: readonly Float64Array[];
  /** 1 where a track is still to be run. */
  readonly open: readonly Uint8Array[];
  /** Layers run. */
  readonly layers: readonly Uint8Array[];
  readonly set: Setting;
  /** ln energies of the pass before on the same track, which a stop's table changes. */
  readonly before: readonly Float64Array[];
  /** Floor under the electrode at the track being run. */
  readonly under: Float64Array;
}

/** Workspaces of the last runs, by shops and tracks: a search runs the same few over and over. */
const workspaces = new Map<string, Workspace>();
const WORKSPACES_MOST = 40;

/** A workspace as it is before anything is cut. */
function workspaceOf(count: number, tracks: number): Workspace {
  const key = `${count} ${tracks}`;
  const known = workspaces.get(key) ?? makeWorkspace(count, tracks);
  if (workspaces.size >= WORKSPACES_MOST) workspaces.clear();
  workspaces.set(key, known);
  for (const each of known.depths) each.fill(0);
  for (const each of known.open) each.fill(1);
  for (const each of known.layers) each.fill(0);
  return known;
}

function makeWorkspace(count: number, tracks: number): Workspace {
  const list = (): Float64Array => new Float64Array(count);
  return {
    depths: Array.from({ length: tracks }, list),
    open: Array.from({ length: tracks }, () => new Uint8Array(count)),
    layers: Array.from({ length: tracks }, () => new Uint8Array(count)),
    set: { logs: list(), energies: list() },
    before: Array.from({ length: tracks }, list),
    under: list(),
  };
}

/** Gauges the trial in every shop: the row of its table, and where that says to ask. */
function readTryout(
  { rig, way, course }: Setup,
  demand: RunDemand,
  draws: ShopDraws,
  lift: Float64Array,
  out: RunOutcomes,
  rows: RowsRead | undefined,
): Int16Array {
  const tryout = way.tryout!;
  const table = course.tryoutTable!;
  const cut = cutter({ rig }, demand, draws);
  const pass = draws.normals(SERIES.trialPass);
  const seam = draws.normals(SERIES.trialSeam);
  const gauge = draws.normals(SERIES.trialGauge);
  const seamPart = Math.sqrt(stationVariance(tryout.length, tryout.stations, demand.seamRange));
  const along = draws.kept(`trial ${seamPart}`, (shop) =>
    Math.exp(draws.seamSd[shop]! * seamPart * seam[shop]!),
  );
  const readingSd = demand.readingSd / Math.sqrt(tryout.stations);
  const energy = Math.exp(course.tryoutEnergy);
  const read = rows?.tryout ?? new Int16Array(draws.count);
  for (let shop = 0; shop < read.length; shop += 1) {
    const depth = cut(shop, lift[shop]!, course.tryoutEnergy, energy, pass[shop]!);
    const row = rowOf(table, depth * along[shop]! + readingSd * gauge[shop]!);
    read[shop] = row;
    if (table.rows[row]!.action !== 'run') out.notRun[shop] = 1;
  }
  return read;
}

function closeNotRun(open: Uint8Array, notRun: Uint8Array): void {
  for (let shop = 0; shop < open.length; shop += 1) if (notRun[shop] === 1) open[shop] = 0;
}

function countStop({ gauged, notRun }: RunOutcomes): void {
  for (let shop = 0; shop < gauged.length; shop += 1) {
    if (notRun[shop] === 0) gauged[shop] = gauged[shop]! + 1;
  }
}

function fillSetting({ logs, energies }: Setting, logEnergy: number): void {
  logs.fill(logEnergy);
  energies.fill(Math.exp(logEnergy));
}

/** Settings of a layer from the rows of a trial; where a row says to ask, nothing is run. */
function fillFromRows(
  { logs, energies }: Setting,
  table: ReadingTable,
  layer: number,
  read: Int16Array,
): void {
  const own = Float64Array.from(table.rows, ({ logEnergy }) => logEnergy[layer] ?? Number.NaN);
  const exps = own.map(Math.exp);
  for (let shop = 0; shop < read.length; shop += 1) {
    logs[shop] = own[read[shop]!]!;
    energies[shop] = exps[read[shop]!]!;
  }
}

/** How stations read a floor: what the course along the seam makes of their mean, and the gauge's own error. */
interface Gauge {
  readonly swayed: Float64Array;
  readonly noise: Float64Array;
  readonly readingSd: number;
}

function gaugeOf(
  way: Way,
  demand: RunDemand,
  draws: ShopDraws,
  layer: number,
  track: number,
  tracks: number,
): Gauge {
  const { passLength } = demand;
  const pass = layer * tracks + track;
  const whole = courseWeight(way.shares);
  const before = way.shares.slice(0, layer);
  const part = courseWeight(before);
  const sum = before.reduce((total, share) => total + share, 0);
  const along = part / whole;
  const beside = Math.sqrt(Math.max(0, 1 - along ** 2));
  const name = `stop ${passLength} ${way.stations} ${pass} ${track} ${part} ${whole} ${sum}`;
  const paths = draws.paths(passLength);
  const means = paths.stationMean(way.stations);
  return {
    readingSd: demand.readingSd / Math.sqrt(way.stations),
    noise: draws.normals(SERIES.gauge + pass),
    swayed: draws.kept(name, (shop) => {
      const own = means[pathOf(track, shop, paths.count)]!;
      const other = means[pathOf(SERIES.beside + pass, shop, paths.count)]!;
      const sway = (draws.seamSd[shop]! * part) / sum;
      return Math.exp(sway * (along * own + beside * other));
    }),
  };
}

/** Gauges a track in every shop and sets what its table says; a shop whose row runs no more is closed. */
function setByGauge(
  { logs, energies }: Setting,
  table: ReadingTable,
  {
    gauge: { swayed, noise, readingSd },
    floor,
    before,
  }: { readonly gauge: Gauge; readonly floor: Float64Array; readonly before: Float64Array },
  [quickest, slowest]: readonly [number, number],
  open: Uint8Array,
  told: Int16Array | undefined,
): void {
  const changes = Float64Array.from(table.rows, ({ action, logEnergy }) =>
    action === 'run' ? logEnergy[0]! : Number.NaN,
  );
  for (let shop = 0; shop < open.length; shop += 1) {
    if (open[shop] === 0) continue;
    const row = rowOf(table, floor[shop]! * swayed[shop]! + readingSd * noise[shop]!);
    if (told !== undefined) told[shop] = row;
    const change = changes[row]!;
    if (Number.isNaN(change)) {
      open[shop] = 0;
      continue;
    }
    const logEnergy = Math.min(slowest, Math.max(quickest, before[shop]! + change));
    logs[shop] = logEnergy;
    energies[shop] = Math.exp(logEnergy);
  }
}

/** Cuts one pass of a track in every shop that still runs it. */
function cutPass(
  cut: ReturnType<typeof cutter>,
  {
    depth,
    floor,
    lift,
    noise,
    later,
  }: {
    readonly depth: Float64Array;
    readonly floor: Float64Array;
    readonly lift: Float64Array;
    readonly noise: Float64Array;
    readonly later: Float64Array | undefined;
  },
  { logs, energies }: Setting,
  open: Uint8Array,
): void {
  for (let shop = 0; shop < open.length; shop += 1) {
    if (open[shop] === 0) continue;
    const factor = later === undefined ? 1 : later[shop]!;
    depth[shop] = floor[shop]! + factor * cut(shop, lift[shop]!, logs[shop]!, energies[shop]!, noise[shop]!);
  }
}

function addPass(
  { travelTime, passes }: RunOutcomes,
  open: Uint8Array,
  energies: Float64Array,
  timeAtUnit: number,
): void {
  for (let shop = 0; shop < open.length; shop += 1) {
    if (open[shop] === 0) continue;
    travelTime[shop] = travelTime[shop]! + timeAtUnit * energies[shop]!;
    passes[shop] = passes[shop]! + 1;
  }
}
