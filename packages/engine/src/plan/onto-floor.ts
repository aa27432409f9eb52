import { percentiles } from '../numeric/index.ts';
import { FloorAfter, type FloorDemand, type OntoFloorChances } from './floor-after.ts';
import type { FloorShops } from './floor-shops.ts';
import type { Percentiles, RowOutcome } from './outcome.ts';

/** What is to be made of a floor that is there; SI. */
export interface OntoFloorTask extends FloorDemand {
  /** The floor in shops that settings are solved in. */
  readonly shops: FloorShops;
  /** The same floor in shops that have no part in solving: what is told is counted in them. */
  readonly fair: FloorShops;
  /** Chance wanted for reaching, and for not exceeding, the depth [-]. */
  readonly assurance: number;
  /** Chance wanted for keeping the ligament [-]. */
  readonly ligamentAssurance: number;
  /** Travel that the carriage keeps and the process allows [m/s]. */
  readonly travel: {
    /** Least [m/s]. */
    readonly least: number;
    /** Greatest [m/s]. */
    readonly most: number;
  };
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
const FIRST_PARTS = [1, 1.15, 0.85] as const;
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
  const floor = new FloorAfter(task.shops, task);
  const wanted = raised(task);
  const found: Candidate[] = [];
  for (let passes = 0; passes <= task.passesMost; passes += 1) {
    found.push(blind(floor, passes, task, wanted));
    for (const [before, part] of stopsOf(passes)) {
      if (task.gauge === undefined || found.some(({ score }) => score >= 0)) break;
      const share = (part * before) / passes;
      found.push(gauged(floor, { passes, before, share }, task, task.gauge, wanted));
    }
    // one pass more is tried, as several small ones may be surer than a great one
    if (found.some(({ score, passes: own }) => score >= 0 && own < passes)) break;
  }
  const fair = new FloorAfter(task.fair, task);
  const told = found.map((each) => toldIn(each, fair, task));
  return told.reduce((best, each) => (isBetter(each, best) ? each : best)).plan;
}

