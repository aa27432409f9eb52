import { normalProbability } from '../numeric/index.ts';
import { depthDemand } from './demand.ts';
import type { Percentiles, RowOutcome, StopOutcome, TryoutOutcome } from './outcome.ts';
import { EDGE_STEP, type ReadingRow, type ReadingTable } from './reading-table.ts';
import type { ReportInput } from './report-input.ts';
import { NOT_READ } from './run-plan.ts';
import { stationPlaces, stationVariance } from './seam-paths.ts';
import { StopOdds } from './stop-table.ts';
import { readingVariance } from './table-task.ts';
import type { Feasible } from './weigh.ts';

/** Standard deviations from the median to the 5th and the 95th percentile of a normal distribution [-]. */
const EDGE = 1.6448536;

/** The trial or the run-in, with its table for the card. */
export function tryoutOutcome(feasible: Feasible, input: ReportInput): TryoutOutcome | undefined {
  const { setup, rows } = feasible.solved;
  const { tryout } = setup.way;
  if (tryout === undefined) return undefined;
  const { rig, course } = setup;
  const { law } = feasible.forecast;
  const [level, slope, angle] = law.mean;
  const middle = level + slope * course.tryoutEnergy + angle * rig.angleTerm;
  const variance = [1, course.tryoutEnergy, rig.angleTerm].reduce(
    (sum, x, r, all) => sum + x * all.reduce((row, y, c) => row + law.covariance[r]![c]! * y, 0),
    0,
  );
  const { job, pass, seam } = law.levels;
  const spread = Math.sqrt(variance + job ** 2 + pass ** 2 + seam ** 2);
  const depth = rig.electrode.diameter * Math.exp(middle);
  const error = depth * Math.sqrt(readingVariance(feasible.task.tables, tryout, depth));
  const runIn = tryout.kind === 'run_in';
  return {
    kind: tryout.kind,
    on: runIn ? 'seam' : input.job.kit.trial.on === 'run_on' ? 'run_on' : 'scrap',
    length: tryout.length,
    current: rig.current,
    travel: rig.unitTravel * Math.exp(-course.tryoutEnergy),
    depth: bandOf(Math.log(depth), spread),
    stations: stationPlaces(tryout.length, tryout.stations),
    readingSd: feasible.task.run.readingSd,
    table: tableRows(
      feasible,
      input,
      { table: course.tryoutTable!, read: [rows!.tryout], error },
      (energy) => ({
        travel: rig.unitTravel * Math.exp(-energy[0]!),
        deepenTravel: runIn ? rig.unitTravel * Math.exp(-energy[1]!) : undefined,
        travelFactor: undefined,
      }),
    ),
  };
}

/** The stops to gauge at, with the tables for the card. */
export function stopOutcomes(feasible: Feasible, input: ReportInput): StopOutcome[] {
  const { setup, rows } = feasible.solved;
  const { way, rig, course } = setup;
  const { tracks } = rig.pattern;
  const { passLength, readingSd } = feasible.task.run;
  const { law } = feasible.forecast;
  return course.stopTables.flatMap((table, layer): StopOutcome[] => {
    if (table === undefined) return [];
    const depth = course.targets[layer - 1]!;
    const along =
      law.levels.seam * depth * Math.sqrt(stationVariance(passLength, way.stations, law.seamRange));
    const error = Math.hypot(readingSd / Math.sqrt(way.stations), along);
    const read = Array.from({ length: tracks }, (_, track) => rows!.stops[layer * tracks + track]!);
    const before = course.middle[layer - 1]!;
    const odds = new StopOdds(feasible.task.tables, layer, course.targets, before);
    const [low, high] = rig.energyRange;
    return [
      {
        afterLayer: layer,
        stations: stationPlaces(input.job.seam.length, way.stations),
        readingSd,
        table: tableRows(feasible, input, { table, read, error, odds }, (energy) => ({
          travel: rig.unitTravel * Math.exp(-Math.min(high, Math.max(low, before + energy[0]!))),
          deepenTravel: undefined,
          travelFactor: Math.exp(-energy[0]!),
        })),
      },
    ];
  });
}

function bandOf(middle: number, spread: number): Percentiles {
  return {
    p05: Math.exp(middle - EDGE * spread),
    p50: Math.exp(middle),
    p95: Math.exp(middle + EDGE * spread),
  };
}

/** Mean and spread of a logarithm over the shops that read into one row. */
class Moments {
  count = 0;
  sum = 0;
  square = 0;

  add(value: number): void {
    this.count += 1;
    this.sum += value;
    this.square += value * value;
  }

  get mean(): number {
    return this.sum / this.count;
  }

  get spread(): number {
    return Math.sqrt(Math.max(1e-12, this.square / this.count - this.mean ** 2));
  }
}

/** What a row in which nothing more is run sets. */
const LEFT = { travel: undefined, deepenTravel: undefined, travelFactor: undefined } as const;

/** Readings are written in tenths of a millimetre, limits of a drawing need not be [m]. */
const WRITTEN = 0.05e-3;

/** Shops in a row from which its own figures are told [-]; with fewer, they are taken with the rows beside it. */
const OWN_FROM = 40;

/** Shops from which a chance is counted [-]. */
const COUNTED_FROM = 250;

/** What shops that read into one row came to. */
interface RowShops {
  readonly depth: Moments;
  readonly shallow: number;
  readonly deep: number;
}

