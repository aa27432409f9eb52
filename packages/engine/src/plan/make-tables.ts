import { passArea } from '../groove/index.ts';
import { normalProbability } from '../numeric/index.ts';
import { PASS_DEPTH_MOST } from '../removal/index.ts';
import { commonCovariance, type DepthLaw, middleDepth } from './law.ts';
import type { ReadingRow, ReadingTable } from './reading-table.ts';
import { stationVariance } from './seam-paths.ts';
import { LATER_PASS_SD } from './shop-draws.ts';
import { type Rig, RUN_IN_SHARE, type Way } from './way.ts';

/** Rows of a table at most, the open ones at its ends included [-]: more do not fit the card. */
const ROWS_MOST = 16;
/** Readings are expected this many standard deviations to either side of the middle [-]; beyond, the hand asks. */
const EXPECTED = 2.8;
/** Edges are written in steps of this much [m]. */
const EDGE_STEP = 0.1e-3;

/** What the tables of a plan are made for. */
export interface TableTask {
  readonly law: DepthLaw;
  readonly rig: Rig;
  readonly way: Way;
  /** Length of the seam with its run-outs [m]. */
  readonly passLength: number;
  /** Standard deviation of one gauge reading [m]. */
  readonly readingSd: number;
  /** Depth that the tracks' centre lines must have and may have [m]. */
  readonly required: number;
  readonly most: number;
  /** Chance of lying between the two from which on a floor is left as it was gauged [-]. */
  readonly enough: number;
  /** Median nominal width of one pass [m]. */
  readonly passWidth: number;
}

/** How a plan is run: one setting per layer, or a table that gives it. */
export interface Course {
  /** ln specific energy of the trial or the run-in [-]; NaN without one. */
  readonly tryoutEnergy: number;
  /** The table after it, with one setting per layer; after a run-in one for the rest and one to deepen the run-in. */
  readonly tryoutTable: ReadingTable | undefined;
  /** ln specific energy of every layer at the middle of what is expected [-]. */
  readonly middle: readonly number[];
  /** The table before each layer that waits for a stop. */
  readonly stopTables: readonly (ReadingTable | undefined)[];
  /** Depth below the plate that each layer should reach [m]. */
  readonly targets: readonly number[];
}

/** ln specific energy at which the middle of the law cuts this deep, held in the range of the travel. */
export function energyForCut(law: DepthLaw, rig: Rig, cut: number): number {
  const [level, slope, angle] = law.mean;
  return (Math.log(cut / rig.electrode.diameter) - level - angle * rig.angleTerm) / slope;
}

/** Holds an energy in the range that the travel allows. */
export function heldEnergy({ energyRange: [low, high] }: Rig, energy: number): number {
  return Math.min(high, Math.max(low, energy));
}

/** Share of the arc's power that a row of a table may ask for to melt the cut out: the rest of what may go into it heats its face [-] (judgement). */
const ROW_REMOVAL_MOST = 0.75;

/** Least ln specific energy that melts a cut of this depth out at the share of the arc's power that a row may ask for. */
function energyToMelt({ rig, passWidth }: Pick<TableTask, 'rig' | 'passWidth'>, cut: number): number {
  const area = passArea({ width: passWidth, depth: cut });
  return Math.log(area / (ROW_REMOVAL_MOST * rig.electrode.diameter ** 2));
}

/** Variance of ln of a reading about what is common to the job, with the row that it is filed under. */
export function readingVariance(
  task: Pick<TableTask, 'law' | 'readingSd'>,
  stretch: { readonly length: number; readonly stations: number },
  depth: number,
): number {
  const { law, readingSd } = task;
  const { pass, seam } = law.levels;
  return (
    pass ** 2 +
    seam ** 2 * stationVariance(stretch.length, stretch.stations, law.seamRange) +
    (readingSd / depth) ** 2 / stretch.stations
  );
}

/** Makes every setting and table of a way that aims at a depth of the tracks' centre lines. */
export function courseOf(task: TableTask, target: number): Course {
  const { law, rig, way } = task;
  const { tryout } = way;
  let sum = 0;
  const targets = way.shares.map((share) => {
    sum += share;
    return target * sum;
  });
  const cuts = way.shares.map((share) => share * target);
  const middle = cuts.map((cut) => heldEnergy(rig, energyForCut(law, rig, cut)));
  const tryoutCut =
    tryout === undefined ? 0 : (tryout.kind === 'run_in' ? RUN_IN_SHARE : Math.max(...way.shares)) * target;
  const tryoutEnergy = tryout === undefined ? Number.NaN : heldEnergy(rig, energyForCut(law, rig, tryoutCut));
  return {
    tryoutEnergy,
    tryoutTable: tryout && tryoutTable(task, tryoutEnergy, target, cuts),
    middle,
    stopTables: way.shares.map((_, layer) =>
      layer < way.shares.length - way.stops ? undefined : stopTable(task, layer, targets, middle),
    ),
    targets,
  };
}

