import type { Job } from '../job/index.ts';
import { percentiles } from '../numeric/index.ts';
import {
  type OntoFloorPlan,
  type OntoFloorTask,
  type PlanOutcome,
  planOntoFloor,
  type RowOutcome,
  takes,
} from '../plan/index.ts';
import {
  beliefOfElectrode,
  depthCeiling,
  PASS_DEPTH_MOST,
  predictWear,
  predictWidth,
  type RemovalBelief,
} from '../removal/index.ts';
import type { DepthAlong } from './depth-along.ts';
import { cellsToLookAt, floorOfRun } from './floor-of-run.ts';
import type { RunOutcome } from './outcome.ts';
import { settingOf, travelForDepth } from './plan-setting.ts';
import type { WayBins } from './seam-course.ts';
import type { ReadBefore } from './shops-of-run.ts';

/** Shops in which settings are solved, and those in which they are counted [-]: of the rest of a job, and of a recut. */
const SHOPS = { rest: { solve: 1024, fair: 2048 }, recut: { solve: 256, fair: 768 } } as const;
/** Distance between the seeds of the two, so that they share no draw [-]. */
const FAIR_SEED = 104_729;
/** Windows per range of the process along the seam, and their greatest number [-]. */
const WINDOWS_PER_RANGE = 6;
const WINDOWS_MOST = 240;
/** Passes beyond those planned that may be tried [-]. */
const EXTRA = 1;

/** A job of which a part is run. */
export interface RunSoFar {
  readonly job: Job;
  readonly plan: PlanOutcome;
  /** What is known of removal, as the plan was made with. */
  readonly belief: RemovalBelief;
  readonly along: DepthAlong;
  /** What the trial or run-in read, where the travel that was run tells it. */
  readonly read?: ReadBefore | undefined;
}

/** A stretch of the seam. */
export interface Range {
  /** Where it begins [m]. */
  readonly from: number;
  /** Where it ends [m]. */
  readonly to: number;
}

/** The rest of a job, with the stations of its gauge stop; SI. */
export interface RestPlan extends OntoFloorPlan {
  /** Where they lie, from the start of the seam [m]. */
  readonly stations: readonly number[];
  /** Stretches into which much more was put than into the rest: they have no part in the plan. */
  readonly apart: readonly Range[];
}

/** Part of the usual energy above which a place has no part in the plan of the rest [-], and the part of the seam that may be such [-] (judgement). */
const APART = 1.25;
const APART_MOST = 0.2;

/** Stretches into which much more was put than into the middle of the seam, such as where the carriage stood. */
function stretchesApart({ cell, cells, layers }: DepthAlong): Range[] {
  const energies = Float64Array.from({ length: cells }, (_, at) =>
    layers.reduce((sum, tracks) => sum + tracks.reduce((own, track) => own + track[at]!, 0), 0),
  );
  const [usual] = percentiles(energies, [0.5]) as [number];
  const found: { from: number; to: number }[] = [];
  energies.forEach((energy, at) => {
    if (energy <= APART * usual) return;
    const last = found.at(-1);
    if (last !== undefined && last.to >= at * cell - cell / 2) last.to = (at + 1) * cell;
    else found.push({ from: at * cell, to: (at + 1) * cell });
  });
  const length = found.reduce((sum, { from, to }) => sum + to - from, 0);
  return length > APART_MOST * cells * cell ? [] : found;
}

/**
 * Plans the layers that remain from the depth now expected along the seam: how many passes, at which travel, with or
 * without a gauge stop before the last.
 *
 * @param run - job, plan, belief and the depth so far [record], of one job
 * @param layers - layers of the plan that remain [-], at least 1
 * @param bare - stretches that are cut again beforehand [list], any: they do not count
 * @returns passes with their chances [record]
 * @source as planOntoFloor
 * @example
 * const { plan } = demoAnswer.basis;
 * const along = { cell: 0.01, cells: 100, layers: [[new Float64Array(100).fill(5e5)]] };
 * const belief = publishedBelief(metalOf('carbon_steel'), 'flat');
 * planRest({ job: demoJob.job, plan, belief, along }, 1, []).passes // => 2
 */
