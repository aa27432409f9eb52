import { normalQuantile } from '../numeric/index.ts';
import { PASS_DEPTH_MOST } from '../removal/index.ts';
import { probability } from './last-cut.ts';
import { commonCovariance } from './law.ts';
import {
  type AskReason,
  askFor,
  DONE,
  EDGE_STEP,
  EXPECTED,
  evenEdges,
  type ReadingRow,
  type ReadingTable,
  written,
} from './reading-table.ts';
import { extremesWith, stationVariance } from './seam-paths.ts';
import { LATER_PASS_SD } from './shop-draws.ts';
import { readingVariance, rowAssurance, type TableTask } from './table-task.ts';
import { courseWeight, type Way } from './way.ts';

/** What is expected before a stop, and how much is then known. */
export interface FloorAtStop {
  /** Depth of the floor in the middle of what is expected [m]. */
  readonly depth: number;
  /** Variance of its logarithm: of what is common to the job, and of what is not [-]. */
  readonly common: number;
  readonly own: number;
  /** Variance of ln of the next cut, and its covariance with ln of the floor [-]. */
  readonly cut: number;
  readonly both: number;
  /** Variance of ln depth that an earlier reading told and the settings follow: at the end of the travel they do not [-]. */
  readonly known: number;
}

/** What is known of the floor before a layer of a way that waits for a stop. */
export function floorAtStop(
  task: Pick<TableTask, 'law' | 'rig' | 'passLength' | 'readingSd'>,
  way: Way,
  layer: number,
  targets: readonly number[],
  energy: number,
): FloorAtStop {
  const { law, rig } = task;
  const { tryout, shares } = way;
  const prior = commonCovariance(law, energy, energy, rig.angleTerm);
  const depth = targets[layer - 1]!;
  const part = depth / targets.at(-1)!;
  let weight = 0;
  for (let each = 0; each < layer; each += 1) weight += (shares[each]! / part) * (shares[each]! / part);
  // Later passes of a track share a factor of the shop.
  const factor = 1 - shares[0]! / part;
  const own = law.levels.pass ** 2 * weight + factor ** 2 * LATER_PASS_SD ** 2;
  const pass = law.levels.pass ** 2 + LATER_PASS_SD ** 2;
  const later = layer > shares.length - way.stops;
  const first = (common: number): FloorAtStop => ({
    ...{ depth, common, own },
    cut: common + pass,
    both: common + factor * LATER_PASS_SD ** 2,
    known: prior - common,
  });
  if (tryout === undefined && !later) return first(prior);
  const seen = later ? way.stations : tryout!.stations;
  const stretch = { length: later ? task.passLength : tryout!.length, stations: seen };
  const reading = readingVariance(task, stretch, depth);
  const common = (prior * reading) / (prior + reading);
  if (!later) return first(common);
  // After an earlier stop only the last cut is in doubt, and that it was set by a reading.
  const cut = shares[layer - 1]! / part;
  const earlier = floorAtStop(task, way, layer - 1, targets, energy);
  const set = ((earlier.common + earlier.own) * earlier.depth ** 2) / (depth - earlier.depth) ** 2;
  return {
    depth,
    common: cut ** 2 * common,
    own: cut ** 2 * pass + (task.readingSd / depth) ** 2 / way.stations,
    cut: common + pass + set,
    both: cut * (common + LATER_PASS_SD ** 2),
    known: prior - common,
  };
}

/** Chances, after a reading, that the floor is deep enough everywhere, and that it is nowhere too deep [-]. */
export interface Odds {
  readonly reached: number;
  readonly room: number;
}

/**
 * What a reading says of a floor along the whole seam: its stations see the course at a few places, and between them it goes
 * deeper and less deep. Floor, next cut and extremes are normal in ln depth together with the reading.
 */
