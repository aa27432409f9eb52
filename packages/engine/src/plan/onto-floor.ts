import { normalProbability, percentiles } from '../numeric/index.ts';
import type { FloorShops } from './floor-shops.ts';
import type { Percentiles, RowOutcome } from './outcome.ts';

/** What is to be made of a floor that is there; SI. */
export interface OntoFloorTask {
  /** The floor in shops that settings are solved in. */
  readonly shops: FloorShops;
  /** The same floor in shops that have no part in solving: what is told is counted in them. */
  readonly fair: FloorShops;
  /** Part of a pass's depth that is cut at each place: below 1 where it comes up to depth and runs out [-]. */
  readonly share: ArrayLike<number>;
  /** Whether the least depth must be reached at each place [-]. */
  readonly must: readonly boolean[];
  /** Least depth [m]. */
  readonly least: number;
  /** Greatest depth [m]. */
  readonly most: number;
  /** Greatest depth that keeps the least ligament [m]. */
  readonly mostForLigament: number;
  /** Chance wanted for reaching, and for not exceeding, the depth [-]. */
  readonly assurance: number;
  /** Chance wanted for keeping the ligament [-]. */
  readonly ligamentAssurance: number;
  /** Travel that the carriage keeps and the process allows [m/s]. */
  readonly travel: { readonly least: number; readonly most: number };
  /** Greatest depth that the energy balance allows one pass at a travel [m]. */
  readonly ceiling: (travel: number) => number;
  /** Further passes on top of each other that are tried at most [-]. */
  readonly passesMost: number;
  /** Stations whose mean may be read before the last pass; left out: no gauge stop. */
  readonly gauge?:
    | {
        /** Indices of the places read [-]. */
        readonly places: readonly number[];
        /** Standard deviation of one reading [m]. */
        readonly readingSd: number;
      }
    | undefined;
  /** What so many passes take, the last of them after a gauge stop or not; the least is best. */
  readonly effort: (passes: number, travel: number, gauged: boolean) => number;
}

/** Chances counted over shops that had no part in solving. */
export interface OntoFloorChances {
  /** Depth reached everywhere it must [-]. */
  readonly reached: number;
  /** No point too deep [-]. */
  readonly notTooDeep: number;
  /** Ligament kept [-]. */
  readonly ligamentKept: number;
}

/** Passes onto a floor that is there; SI. */
export interface OntoFloorPlan {
  /** Further passes on top of each other; 0: the floor is left as it is [-]. */
  readonly passes: number;
  /** How many of them come before the gauge stop; all where there is none [-]. */
  readonly passesBefore: number;
  /** Travel of the passes before a gauge stop, or of all; undefined where there are none [m/s]. */
  readonly travel: number | undefined;
  /** What the mean of the stations says to do with the passes after it; empty without a gauge stop. */
  readonly table: readonly RowOutcome[];
  /** Mean depth over the places before anything is cut [m]. */
  readonly before: Percentiles;
  /** What one pass at that travel takes off on the mean [m]. */
  readonly cut: Percentiles | undefined;
  /** Mean depth in the end [m]. */
  readonly after: Percentiles;
  readonly chances: OntoFloorChances;
  /** Whether every chance is as high as wanted. */
  readonly meets: boolean;
}

/** Part of the allowed misses that is kept back while solving: other shops are met at the rig [-] (judgement). */
const GUARD = 0.2;
/** The same for reaching the depth, which is aimed at: the shallowest place of a seam is less even than a normal distribution [-] (judgement). */
const GUARD_REACHED = 0.5;
/** Halvings of ln travel: to less than a hundredth of a travel [-]. */
const HALVINGS = 10;
/** Parts of their even share of what is missing that passes before a gauge stop take off: what is too deep cannot be mended [-]. */
const FIRST_PARTS = [0.85, 1, 1.2] as const;
/** Rows of a table between its open ends at most, the part of the readings in those, and the step of an edge [-], [-], [m]. */
const ROWS_MOST = 14;
const TAIL = 0.005;
const EDGE_STEP = 0.1e-3;
/** Chance below which a row does not say to run, but to ask [-] (judgement). */
const CHANCE_LEAST = 0.5;