export function planRest(run: RunSoFar, layers: number, bare: readonly Range[]): RestPlan {
  const { job, plan, belief, along } = run;
  const length = along.cell * along.cells;
  const window = Math.max(length / WINDOWS_MOST, belief.seamRange / WINDOWS_PER_RANGE, along.cell);
  const apart = stretchesApart(along);
  const out = [...bare, ...apart];
  const isOut = (cell: number): boolean => {
    const place = (cell + 0.5) * along.cell;
    // beside it the foot of the arc reached only in part
    return out.some(
      ({ from, to }) => place > from - plan.electrode.diameter && place < to + plan.electrode.diameter,
    );
  };
  const looked = cellsToLookAt(along, 0, length, window).filter((cell) => !isOut(cell));
  const cells = looked.length > 0 ? looked : [Math.floor(along.cells / 2)];
  const stop = plan.stops.at(-1);
  const stations = stop?.stations.length ?? Math.min(job.kit.gauge.stations_most, 5);
  const cellPlaces = cells.map((cell) => (cell + 0.5) * along.cell);
  const places = Array.from({ length: stations }, (_, i) =>
    nearestOf(cellPlaces, (length * (i + 0.5)) / stations),
  );
  const once = takes(
    job,
    { ...settingOf(job, plan), electrode: plan.electrode, pattern: plan.pattern },
    { tryout: undefined, stations },
    plan.passLength,
  );
  const { tracks } = plan.pattern;
  const wear =
    (predictWear(belief, plan.electrode.diameter, 1).p50 * Math.PI * plan.electrode.diameter ** 2) / 4;
  const effort: OntoFloorTask['effort'] = (passes, travel, gauged) => {
    const taken = once({
      travelTime: (passes * tracks * plan.passLength) / travel,
      trialTravelTime: 0,
      passes: passes * tracks,
      gauged: gauged ? 1 : 0,
      wear,
    });
    const { objective } = job.plan;
    return objective === 'time'
      ? taken.jobTime
      : objective === 'cost'
        ? taken.cost + 1e-7 * taken.jobTime
        : taken.energy;
  };
  const found = planOntoFloor({
    ...taskOf(run, cells, SHOPS.rest),
    share: cells.map(() => 1),
    must: cells.map(() => true),
    passesMost: layers + EXTRA,
    gauge: { places, readingSd: job.kit.gauge.reading_sd },
    effort,
  });
  return { ...found, stations: places.map((index) => (cells[index]! + 0.5) * along.cell), apart };
}

/** A stretch's own plan, with the stations of its gauge stop; SI. */
export interface StretchPlan extends OntoFloorPlan {
  /** Where they lie, from the start of the seam [m]. */
  readonly stations: readonly number[];
}

/** Places of a stretch that are gauged at most, and how far apart they lie at least [-], [m] (judgement). */
const STRETCH_STATIONS = 3;
const STATIONS_APART = 0.02;
/** What a gauge stop in a stretch takes, in passes over it [-] (judgement). */
const STOP_EFFORT = 0.5;

/**
 * Plans the passes that bring a stretch to depth from the floor now expected, run-in and run-out included: with a gauge stop
 * where one makes them surer.
 *
 * @param run - job, plan, belief and the depth so far [record], of one job
 * @param stretch - where the depth must be reached [record], inside the seam
 * @param ramp - length of run-in and of run-out [m], > 0
 * @returns passes or none, with their chances [record]
 * @source as planOntoFloor
 * @example
 * const along = { cell: 0.01, cells: 100, layers: [[new Float64Array(100).fill(5e5)]] };
 * const belief = publishedBelief(metalOf('carbon_steel'), 'flat');
 * planStretch({ job: demoJob.job, plan: demoAnswer.basis.plan, belief, along }, { from: 0.2, to: 0.3 }, 0.01).passes // => 2
 */
export function planStretch(run: RunSoFar, { from, to }: Range, ramp: number): StretchPlan {
  const { along, job, plan } = run;
  const length = along.cell * along.cells;
  const [start, end] = [Math.max(0, from - ramp), Math.min(length, to + ramp)];
  const window = Math.max(along.cell, Math.min(ramp / 2, (end - start) / 8));
  const cells = cellsToLookAt(along, start, end, Math.max(window, (end - start) / WINDOWS_MOST));
  const place = (cell: number): number => (cell + 0.5) * along.cell;
  const inside = (cell: number): boolean => place(cell) >= from && place(cell) <= to;
  const share = cells.map((cell) =>
    Math.max(0, Math.min(1, (place(cell) - from) / ramp + 1, (to - place(cell)) / ramp + 1)),
  );
  const within = cells.map(inside);
  const must = within.includes(true) ? within : cells.map(() => true);
  const stations = Math.max(
    1,
    Math.min(STRETCH_STATIONS, job.kit.gauge.stations_most, Math.floor((to - from) / STATIONS_APART)),
  );
  const places = Array.from({ length: stations }, (_, i) =>
    nearestOf(
      cells.map((cell, index) => (must[index] ? place(cell) : Number.POSITIVE_INFINITY)),
      from + ((to - from) * (i + 0.5)) / stations,
    ),
  );
  const found = planOntoFloor({
    ...taskOf(run, cells, SHOPS.recut),
    share,
    must,
    passesMost: new Set(plan.passes.map(({ layer }) => layer)).size + EXTRA,
    gauge: { places, readingSd: job.kit.gauge.reading_sd },
    effort: (passes, _, gauged) => passes + (gauged ? STOP_EFFORT : 0),
  });
  return { ...found, stations: places.map((index) => place(cells[index]!)) };
}