/** The table after a trial or a run-in: what the reading says of this shop sets every later pass. */
function tryoutTable(task: TableTask, energy: number, target: number, cuts: readonly number[]): ReadingTable {
  const { law, rig, way } = task;
  const tryout = way.tryout!;
  const { diameter } = rig.electrode;
  const middle = middleDepth(law, energy, rig.angleTerm);
  const common = commonCovariance(law, energy, energy, rig.angleTerm);
  const variance = readingVariance(task, tryout, diameter * Math.exp(middle));
  const spread = Math.sqrt(common + variance);
  const low = diameter * Math.exp(middle - EXPECTED * spread);
  const high = diameter * Math.exp(middle + EXPECTED * spread);
  const runIn = tryout.kind === 'run_in';
  const edges = geometricEdges(low, runIn ? Math.min(high, task.most) : high);
  const [level, slope, angle] = law.mean;
  const still = commonCovariance(law, energy, 0, rig.angleTerm);
  const perEnergy = commonCovariance(law, energy, 1, rig.angleTerm) - still;
  /** Energy whose cut, after this reading, is this deep in the middle. */
  const energyAfter = (reading: number, cut: number): number => {
    const pull = (Math.log(reading / diameter) - middle) / (common + variance);
    return (
      (Math.log(cut / diameter) - level - angle * rig.angleTerm - still * pull) / (slope + perEnergy * pull)
    );
  };
  /** What a pass at this energy cuts in the middle after this reading. */
  const cutAt = (reading: number, at: number): number => {
    const pull = (Math.log(reading / diameter) - middle) / (common + variance);
    return (
      diameter * Math.exp(level + angle * rig.angleTerm + still * pull + (slope + perEnergy * pull) * at)
    );
  };
  const rows = edges.slice(0, -1).map((edge, index): ReadingRow => {
    const reading = Math.sqrt(edge * edges[index + 1]!);
    const wantedCuts = runIn ? [target, Math.max(target - reading, 0.02 * target)] : cuts;
    const wanted = wantedCuts.map((cut) => energyAfter(reading, cut));
    const within = wanted.map((each) => heldEnergy(rig, each));
    // No reading lets a pass travel more quickly than its arc can melt what is to be cut.
    const held = within.map((each, layer) =>
      Math.min(rig.energyRange[1], Math.max(each, energyToMelt(task, wantedCuts[layer]!))),
    );
    // What the travel cannot do now a later stop may mend.
    const near = runIn
      ? isNear(law, wanted.slice(0, 1), within.slice(0, 1)) &&
        reading + cutAt(reading, held[1]!) < task.most * (1 - OUT_OF_REACH / 2)
      : isNear(law, wanted, within);
    return way.stops > 0 || near ? { action: 'run', logEnergy: held, cuts: wantedCuts } : ASK;
  });
  return { edges, rows: [ASK, ...rows, ASK] };
}

const ASK: ReadingRow = { action: 'ask', logEnergy: [], cuts: [] };
const DONE: ReadingRow = { action: 'done', logEnergy: [], cuts: [] };
/** Depth that may be missed, in ln, because the carriage cannot travel as a row asks [-]. */
export const OUT_OF_REACH = 0.1;

/** Whether what the travel allows comes near what was wanted. */
function isNear(law: DepthLaw, wanted: readonly number[], held: readonly number[]): boolean {
  return wanted.every((each, index) => Math.abs(each - held[index]!) * law.mean[1] < OUT_OF_REACH);
}

/** What is expected before a stop, and how much is then known. */
interface BeforeStop {
  /** Depth of the floor in the middle of what is expected [m]. */
  readonly depth: number;
  /** Variance of its logarithm: of what is common to the job, and of what is not [-]. */
  readonly common: number;
  readonly own: number;
}

/** What is known of the floor before a layer of a way that waits for a stop. */
export function beforeStop(
  task: Pick<TableTask, 'law' | 'rig' | 'passLength' | 'readingSd'>,
  way: Way,
  layer: number,
  targets: readonly number[],
  energy: number,
): BeforeStop {
  const { law, rig } = task;
  const { tryout, shares } = way;
  const prior = commonCovariance(law, energy, energy, rig.angleTerm);
  const depth = targets[layer - 1]!;
  const part = depth / targets.at(-1)!;
  let weight = 0;
  for (let each = 0; each < layer; each += 1) weight += (shares[each]! / part) * (shares[each]! / part);
  const own = law.levels.pass ** 2 * weight + (1 - shares[0]! / part) ** 2 * LATER_PASS_SD ** 2;
  const later = layer > shares.length - way.stops;
  if (tryout === undefined && !later) return { depth, common: prior, own };
  const seen = later ? way.stations : tryout!.stations;
  const stretch = { length: later ? task.passLength : tryout!.length, stations: seen };
  const reading = readingVariance(task, stretch, depth);
  const common = (prior * reading) / (prior + reading);
  if (!later) return { depth, common, own };
  // After an earlier stop only the last cut is in doubt.
  const cut = shares[layer - 1]! / part;
  return {
    depth,
    common: cut ** 2 * common,
    own:
      cut ** 2 * (law.levels.pass ** 2 + LATER_PASS_SD ** 2) + (task.readingSd / depth) ** 2 / way.stations,
  };
}