/**
 * Plans passes onto a floor that is there: how many, at which travel, with or without a gauge stop before the last.
 *
 * Depth falls with travel, so each number of passes is one search along the travel in shops that share what is not known
 * between the floor and the passes to come. The least depth that reaches as surely as wanted is aimed at. What is told is
 * counted in other shops. Where nothing is sure enough, what comes nearest is given, and `meets` is false.
 *
 * @param task - floor, demand and what may be done [record], least below most, all lists over the same places
 * @returns passes with their chances [record]
 * @source derived: chance-constrained planning over the removal law, as `planJob`
 * @example
 * const one = (value) => Float64Array.of(value);
 * const shops = { count: 1, at: one(0), depth: one(0.008), lift: one(Math.log(0.0001)), power: one(1), further: () => one(1), gaugeError: one(0) };
 * const plan = planOntoFloor({ shops, fair: shops, share: [1], must: [true], least: 0.01, most: 0.012, mostForLigament: 0.02, assurance: 0.95, ligamentAssurance: 0.99, travel: { least: 0.01, most: 0.1 }, ceiling: () => 1, passesMost: 2, effort: (passes) => passes });
 * Math.round(1000 * plan.travel) // => 50
 */
export function planOntoFloor(task: OntoFloorTask): OntoFloorPlan {
  const floor = new Floor(task.shops, task);
  const wanted = raised(task);
  const found: Candidate[] = [];
  for (let passes = 0; passes <= task.passesMost; passes += 1) {
    found.push(blind(floor, passes, task, wanted));
    for (let before = 0; task.gauge !== undefined && before < passes; before += 1) {
      for (const part of before === 0 ? [0] : FIRST_PARTS) {
        const share = (part * before) / passes;
        found.push(gauged(floor, { passes, before, share }, task, task.gauge, wanted));
      }
    }
    // one pass more is tried, as several small ones may be surer than a great one
    if (found.some(({ score, passes: own }) => score >= 0 && own < passes)) break;
  }
  const fair = new Floor(task.fair, task);
  const told = found.map((each) => toldIn(each, fair, task));
  return told.reduce((best, each) => (isBetter(each, best) ? each : best)).plan;
}

/** A way of going on, before it is counted in other shops. */
interface Candidate {
  readonly passes: number;
  /** Passes before the gauge stop; all of them where there is none [-]. */
  readonly before: number;
  readonly travel: number | undefined;
  readonly rows: readonly Row[];
  readonly edges: readonly number[];
  /** Least margin of a chance over what is wanted [-]. */
  readonly score: number;
}

interface Row {
  readonly action: RowOutcome['action'];
  readonly travel: number | undefined;
}

type Gauge = NonNullable<OntoFloorTask['gauge']>;
type Wanted = Pick<OntoFloorTask, 'assurance' | 'ligamentAssurance'>;

function raised({ assurance, ligamentAssurance }: Wanted): Wanted {
  const up = (chance: number): number => chance + GUARD * (1 - chance);
  return { assurance: up(assurance), ligamentAssurance: up(ligamentAssurance) };
}

/** All passes at one travel, nothing read between them. */
function blind(floor: Floor, passes: number, task: OntoFloorTask, wanted: Wanted): Candidate {
  const all = floor.every();
  if (passes === 0) {
    return {
      passes,
      before: 0,
      travel: undefined,
      rows: [],
      edges: [],
      score: scoreOf(floor.chances(all, []), wanted),
    };
  }
  const travel = solveTravel(task.travel, wanted, (at) => floor.chances(all, cutsAt(at, passes)));
  const score = scoreOf(floor.chances(all, cutsAt(travel, passes)), wanted);
  return { passes, before: passes, travel, rows: [], edges: [], score };
}

/** Some passes at one travel, a gauge stop, and the rest at the travel that the row of the reading says. */
function gauged(
  floor: Floor,
  { passes, before, share }: { readonly passes: number; readonly before: number; readonly share: number },
  task: OntoFloorTask,
  gauge: Gauge,
  wanted: Wanted,
): Candidate {
  let travel: number | undefined;
  if (before > 0) {
    const now = median(floor.means([]));
    const target = now + ((task.least + task.most) / 2 - now) * share;
    travel = halved(task.travel, (at) => median(floor.means(cutsAt(at, before))) > target);
  }
  const first = travel === undefined ? [] : cutsAt(travel, before);
  const readings = floor.readings(first, gauge);
  const edges = edgesOf(readings);
  const groups = groupsOf(edges, readings);
  let [reached, notTooDeep, ligamentKept, asked] = [0, 0, 0, 1];
  const rows = groups.map((group): Row => {
    if (group.length === 0) return { action: 'ask', travel: undefined };
    const shops = Int32Array.from(group);
    const cutTo = (at: number): Cut[] => [...first, ...cutsAt(at, passes - before, before)];
    const left = floor.chances(shops, first);
    const own = solveTravel(task.travel, wanted, (at) => floor.chances(shops, cutTo(at)));
    const run = floor.chances(shops, cutTo(own));
    const leave = scoreOf(left, wanted) >= Math.min(0, scoreOf(run, wanted));
    const got = leave ? left : run;
    if (Math.min(got.reached, got.notTooDeep) < CHANCE_LEAST || got.ligamentKept < task.ligamentAssurance)
      return { action: 'ask', travel: undefined };
    const part = group.length / floor.shops;
    reached += part * got.reached;
    notTooDeep += part * got.notTooDeep;
    ligamentKept += part * got.ligamentKept;
    asked -= part;
    return leave ? { action: 'done', travel: undefined } : { action: 'run', travel: own };
  });
  // where a row says to ask, nothing more is cut: that cannot make it deeper
  const chances = { reached, notTooDeep: notTooDeep + asked, ligamentKept: ligamentKept + asked };
  return { passes, before, travel, rows, edges, score: scoreOf(chances, wanted) };
}