export class StopOdds {
  readonly state: FloorAtStop;
  /** Standard deviation of ln of a reading that is expected [-]. */
  readonly spread: number;
  readonly #task: TableTask;
  readonly #lastCut: number;
  /** Variance of ln of a reading [-]. */
  readonly #variance: number;
  /** How strongly the course shows in the floor before the stop and after the next pass, and how alike those are [-]. */
  readonly #before: number;
  readonly #after: number;
  readonly #alike: number;
  readonly #extremes: ReturnType<typeof extremesWith>;
  /** Of the floor as it is: covariance with the reading, and standard deviation of ln of its extremes after it [-]. */
  readonly #withReading: number;
  readonly #leftSd: number;

  constructor(task: TableTask, layer: number, targets: readonly number[], energy: number) {
    const { law, way, passLength, readingSd } = task;
    const state = floorAtStop(task, way, layer, targets, energy);
    const before = way.shares.slice(0, layer);
    const after = way.shares.slice(0, layer + 1);
    const { seam } = law.levels;
    this.#task = task;
    this.state = state;
    this.#lastCut = state.depth - (layer > 1 ? targets[layer - 2]! : 0);
    this.#before = (seam * courseWeight(before)) / sumOf(before);
    this.#after = (seam * courseWeight(after)) / sumOf(after);
    this.#alike = courseWeight(before) / courseWeight(after);
    this.#extremes = extremesWith(task.paths(passLength), way.stations);
    const floor = state.common + state.own;
    this.#variance =
      floor +
      this.#before ** 2 * stationVariance(passLength, way.stations, law.seamRange) +
      (readingSd / state.depth) ** 2 / way.stations;
    this.spread = Math.sqrt(this.#variance);
    this.#withReading = floor + this.#before ** 2 * this.#extremes.withStations;
    this.#leftSd = sdOf(
      floor + (this.#before * this.#extremes.sd) ** 2 - this.#withReading ** 2 / this.#variance,
    );
  }

  /** Chances of the floor left as it is. */
  left(reading: number): Odds {
    const { depth } = this.state;
    const middle = Math.log(depth) + (Math.log(reading / depth) * this.#withReading) / this.#variance;
    return this.#odds(middle, this.#before * this.#extremes.mean, this.#leftSd);
  }

  /** Readings, rising, between which the floor left as it is holds both with a chance whose quantile is `z` [m]. */
  leftBetween(z: number): readonly [from: number, to: number] {
    const { required, most } = this.#task;
    const { depth } = this.state;
    const margin = this.#before * this.#extremes.mean + z * this.#leftSd;
    const readingAt = (middle: number): number =>
      depth * Math.exp(((middle - Math.log(depth)) * this.#variance) / this.#withReading);
    return [readingAt(Math.log(required) + margin), readingAt(Math.log(most) - margin)];
  }

  /** Mean depth of the floor after this reading, in the middle [m]. */
  floorAfter(reading: number): number {
    const { depth, common, own } = this.state;
    return depth * (reading / depth) ** ((common + own) / this.#variance);
  }

  /** What the next pass cuts in the middle after this reading, at the setting of the pass before [m]. */
  cutAfter(reading: number): number {
    const { depth, both } = this.state;
    return this.#lastCut * (reading / depth) ** (both / this.#variance);
  }

  /**
   * Standard deviation of ln of the extremes once the floor is a part of all that is cut, by a change of ln specific energy;
   * at the end of the travel or not [-].
   */
  runSd(part: number, change: number, isHeld: boolean): number {
    const { common, own, cut, both, known } = this.state;
    const slope = change ** 2 * this.#task.law.covariance[1]![1]!;
    const prior =
      part ** 2 * (common + own) +
      (1 - part) ** 2 * (cut + slope + (isHeld ? known : 0)) +
      2 * part * (1 - part) * both +
      (this.#after * this.#extremes.sd) ** 2;
    const withReading = part * (common + own) + (1 - part) * both + this.#course;
    return sdOf(prior - withReading ** 2 / this.#variance);
  }

  /** Chances once a pass has cut so much in the middle, by a change of ln specific energy; at the end of the travel or not. */
  run(reading: number, cut: number, change: number, isHeld: boolean): Odds {
    const floor = this.floorAfter(reading);
    const middle = Math.log(floor + cut) + this.shiftAfter(reading);
    return this.#odds(
      middle,
      this.#after * this.#extremes.mean,
      this.runSd(floor / (floor + cut), change, isHeld),
    );
  }

  /** How much deeper, in ln, the extremes lie after a reading for what it says of the course itself [-]. */
  shiftAfter(reading: number): number {
    return (Math.log(reading / this.state.depth) * this.#course) / this.#variance;
  }

  /** Covariance of the course after the next pass with the reading of the one before [-]. */
  get #course(): number {
    return this.#before * this.#after * this.#alike * this.#extremes.withStations;
  }

  #odds(middle: number, along: number, sd: number): Odds {
    const { required, most } = this.#task;
    return {
      reached: probability((middle - along - Math.log(required)) / sd),
      room: probability((Math.log(most) - middle - along) / sd),
    };
  }
}

function sumOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0);
}

function sdOf(variance: number): number {
  return Math.sqrt(Math.max(1e-8, variance));
}

/** Halvings for the deepest reading after which a pass still holds [-]. */
const HALVINGS = 7;

/** The table of a stop: how much is missing at this reading, and how deep a pass in this shop seems to cut. */
export function stopTable(
  task: TableTask,
  layer: number,
  targets: readonly number[],
  middle: readonly number[],
): ReadingTable {
  const { law, rig, way, required, most, assurance, readingSd } = task;
  const slope = law.mean[1];
  const odds = new StopOdds(task, layer, targets, middle[layer - 1]!);
  const { depth } = odds.state;
  const target = targets[layer]!;
  const [least, greatest] = rig.energyRange;
  const before = middle[layer - 1]!;
  // Where the pass before ran at the middle setting, the range of the travel is that far away.
  const [down, up] = [least - before, greatest - before];
  const isLast = layer === way.shares.length - 1;
  const passMost = PASS_DEPTH_MOST * rig.electrode.diameter;
  const z = normalQuantile(assurance);
  const rowLeast = rowAssurance(assurance);
  const usual = odds.runSd(depth / target, 0, false);
  /** How far the setting of the pass before usually lies off its middle, in ln specific energy. */
  const usualLift = Math.sqrt(odds.state.known) / slope;
  /** Deepest that a row is aimed at for the doubt that it leaves: half way between both limits. */
  const centre = Math.max(target, Math.sqrt(required * most));
  /** The cut that a reading asks for: deeper than usual where more is in doubt after it. */
  const missingAt = (reading: number): number => {
    const floor = odds.floorAfter(reading);
    if (!isLast) return target - floor;
    const part = Math.min(0.99, floor / target);
    const change = Math.log((target * (1 - part)) / odds.cutAfter(reading)) / slope;
    const more = z * (odds.runSd(part, change, false) - usual) - odds.shiftAfter(reading);
    return Math.min(centre, target * Math.exp(more)) - floor;
  };
  const runAt = (reading: number): ReadingRow => {
    const missing = missingAt(reading);
    // Deeper than one pass goes: of the last layer no pass mends it, of others a later one does.
    if (isLast && missing > passMost) return askFor('out_of_reach');
    const unchanged = odds.cutAfter(reading);
    const asked = Math.min(missing, passMost);
    const wanted = asked > 0 ? Math.log(asked / unchanged) / slope : Number.NEGATIVE_INFINITY;
    const held = Math.min(up, Math.max(down, wanted));
    const cut = unchanged * Math.exp(slope * held);
    const row: ReadingRow = { action: 'run', logEnergy: [held], cuts: [cut] };
    if (!isLast) return row;
    const { reached, room } = odds.run(
      reading,
      cut,
      held,
      wanted < down + usualLift || wanted > up - usualLift,
    );
    if (reached >= rowLeast && room >= rowLeast) return row;
    return askFor(wanted > up ? 'out_of_reach' : 'nothing_holds');
  };
  const low = Math.max(EDGE_STEP, Math.min(depth * Math.exp(-EXPECTED * odds.spread), most - 2 * EDGE_STEP));
  const high = Math.min(depth * Math.exp(EXPECTED * odds.spread), most);
  if (!isLast) {
    const edges = high > low + EDGE_STEP ? evenEdges(low, high, readingSd) : written([low, low + EDGE_STEP]);
    const rows = edges.slice(0, -1).map((edge, index) => runAt((edge + edges[index + 1]!) / 2));
    return { edges, rows: [askFor('unexpected'), ...rows, askFor('unexpected')] };
  }
  return lastTable();

  /** Rows that run, those that send to ask since nothing holds, those that leave the floor, and those that are too deep. */
  function lastTable(): ReadingTable {
    const [from, to] = odds.leftBetween(z).map((edge) => edge / EDGE_STEP) as [number, number];
    const leftFrom = Math.ceil(from - 1e-6) * EDGE_STEP;
    const leftTo = Math.floor(to + 1e-6) * EDGE_STEP;
    const isLeft = leftTo >= leftFrom + EDGE_STEP / 2;
    const end = Math.max(low, Math.min(isLeft ? leftFrom : most, high));
    const runTo = runsUpTo(end);
    const table = new RowList(low);
    if (runTo > low + EDGE_STEP / 2) {
      const edges = runTo > low + EDGE_STEP ? evenEdges(low, runTo, readingSd) : written([low, runTo]);
      for (const [index, edge] of edges.slice(1).entries())
        table.add(edge, runAt((edges[index]! + edge) / 2));
    }
    // Deeper than anything expected, and short of the drawing all the same: a hand does not go on by the table.
    table.add(Math.min(high, end), askFor('nothing_holds'));
    if (isLeft) {
      table.add(leftFrom, askFor('unexpected'));
      table.add(leftTo, DONE);
    }
    table.add(most, askFor('too_deep'));
    return table.made();
  }

  /** The deepest reading up to an end after which a pass still holds. */
  function runsUpTo(end: number): number {
    const runs = (reading: number): boolean => runAt(reading).action === 'run';
    if (runs(end - EDGE_STEP / 2)) return end;
    let [from, to] = [Math.min(depth, end), end];
    if (!runs(from)) from = low;
    if (!runs(from)) return end;
    for (let halving = 0; halving < HALVINGS && to - from > EDGE_STEP; halving += 1) {
      const half = (from + to) / 2;
      if (runs(half)) from = half;
      else to = half;
    }
    return from;
  }
}

/** Rows from a reading on; neighbours that ask for the same reason are one. */
class RowList {
  readonly #edges: number[];
  readonly #rows: ReadingRow[] = [];

  constructor(low: number) {
    this.#edges = written([low]);
  }

  add(to: number, row: ReadingRow): void {
    const [edge] = written([to]) as [number];
    if (edge < this.#edges.at(-1)! + EDGE_STEP / 2) return;
    const last = this.#rows.at(-1);
    if (last?.action === 'ask' && row.action === 'ask' && last.reason === row.reason) {
      this.#edges[this.#edges.length - 1] = edge;
      return;
    }
    this.#rows.push(row);
    this.#edges.push(edge);
  }

  /** The table: shallower than anything expected, or deeper than the drawing allows, calls for a word. */
  made(): ReadingTable {
    const reasons: readonly [AskReason, AskReason] = ['unexpected', 'too_deep'];
    return { edges: this.#edges, rows: [askFor(reasons[0]), ...this.#rows, askFor(reasons[1])] };
  }
}