/** Depth and chances counted over a row and as many beside it as it takes. */
function countedNear(
  shops: readonly RowShops[],
  index: number,
): Pick<RowOutcome, 'expect' | 'tooShallow' | 'tooDeep'> {
  const sum = (of: (row: RowShops) => number, rows: readonly RowShops[]): number =>
    rows.reduce((total, row) => total + of(row), 0);
  for (let wide = 0; ; wide += 1) {
    const near = shops.slice(Math.max(0, index - wide), index + wide + 1);
    const count = sum(({ depth }) => depth.count, near);
    if (count < COUNTED_FROM && wide < shops.length) continue;
    const mean = sum(({ depth }) => depth.sum, near) / count;
    const square = sum(({ depth }) => depth.square, near) / count;
    return {
      expect: bandOf(mean, Math.sqrt(Math.max(1e-12, square - mean ** 2))),
      tooShallow: sum(({ shallow }) => shallow, near) / count,
      tooDeep: sum(({ deep }) => deep, near) / count,
    };
  }
}

/** A table, and what its rows are told from. */
interface ToldTable {
  readonly table: ReadingTable;
  /** Rows that the shops read into, track by track. */
  readonly read: readonly Int16Array[];
  /** Standard deviation of a reading about the depth that is there [m]. */
  readonly error: number;
  /** What a reading says of the floor that is there; undefined after a trial or a run-in. */
  readonly odds?: StopOdds;
}

/**
 * Rows of a table as they leave. What is told of a row in which a pass is run comes from the shops that read into it: few at
 * the ends, so a chance is read off the normal distribution of their ln depth rather than counted.
 */
function tableRows(
  feasible: Feasible,
  input: ReportInput,
  { table, read, error, odds }: ToldTable,
  travelOf: (logEnergy: readonly number[]) => Pick<RowOutcome, 'travel' | 'deepenTravel' | 'travelFactor'>,
): RowOutcome[] {
  const { outcomes } = feasible.solved;
  const demand = depthDemand(input.job, 0);
  const shops = table.rows.map(() => ({
    ...{ depth: new Moments(), low: new Moments(), high: new Moments() },
    ...{ shallow: 0, deep: 0 },
  }));
  for (const list of read) {
    for (let shop = 0; shop < list.length; shop += 1) {
      const row = list[shop]!;
      if (row === NOT_READ || outcomes.notRun[shop] === 1) continue;
      const each = shops[row]!;
      each.depth.add(Math.log(outcomes.depth[shop]!));
      each.low.add(Math.log(Math.max(1e-6, outcomes.shallowest[shop]!)));
      each.high.add(Math.log(outcomes.deepest[shop]!));
      if (outcomes.shallowest[shop]! < demand.least) each.shallow += 1;
      if (outcomes.deepest[shop]! > demand.most) each.deep += 1;
    }
  }
  const known = shops.map((_, row) => row).filter((row) => shops[row]!.depth.count >= OWN_FROM);
  const told = (row: ReadingRow, index: number, from: number, to: number | undefined): RowOutcome => {
    const near = known.reduce<number | undefined>(
      (best, each) => (best === undefined || Math.abs(each - index) < Math.abs(best - index) ? each : best),
      undefined,
    );
    const settled = near === undefined ? undefined : shops[near]!;
    const inBand =
      odds !== undefined && from > demand.least - WRITTEN && to !== undefined && to < demand.most + WRITTEN;
    const place = { from, to, action: row.action, inBand, reason: row.reason };
    if (row.action !== 'run' || settled === undefined) {
      // Nothing more is run on this track: the depth is the one that is there, as surely as it was read. Its chances are
      // those of the reading in the row that is the worst for them.
      const edge = to ?? from + 2 * error;
      const lower = index === 0 ? Math.max(EDGE_STEP, edge - 4 * error) : from;
      const middle = (lower + edge) / 2;
      const spread = Math.hypot(error, (edge - lower) / Math.sqrt(12));
      return {
        ...place,
        ...LEFT,
        expect: { p05: Math.max(0, middle - EDGE * spread), p50: middle, p95: middle + EDGE * spread },
        // After a trial nothing is cut on the seam.
        tooShallow: odds === undefined ? 1 : 1 - odds.left(lower).reached,
        tooDeep: odds === undefined ? 0 : 1 - odds.left(edge).room,
      };
    }
    if (odds === undefined) {
      // What the energy balance holds back, and what a later stop mends or leaves, is not normal: it is counted, with the rows
      // beside this one where shops are few.
      const counted = countedNear(shops, index);
      return { ...place, ...travelOf(row.logEnergy), ...counted };
    }
    const own = shops[index]!.depth.count >= OWN_FROM;
    // A row that few shops read into borrows the spread of the nearest one; its own middle is kept where there is any.
    const depth = shops[index]!.depth.count > 3 ? shops[index]!.depth.mean : settled.depth.mean;
    const shift = own ? 0 : depth - settled.depth.mean;
    return {
      ...place,
      ...travelOf(row.logEnergy),
      expect: bandOf(depth, settled.depth.spread),
      tooShallow: normalProbability((Math.log(demand.least) - settled.low.mean - shift) / settled.low.spread),
      tooDeep:
        1 - normalProbability((Math.log(demand.most) - settled.high.mean - shift) / settled.high.spread),
    };
  };
  return table.rows.flatMap((row, index): RowOutcome[] => {
    const from = index === 0 ? 0 : table.edges[index - 1]!;
    const to = table.edges[index];
    // A row that reaches over the least depth is told in two: inside the drawing, and short of it.
    const least = Math.round(demand.least / EDGE_STEP) * EDGE_STEP;
    const isSplit =
      odds !== undefined &&
      row.action !== 'ask' &&
      to !== undefined &&
      least > from + EDGE_STEP / 2 &&
      least < to - EDGE_STEP / 2;
    return isSplit
      ? [told(row, index, from, least), told(row, index, least, to)]
      : [told(row, index, from, to)];
  });
}
