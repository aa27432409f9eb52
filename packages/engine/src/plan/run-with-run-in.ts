import { cutter } from './pass-cut.ts';
import { readOneTrack } from './read-floor.ts';
import { rowOf } from './reading-table.ts';
import type { RowsRead, RunDemand, RunOutcomes, Setup } from './run-record.ts';
import { pathOf, SERIES, type ShopDraws } from './shop-draws.ts';
import { extremesAlong } from './track-extremes.ts';
import { courseWeight, RUN_IN_SHARE } from './way.ts';

/** Series of the passes of a plan with a run-in: the first stretch, the rest, and the first deepened. */
const RUN_IN_PASSES = [0, 1, 2] as const;

/** A run-in on the first stretch of the seam, the rest at what the table says, the first stretch deepened at the end. */
export function runWithRunIn(
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