/** The table of a stop: how much is missing at this reading, and how deep a pass in this shop seems to cut. */
function stopTable(
  task: TableTask,
  layer: number,
  targets: readonly number[],
  middle: readonly number[],
): ReadingTable {
  const { law, rig, way, readingSd, required, most } = task;
  const enough = task.enough * (way.leftFrom ?? 1);
  const slope = law.mean[1];
  const state = beforeStop(task, way, layer, targets, middle[layer - 1]!);
  const error = Math.hypot(
    readingSd / Math.sqrt(way.stations),
    law.levels.seam * state.depth * Math.sqrt(stationVariance(task.passLength, way.stations, law.seamRange)),
  );
  const variance = state.own + (error / state.depth) ** 2;
  const spread = Math.sqrt(state.common + variance);
  const gain = state.common / (state.common + variance);
  const target = targets[layer]!;
  const lastCut = state.depth - (layer > 1 ? targets[layer - 2]! : 0);
  const [least, greatest] = rig.energyRange;
  const before = middle[layer - 1]!;
  // Where the pass before ran at the middle setting, the range of the travel is that far away.
  const [down, up] = [least - before, greatest - before];
  const isLast = layer === way.shares.length - 1;
  const passMost = PASS_DEPTH_MOST * rig.electrode.diameter;
  /** What a reading asks of the next pass, and whether the floor is better left as it is. */
  const rowAt = (reading: number): ReadingRow => {
    const missing = target - reading;
    // Deeper than one pass goes: of the last layer no pass mends it, of others a later one does.
    if (isLast && missing > passMost) return ASK;
    // ln of how much deeper than expected this shop cuts.
    const lift = gain * Math.log(reading / state.depth);
    const asked = Math.min(missing, passMost);
    const wanted = asked > 0 ? (Math.log(asked / lastCut) - lift) / slope : Number.NEGATIVE_INFINITY;
    const held = Math.min(up, Math.max(down, wanted));
    const cut = lastCut * Math.exp(lift + slope * held);
    if (isLast && wanted > up && missing > cut * (1 + OUT_OF_REACH)) return ASK;
    return isLast && wanted <= down && isEnough(reading, cut)
      ? DONE
      : { action: 'run', logEnergy: [held], cuts: [cut] };
  };
  /** A pass that only makes surer what is sure enough is not run: with more room above it would always be surer. */
  const isEnough = (reading: number, cut: number): boolean => {
    const done = bothSides(required, most, reading, error);
    if (done >= enough) return true;
    const spread = Math.hypot(error, cut * Math.hypot(law.levels.pass, LATER_PASS_SD));
    return done >= bothSides(required, most, reading + cut, spread);
  };
  const low = Math.max(EDGE_STEP, Math.min(state.depth * Math.exp(-EXPECTED * spread), most - 2 * EDGE_STEP));
  let high = Math.min(state.depth * Math.exp(EXPECTED * spread), most);
  // Readings that call for no more passes share one row, so that the others are no coarser for them.
  let from = low;
  if (isLast) {
    while (from < high && rowAt(from + EDGE_STEP / 2).action !== 'done') from += EDGE_STEP;
    high = Math.min(high, from);
  }
  const edges = high > low + EDGE_STEP ? evenEdges(low, high) : written([low]);
  // Deeper than anything expected, and short of the drawing all the same: a hand does not go on by the table.
  const strange = edges.length - 1;
  const isStrange = isLast && required - edges.at(-1)! > EDGE_STEP / 2;
  if (isStrange) edges.push(...written([required]));
  if (most - edges.at(-1)! > EDGE_STEP / 2) edges.push(most);
  else edges[edges.length - 1] = most;
  const rows = edges
    .slice(0, -1)
    .map((edge, index) => (isStrange && index === strange ? ASK : rowAt((edge + edges[index + 1]!) / 2)));
  // Shallower than anything expected, or deeper than the drawing allows, calls for a word.
  return { edges, rows: [ASK, ...rows, ASK] };
}

/** Chance that a depth about a middle lies between two bounds. */
function bothSides(least: number, most: number, middle: number, sd: number): number {
  return normalProbability((most - middle) / sd) - normalProbability((least - middle) / sd);
}

/** Edges that rise by the same factor, written in whole steps. */
function geometricEdges(low: number, high: number): number[] {
  const bands = ROWS_MOST - 2;
  return written(Array.from({ length: bands + 1 }, (_, i) => low * (high / low) ** (i / bands)));
}

function evenEdges(low: number, high: number): number[] {
  const bands = Math.max(1, Math.min(ROWS_MOST - 2, Math.round((high - low) / EDGE_STEP)));
  return written(Array.from({ length: bands + 1 }, (_, i) => low + ((high - low) * i) / bands));
}

/** Rounds edges to whole steps. */
function written(edges: readonly number[]): number[] {
  const rounded = edges.map((edge) => Math.max(1, Math.round(edge / EDGE_STEP)) * EDGE_STEP);
  return rounded.filter((edge, index) => index === 0 || edge > rounded[index - 1]! + 1e-9);
}