/** Index of the value that is nearest. */
function nearestOf(values: readonly number[], to: number): number {
  return values.reduce(
    (best, value, index) => (Math.abs(value - to) < Math.abs(values[best]! - to) ? index : best),
    0,
  );
}

/** What both have in common: the floor in shops, the groove's demands, what carriage and process allow. */
function taskOf(
  { job, plan, belief, along, read }: RunSoFar,
  cells: readonly number[],
  shops: { readonly solve: number; readonly fair: number },
): Omit<OntoFloorTask, 'share' | 'must' | 'passesMost' | 'effort'> {
  const { groove, plate, kit } = job;
  const source = { along, plan, belief, pushAngle: kit.push_angle, read };
  const { seed } = job.plan;
  const known = beliefOfElectrode(belief, plan.electrode);
  const { diameter } = plan.electrode;
  const { current, voltage, pushAngle } = settingOf(job, plan);
  const width = predictWidth(known, diameter).p50;
  const slowest = travelForDepth(job, plan, belief, PASS_DEPTH_MOST * diameter);
  return {
    shops: floorOfRun(source, cells, shops.solve, seed),
    fair: floorOfRun(source, cells, shops.fair, (seed + FAIR_SEED) % 2 ** 30),
    least: groove.depth.wanted - groove.depth.minus,
    most: groove.depth.wanted + groove.depth.plus,
    mostForLigament: plate.thickness - groove.ligament_least,
    assurance: groove.assurance,
    ligamentAssurance: groove.ligament_assurance,
    travel: { least: Math.min(kit.travel.most, Math.max(kit.travel.least, slowest)), most: kit.travel.most },
    ceiling: (travel) =>
      depthCeiling({ diameter, current, voltage, travel, pushAngle }, width, known.meltingEnergy),
  };
}

/** Part of a travel by which what was run may differ from a row's and still be that row's [-]. */
const SAME_TRAVEL = 0.05;

/**
 * A run of a job so far, as far as its log tells: where a trial or run-in came first, what it must have read follows from
 * the row of its table whose travel was run.
 *
 * @param outcome - what the log tells [record], from `reviewRun`
 * @param along - depth along the seam [record], from `depthAlong`
 * @param of - job, plan and belief [record], of one job
 * @returns the run so far [record]
 * @source definition
 * @example
 * runSoFar({ passes: [] }, undefined, { plan: {} }).read // => undefined
 */
export function runSoFar(
  { passes }: Pick<RunOutcome, 'passes'>,
  along: DepthAlong,
  { job, plan, belief }: Omit<RunSoFar, 'along' | 'read'>,
): RunSoFar {
  const first = passes.find(({ complete, planned }) => complete && planned !== undefined);
  return { job, plan, belief, along, read: readBefore(plan, first?.course && usualTravel(first.course)) };
}

/** Travel in the middle of a pass: a carriage that stood for a while counts little. */
function usualTravel({ width, time }: WayBins): number | undefined {
  const under = time.filter((each) => each > 0);
  return under.length === 0 ? undefined : width / percentiles(under, [0.5])[0]!;
}

function readBefore({ tryout }: PlanOutcome, travel: number | undefined): ReadBefore | undefined {
  if (tryout === undefined || travel === undefined) return undefined;
  const off = (row: RowOutcome): number => Math.abs(Math.log(travel / row.travel!));
  const rows = tryout.table.filter(({ action }) => action === 'run');
  // between two rows either may have been read; rows at the ends of what the carriage keeps have one travel
  const same = rows.filter((row) => off(row) < SAME_TRAVEL);
  if (same.length === 0) return undefined;
  const [last] = same.slice(-1);
  return { from: same[0]!.from, to: last!.to ?? 2 * last!.from };
}