/** Even edges of rows over the readings that are expected. */
function edgesOf(readings: Float64Array): number[] {
  const [low, high] = percentiles(readings, [TAIL, 1 - TAIL]) as [number, number];
  const step = Math.max(EDGE_STEP, Math.ceil((high - low) / ROWS_MOST / EDGE_STEP - 1e-9) * EDGE_STEP);
  const start = Math.max(0, Math.floor(low / step) * step);
  const count = Math.max(1, Math.ceil((high - start) / step - 1e-9));
  return Array.from({ length: count + 1 }, (_, i) => Math.round((start + i * step) / EDGE_STEP) * EDGE_STEP);
}

/** Shops by the row that each reads; those outside all rows are in none. */
function groupsOf(edges: readonly number[], readings: Float64Array): number[][] {
  const groups: number[][] = Array.from({ length: edges.length - 1 }, () => []);
  readings.forEach((reading, shop) => {
    groups[rowAt(edges, reading)]?.push(shop);
  });
  return groups;
}

function cutsAt(travel: number, passes: number, first = 0): Cut[] {
  return Array.from({ length: passes }, (_, pass) => ({ pass: first + pass, travel }));
}

/** The row that a reading falls into; -1 below the first edge, and one beyond the last at or above the last edge. */
function rowAt(edges: readonly number[], reading: number): number {
  let row = -1;
  while (row + 1 < edges.length && reading >= edges[row + 1]!) row += 1;
  return row;
}

/** Least margin of a chance over what is wanted [-]. */
function scoreOf(chances: OntoFloorChances, { assurance, ligamentAssurance }: Wanted): number {
  return Math.min(
    chances.reached - assurance,
    chances.notTooDeep - assurance,
    chances.ligamentKept - ligamentAssurance,
  );
}

/**
 * The quickest travel at which the depth is reached as surely as wanted; where another chance is then short, the one at
 * which reaching and not exceeding are as likely, and in any case none that does not keep the ligament.
 */
function solveTravel(
  range: OntoFloorTask['travel'],
  wanted: Wanted,
  countAt: (travel: number) => OntoFloorChances,
): number {
  const surely = 1 - ((1 - wanted.assurance) * (1 - GUARD_REACHED)) / (1 - GUARD);
  const sure = halved(range, (travel) => countAt(travel).reached >= surely);
  if (scoreOf(countAt(sure), wanted) >= 0) return sure;
  const even = halved(range, (travel) => {
    const { reached, notTooDeep, ligamentKept } = countAt(travel);
    return reached > notTooDeep && ligamentKept >= wanted.ligamentAssurance;
  });
  return even;
}

/** The greatest travel for which this holds, where it holds up to some travel; the least where it never does. */
function halved({ least, most }: OntoFloorTask['travel'], holds: (travel: number) => boolean): number {
  if (holds(most)) return most;
  let [low, high] = [Math.log(least), Math.log(most)];
  for (let halving = 0; halving < HALVINGS; halving += 1) {
    const middle = (low + high) / 2;
    if (holds(Math.exp(middle))) low = middle;
    else high = middle;
  }
  return Math.exp(low);
}

interface Told {
  readonly plan: OntoFloorPlan;
  readonly score: number;
  readonly effort: number;
}

function isBetter(one: Told, other: Told): boolean {
  if (one.plan.meets !== other.plan.meets) return one.plan.meets;
  return one.plan.meets ? one.effort < other.effort : one.score > other.score;
}

