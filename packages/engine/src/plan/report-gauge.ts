import { normalProbability } from '../numeric/index.ts';
import type { DepthDemand } from './chance.ts';
import { depthDemand } from './demand.ts';
import { readingVariance } from './make-tables.ts';
import type { Percentiles, RowOutcome, StopOutcome, TryoutOutcome } from './outcome.ts';
import type { ReadingRow, ReadingTable } from './reading-table.ts';
import type { ReportInput } from './report-input.ts';
import { NOT_READ } from './run-plan.ts';
import { stationPlaces, stationVariance } from './seam-paths.ts';
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
    table: tableRows(feasible, input, course.tryoutTable!, [rows!.tryout], error, (energy) => ({
      travel: rig.unitTravel * Math.exp(-energy[0]!),
      deepenTravel: runIn ? rig.unitTravel * Math.exp(-energy[1]!) : undefined,
      travelFactor: undefined,
    })),
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
    const [low, high] = rig.energyRange;
    return [
      {
        afterLayer: layer,
        stations: stationPlaces(input.job.seam.length, way.stations),
        readingSd,
        table: tableRows(feasible, input, table, read, error, (energy) => ({
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

/** Chance that an extreme along the seam lies below a bound, for a floor of this mean depth that is known to an error. */
function below(bound: number, depth: number, extreme: Moments, error: number): number {
  if (extreme.count === 0) return normalProbability((bound - depth) / error);
  const spread = Math.hypot(error / depth, extreme.spread);
  return normalProbability((Math.log(bound / depth) - extreme.mean) / spread);
}

/** Shops in a row from which its own figures are told [-]; with fewer, they are taken with the rows beside it. */
const OWN_FROM = 40;

/**
 * Rows of a table as they leave. What is told of a row comes from the shops that read into it: few at the ends, so
 * a chance is read off the normal distribution of their ln depth rather than counted.
 */
function tableRows(
  feasible: Feasible,
  input: ReportInput,
  table: ReadingTable,
  read: readonly Int16Array[],
  error: number,
  travelOf: (logEnergy: readonly number[]) => Pick<RowOutcome, 'travel' | 'deepenTravel' | 'travelFactor'>,
): RowOutcome[] {
  const { outcomes } = feasible.solved;
  const demand = depthDemand(input.job, 0);
  const ofFloor = table !== feasible.solved.setup.course.tryoutTable;
  const shops = table.rows.map(() => ({ depth: new Moments(), low: new Moments(), high: new Moments() }));
  // How far the shallowest and the deepest place lie from the mean along the seam, in ln depth.
  const lowest = new Moments();
  const highest = new Moments();
  for (const list of read) {
    for (let shop = 0; shop < list.length; shop += 1) {
      const row = list[shop]!;
      if (row === NOT_READ || outcomes.notRun[shop] === 1) continue;
      const each = shops[row]!;
      each.depth.add(Math.log(outcomes.depth[shop]!));
      each.low.add(Math.log(Math.max(1e-6, outcomes.shallowest[shop]!)));
      each.high.add(Math.log(outcomes.deepest[shop]!));
      lowest.add(Math.log(Math.max(1e-6, outcomes.shallowest[shop]!) / outcomes.depth[shop]!));
      highest.add(Math.log(outcomes.deepest[shop]! / outcomes.depth[shop]!));
    }
  }
  const known = shops.map((_, row) => row).filter((row) => shops[row]!.depth.count >= OWN_FROM);
  const told = (row: ReadingRow, index: number, from: number, to: number | undefined): RowOutcome => {
    const near = known.reduce<number | undefined>(
      (best, each) => (best === undefined || Math.abs(each - index) < Math.abs(best - index) ? each : best),
      undefined,
    );
    const settled = near === undefined ? undefined : shops[near]!;
    const inBand = ofFloor && from > demand.least - WRITTEN && to !== undefined && to < demand.most + WRITTEN;
    const place = { from, to, action: row.action, inBand };
    if (row.action !== 'run' || settled === undefined) {
      // Nothing more is run on this track: the depth is the one that is there, as surely as it was read. Its chances are
      // those of the reading in the row that is the worst for them.
      const ask = row.action === 'ask';
      const edge = to ?? from + 2 * error;
      const lower = index === 0 ? Math.max(0, edge - 4 * error) : from;
      const middle = (lower + edge) / 2;
      const spread = Math.hypot(error, (edge - lower) / Math.sqrt(12));
      const stop = read.length > 1 || feasible.solved.setup.way.stops > 0;
      return {
        ...place,
        ...LEFT,
        expect: { p05: Math.max(0, middle - EDGE * spread), p50: middle, p95: middle + EDGE * spread },
        tooShallow:
          !stop && ask ? 1 : below(demand.least, ask ? middle : lower, lowest, ask ? spread : error),
        tooDeep:
          !stop && ask ? 0 : 1 - below(demand.most, ask ? middle : edge, highest, ask ? spread : error),
      };
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
    if (!ofFloor || to === undefined || row.action === 'ask') return [told(row, index, from, to)];
    const inside = [
      demand.least,
      ...(row.action === 'done' ? turnsOf(demand, { lowest, highest, error }) : []),
    ].map((edge) => Math.round(edge / EDGE_STEP) * EDGE_STEP);
    const edges = [from];
    for (const edge of inside)
      if (edge > edges.at(-1)! + EDGE_STEP / 2 && edge < to - EDGE_STEP / 2) edges.push(edge);
    return edges.map((edge, part) => told(row, index, edge, edges[part + 1] ?? to));
  });
}

/** Edges are written in steps of this much [m]. */
const EDGE_STEP = 0.1e-3;
/** Readings this many standard deviations off one of even chances are as good as sure [-]. */
const CLEAR = 1.5;

/** What is known of a floor that was read. */
interface FloorRead {
  /** Where the shallowest and the deepest place lie from the mean, in ln depth. */
  readonly lowest: Moments;
  readonly highest: Moments;
  /** Standard deviation of a reading about the mean [m]. */
  readonly error: number;
}

/**
 * Readings, rising, between which a floor left as it is most likely lies inside everywhere: those nearer to a limit so stand
 * in rows of their own, with their chances.
 */
function turnsOf({ least, most }: Pick<DepthDemand, 'least' | 'most'>, floor: FloorRead): number[] {
  const { lowest, highest, error } = floor;
  // Even chances of a place that is short, and of one too deep.
  const shallow = least / Math.exp(lowest.mean);
  const deep = most / Math.exp(highest.mean);
  const clearOf = (even: number, { spread }: Moments): number => CLEAR * Math.hypot(error, even * spread);
  const [from, to] = [shallow + clearOf(shallow, lowest), deep - clearOf(deep, highest)];
  return from < to ? [from, to] : [(shallow + deep) / 2];
}