/** Where a gauge stop may lie among so many passes, and how much those before it take off; what is likeliest to do first. */
function stopsOf(passes: number): readonly (readonly [number, number])[] {
  if (passes === 0) return [];
  if (passes === 1) return [[0, 0]];
  return [...FIRST_PARTS.map((part) => [passes - 1, part] as const), [0, 0]];
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
function blind(floor: FloorAfter, passes: number, task: OntoFloorTask, wanted: Wanted): Candidate {
  const { every } = floor;
  if (passes === 0) {
    const score = scoreOf(floor.chances(every), wanted);
    return { passes, before: 0, travel: undefined, rows: [], edges: [], score };
  }
  const travel = solveTravel(task.travel, wanted, (at) =>
    floor.chances(every, { first: 0, passes, travel: at }),
  );
  const score = scoreOf(floor.chances(every, { first: 0, passes, travel }), wanted);
  return { passes, before: passes, travel, rows: [], edges: [], score };
}

/** Some passes at one travel, a gauge stop, and the rest at the travel that the row of the reading says. */
function gauged(
  floor: FloorAfter,
  { passes, before, share }: { readonly passes: number; readonly before: number; readonly share: number },
  task: OntoFloorTask,
  gauge: Gauge,
  wanted: Wanted,
): Candidate {
  let travel: number | undefined;
  if (before > 0) {
    const now = median(floor.means());
    const target = now + ((task.least + task.most) / 2 - now) * share;
    travel = halved(
      task.travel,
      (at) => median(floor.means(floor.every, { first: 0, passes: before, travel: at })) > target,
    );
  }
  const after = floor.cut(travel === undefined ? undefined : { first: 0, passes: before, travel });
  const readings = after.readings(gauge.places, gauge.readingSd);
  const edges = edgesOf(readings);
  let [reached, notTooDeep, ligamentKept, asked] = [0, 0, 0, 1];
  const groups = groupsOf(edges, readings);
  const rows = groups.map((group): Row => {
    if (group.length === 0) return { action: 'ask', travel: undefined };
    const shops = Int32Array.from(group);
    const runAt = (at: number): OntoFloorChances =>
      after.chances(shops, { first: before, passes: passes - before, travel: at });
    const left = after.chances(shops);
    const own = solveTravel(task.travel, wanted, runAt);
    const run = runAt(own);
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
  const counts = groups.map((group) => group.length);
  return { passes, before, travel, rows: rising(rows, counts), edges, score: scoreOf(chances, wanted) };
}

/** Rows whose travel falls where the reading is deeper take their mean: few shops in a row made it so, and none would run it. */
function rising(rows: readonly Row[], counts: readonly number[]): Row[] {
  const pools: { ln: number; count: number; rows: number }[] = [];
  rows.forEach(({ travel }, i) => {
    if (travel === undefined) return;
    let pool = { ln: Math.log(travel), count: counts[i]!, rows: 1 };
    for (let last = pools.at(-1); last !== undefined && last.ln > pool.ln; last = pools.at(-1)) {
      pools.pop();
      const count = last.count + pool.count;
      pool = {
        ln: (last.ln * last.count + pool.ln * pool.count) / count,
        count,
        rows: last.rows + pool.rows,
      };
    }
    pools.push(pool);
  });
  const travels = pools.flatMap(({ ln, rows: own }) => Array<number>(own).fill(Math.exp(ln)));
  let at = -1;
  return rows.map((row) => {
    if (row.travel === undefined) return row;
    at += 1;
    return { ...row, travel: travels[at]! };
  });
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
    const { reached, notTooDeep } = countAt(travel);
    return reached > notTooDeep;
  });
  const thin = (travel: number): boolean => countAt(travel).ligamentKept < wanted.ligamentAssurance;
  return thin(even) ? Math.max(even, halved(range, thin)) : even;
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
function toldIn(way: Candidate, floor: FloorAfter, task: OntoFloorTask): Told {
  const { passes, before, travel } = way;
  const isGauged = way.rows.length > 0;
  const after = floor.cut(travel === undefined ? undefined : { first: 0, passes: before, travel });
  const counted = isGauged
    ? inRows(way, after, task, task.gauge!)
    : { chances: after.count(after.every), table: [], means: after.means() };
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
      before: bandOf(floor.means()),
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
  after: FloorAfter,
  { least, most }: Pick<OntoFloorTask, 'least' | 'most'>,
  gauge: Gauge,
): Counted {
  const readings = after.readings(gauge.places, gauge.readingSd);
  const means = after.means();
  let [reached, notTooDeep, ligamentKept] = [0, 0, 0];
  const told = merged([
    { action: 'ask', travel: undefined, from: 0, to: edges[0]! },
    ...rows.map((row, i) => ({ ...row, from: edges[i]!, to: edges[i + 1]! })),
    { action: 'ask', travel: undefined, from: edges.at(-1)!, to: undefined },
  ]);
  const table = told.map(({ action, travel, from, to }): RowOutcome => {
    const shops = after.every.filter((shop) => isIn(readings[shop]!, from, to));
    const cut = travel === undefined ? undefined : { first: before, passes: passes - before, travel };
    const got = after.count(shops, cut);
    const ends = after.means(shops, cut);
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
      inBand: from >= least && to !== undefined && to <= most,
      ...{ deepenTravel: undefined, travelFactor: undefined },
      expect: bandOf(shops.length === 0 ? Float64Array.of(from) : ends),
      tooShallow: 1 - got.reached,
      tooDeep: 1 - got.notTooDeep,
    };
  });
  const total = after.shops;
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

function isIn(reading: number, from: number, to: number | undefined): boolean {
  return (from === 0 || reading >= from) && (to === undefined || reading < to);
}

function median(values: Float64Array): number {
  return percentiles(values, [0.5])[0]!;
}

function bandOf(values: Float64Array): Percentiles {
  const [p05, p50, p95] = percentiles(values, [0.05, 0.5, 0.95]) as [number, number, number];
  return { p05, p50, p95 };
}