/** A way counted in shops that had no part in solving it. */
function toldIn(way: Candidate, floor: Floor, task: OntoFloorTask): Told {
  const { passes, before, travel } = way;
  const isGauged = way.rows.length > 0;
  const first = travel === undefined ? [] : cutsAt(travel, before);
  const counted = isGauged
    ? inRows(way, first, floor, task.gauge!)
    : { chances: floor.count(floor.every(), first), table: [], means: floor.means(first) };
  const score = scoreOf(counted.chances, task);
  const usual = middleTravel(counted.table) ?? travel ?? task.travel.most;
  return {
    score,
    effort: task.effort(passes, usual, isGauged),
    plan: {
      passes,
      passesBefore: before,
      travel,
      table: counted.table,
      before: bandOf(floor.means([])),
      cut: travel === undefined ? undefined : bandOf(floor.cutMeans(travel)),
      after: bandOf(counted.means),
      chances: counted.chances,
      meets: score >= 0,
    },
  };
}

function middleTravel(table: readonly RowOutcome[]): number | undefined {
  const travels = table.flatMap(({ travel }) => (travel === undefined ? [] : [travel]));
  return travels[Math.floor(travels.length / 2)];
}

interface Counted {
  readonly chances: OntoFloorChances;
  readonly table: readonly RowOutcome[];
  readonly means: Float64Array;
}

/** What each row of a table leads to; neighbouring rows that say the same without a travel are one. */
function inRows(
  { passes, before, rows, edges }: Candidate,
  first: readonly Cut[],
  floor: Floor,
  gauge: Gauge,
): Counted {
  const readings = floor.readings(first, gauge);
  const means = floor.means(first);
  let [reached, notTooDeep, ligamentKept] = [0, 0, 0];
  const told = merged([
    { action: 'ask', travel: undefined, from: 0, to: edges[0]! },
    ...rows.map((row, i) => ({ ...row, from: edges[i]!, to: edges[i + 1]! })),
    { action: 'ask', travel: undefined, from: edges.at(-1)!, to: undefined },
  ]);
  const table = told.map(({ action, travel, from, to }): RowOutcome => {
    const shops = Int32Array.from(floor.every().filter((shop) => rowOf(readings[shop]!, from, to)));
    const cuts = travel === undefined ? first : [...first, ...cutsAt(travel, passes - before, before)];
    const got = floor.count(shops, cuts);
    const ends = floor.means(cuts, shops);
    shops.forEach((shop, i) => {
      means[shop] = ends[i]!;
    });
    // where a row says to ask, nothing more is cut: that cannot make it deeper
    const asks = action === 'ask';
    reached += asks ? 0 : got.reached * shops.length;
    notTooDeep += (asks ? 1 : got.notTooDeep) * shops.length;
    ligamentKept += (asks ? 1 : got.ligamentKept) * shops.length;
    return {
      ...{ from, to, action, travel },
      ...{ deepenTravel: undefined, travelFactor: undefined },
      expect: bandOf(shops.length === 0 ? Float64Array.of(from) : ends),
      tooShallow: 1 - got.reached,
      tooDeep: 1 - got.notTooDeep,
    };
  });
  const total = floor.shops;
  return {
    chances: {
      reached: reached / total,
      notTooDeep: notTooDeep / total,
      ligamentKept: ligamentKept / total,
    },
    table,
    means,
  };
}

type Span = Row & { readonly from: number; readonly to: number | undefined };

function merged(rows: readonly Span[]): Span[] {
  return rows.reduce<Span[]>((out, row) => {
    if (row.from === row.to) return out;
    const last = out.at(-1);
    if (last !== undefined && last.action === row.action && row.action !== 'run')
      out[out.length - 1] = { ...last, to: row.to };
    else out.push(row);
    return out;
  }, []);
}

function rowOf(reading: number, from: number, to: number | undefined): boolean {
  return (from === 0 || reading >= from) && (to === undefined || reading < to);
}

/** One further pass. */
interface Cut {
  readonly pass: number;
  /** Its travel [m/s]. */
  readonly travel: number;
}

/** The floor in shops, and what passes make of it. */
class Floor {
  readonly shops: number;
  private readonly floor: FloorShops;
  private readonly task: OntoFloorTask;
  private readonly places: number;

  constructor(floor: FloorShops, task: OntoFloorTask) {
    this.shops = floor.count;
    this.floor = floor;
    this.task = task;
    this.places = floor.at.length;
  }

  every(): Int32Array {
    return Int32Array.from({ length: this.shops }, (_, shop) => shop);
  }

  /** In which part of these shops each demand is met. */
  count(shops: Int32Array, cuts: readonly Cut[]): OntoFloorChances {
    const { least, most, mostForLigament } = this.task;
    const { low, high } = this.extremes(shops, cuts);
    let [reached, notTooDeep, ligamentKept] = [0, 0, 0];
    for (let i = 0; i < shops.length; i += 1) {
      if (low[i]! >= least) reached += 1;
      if (high[i]! <= most) notTooDeep += 1;
      if (high[i]! <= mostForLigament) ligamentKept += 1;
    }
    const all = Math.max(1, shops.length);
    return { reached: reached / all, notTooDeep: notTooDeep / all, ligamentKept: ligamentKept / all };
  }

  /** The same read off the normal distribution of ln depth: few shops tell it more steadily than their count. */
  chances(shops: Int32Array, cuts: readonly Cut[]): OntoFloorChances {
    const { least, most, mostForLigament } = this.task;
    const { low, high } = this.extremes(shops, cuts);
    const [lowest, deepest] = [lnMoments(low), lnMoments(high)];
    const below = (limit: number): number => normalProbability((Math.log(limit) - deepest.mean) / deepest.sd);
    return {
      reached: normalProbability((lowest.mean - Math.log(least)) / lowest.sd),
      notTooDeep: below(most),
      ligamentKept: below(mostForLigament),
    };
  }

  private extremes(
    shops: Int32Array,
    cuts: readonly Cut[],
  ): { readonly low: Float64Array; readonly high: Float64Array } {
    const { must } = this.task;
    const after = new Float64Array(this.places);
    const low = new Float64Array(shops.length).fill(Number.POSITIVE_INFINITY);
    const high = new Float64Array(shops.length);
    for (let i = 0; i < shops.length; i += 1) {
      this.fill(after, shops[i]!, cuts);
      for (let place = 0; place < this.places; place += 1) {
        const depth = after[place]!;
        if (depth < low[i]! && must[place]) low[i] = depth;
        if (depth > high[i]!) high[i] = depth;
      }
    }
    return { low, high };
  }

  /** Mean depth over the places where it must be reached, one per shop. */
  means(cuts: readonly Cut[], shops: Int32Array = this.every()): Float64Array {
    const after = new Float64Array(this.places);
    const { must } = this.task;
    const own = must.reduce((sum, each) => sum + (each ? 1 : 0), 0);
    return Float64Array.from(shops, (shop) => {
      this.fill(after, shop, cuts);
      let sum = 0;
      for (let place = 0; place < this.places; place += 1) if (must[place]) sum += after[place]!;
      return sum / Math.max(1, own);
    });
  }

  /** What one further pass takes off on the mean, one per shop. */
  cutMeans(travel: number): Float64Array {
    const before = this.means([]);
    return this.means([{ pass: 0, travel }]).map((after, shop) => after - before[shop]!);
  }

  /** What the stations read on the mean, one per shop. */
  readings(cuts: readonly Cut[], { places, readingSd }: Gauge): Float64Array {
    const after = new Float64Array(this.places);
    const sd = readingSd / Math.sqrt(places.length);
    return Float64Array.from({ length: this.shops }, (_, shop) => {
      this.fill(after, shop, cuts);
      const mean = places.reduce((sum, place) => sum + after[place]!, 0) / places.length;
      return mean + sd * this.floor.gaugeError[shop]!;
    });
  }

  private fill(after: Float64Array, shop: number, cuts: readonly Cut[]): void {
    const { depth, lift, power, further } = this.floor;
    const { share, ceiling } = this.task;
    const o = shop * this.places;
    for (let place = 0; place < this.places; place += 1) after[place] = depth[o + place]!;
    for (const { pass, travel } of cuts) {
      const middle = Math.exp(lift[shop]! - power[shop]! * Math.log(travel));
      const most = ceiling(travel);
      const parts = further(pass);
      for (let place = 0; place < this.places; place += 1) {
        const cut = middle * parts[o + place]!;
        after[place]! += share[place]! * (cut < most ? cut : most);
      }
    }
  }
}

/** Depth that stands for none where its logarithm is taken [m]. */
const NONE = 1e-6;

function lnMoments(values: Float64Array): { readonly mean: number; readonly sd: number } {
  let [sum, square] = [0, 0];
  for (const value of values) {
    const ln = Math.log(Math.max(NONE, value));
    sum += ln;
    square += ln * ln;
  }
  const mean = sum / values.length;
  return { mean, sd: Math.sqrt(Math.max(1e-12, square / values.length - mean * mean)) };
}

function median(values: Float64Array): number {
  return percentiles(values, [0.5])[0]!;
}

function bandOf(values: Float64Array): Percentiles {
  const [p05, p50, p95] = percentiles(values, [0.05, 0.5, 0.95]) as [number, number, number];
  return { p05, p50, p95 };
}
