import { normalProbability } from '../../numeric/index.ts';
import type { DepthBand, SeamDepth, Stretch } from './judge-seam.ts';
import { lnOver, RISK_BORNE } from './judge-seam.ts';

/** What a wrong decision and a reading cost. */
export interface SeamStakes {
  /** Cost of cutting one metre again that was good: money per metre, or 1 to count metres of groove [money/m or -]. */
  readonly perMetre: number;
  /** Time for one reading [s]. */
  readonly readingTime: number;
  /** Money per second of the crew; left out where no rate is stated [money/s]. */
  readonly perSecond?: number;
}

/** A station that is worth measuring. */
export interface NextStation {
  /** Place along the seam [m]. */
  readonly at: number;
  /** Risk that it is expected to remove, in the unit of the stakes [money or m]. */
  readonly gain: number;
  /** The same per minute of measuring [money or m per min]. */
  readonly gainPerMinute: number;
}

/** What the risk along a seam is, and where a reading takes most of it away. */
export interface NextStations {
  /** Risk as it stands: expected loss of the better of accepting and rejecting, place by place [money or m]. */
  readonly risk: number;
  /** Stations in the order in which to measure; empty: enough is known. */
  readonly stations: readonly NextStation[];
}

/** Stations told at most, and places tried for each [-]. */
const STATIONS_MOST = 5;
const TRIED = 60;
/** Part of the risk of a whole seam decided by a coin below which a further reading is not worth while, where no rate is stated [-]. */
const ENOUGH = 2e-3;
/** A wrong acceptance costs so many times what a wrong rejection costs: what makes 95 % the turning point [-]. */
const ACCEPT_OVER_REJECT = (1 - RISK_BORNE) / RISK_BORNE;
/** Nodes and weights of the Gauss-Hermite rule for a standard normal (seven nodes). */
const NODES = [
  -3.750439717725742, -2.366759410734541, -1.154405394739968, 0, 1.154405394739968, 2.366759410734541,
  3.750439717725742,
];
const WEIGHTS = [
  5.482688559722179e-4, 3.075712396758651e-2, 0.2401231786050127, 0.4571428571428571, 0.2401231786050127,
  3.075712396758651e-2, 5.482688559722179e-4,
];

/** Expected loss of the better decision at one place, per metre. */
function decisionRisk(chanceInside: number, perMetre: number): number {
  return perMetre * Math.min(ACCEPT_OVER_REJECT * (1 - chanceInside), chanceInside);
}

/**
 * Where to measure next: the stations that take most risk away per minute, one after the other, until it is enough.
 *
 * Risk is the loss to be expected when each place is accepted or rejected by the better choice; a wrong acceptance
 * weighs 19 times a wrong rejection, so that the choice turns at a chance of conformity of 95 %.
 *
 * @param depth - the depth along the seam [record], from `fuseSeam`
 * @param band - depths that it must keep to [record], least below most
 * @param readingSd - standard deviation of one reading [m], > 0
 * @param stakes - what is at stake [record], all > 0
 * @returns the risk and the stations [record]
 * @source expected value of sample information: Raiffa and Schlaifer, Applied Statistical Decision Theory (1961) (memory)
 * @example
 * const posterior = fuseSeam({ common: 0.01, course: 0.01, range: 0.25 }, [], [0, 0.1, 0.2]);
 * nextStations({ median: [0.012, 0.012, 0.012], posterior }, { least: 0.01, most: 0.014 }, 0.0004, { perMetre: 1, readingTime: 30 }).stations // => []
 */
export function nextStations(
  depth: SeamDepth,
  band: DepthBand,
  readingSd: number,
  stakes: SeamStakes,
): NextStations {
  const { posterior, median } = depth;
  const n = posterior.at.length;
  const low = lnOver(band.least, median);
  const high = lnOver(band.most, median);
  const lengths = posterior.at.map((place, i) => {
    const before = posterior.at[i - 1] ?? place;
    const after = posterior.at[i + 1] ?? place;
    return (after - before) / 2;
  });
  const mean = Float64Array.from(posterior.mean);
  const variance = Float64Array.from(posterior.sd, (sd) => sd * sd);
  const inside = (i: number, centre: number, sd: number): number =>
    Math.max(0, normalProbability((high[i]! - centre) / sd) - normalProbability((low[i]! - centre) / sd));
  const riskOf = (centres: Float64Array, variances: Float64Array): number => {
    let sum = 0;
    for (let i = 0; i < n; i += 1)
      sum +=
        lengths[i]! *
        decisionRisk(inside(i, centres[i]!, Math.sqrt(Math.max(variances[i]!, 1e-18))), stakes.perMetre);
    return sum;
  };
  const whole = (posterior.at[n - 1] ?? 0) - (posterior.at[0] ?? 0);
  const cost = stakes.perSecond === undefined ? 0 : stakes.perSecond * stakes.readingTime;
  const least = Math.max(cost, ENOUGH * whole * stakes.perMetre);
  const first = riskOf(mean, variance);
  const stations: NextStation[] = [];
  const columns: Float64Array[] = [];
  const tried = Array.from({ length: Math.min(TRIED, n) }, (_, k) =>
    Math.round((k * (n - 1)) / Math.max(1, Math.min(TRIED, n) - 1)),
  );
  const known = new Map<number, Float64Array>();
  let risk = first;
  while (stations.length < STATIONS_MOST && risk > least) {
    let best: { index: number; gain: number; column: Float64Array; total: number } | undefined;
    for (const index of tried) {
      const whole0 = known.get(index) ?? posterior.covarianceWith(index);
      known.set(index, whole0);
      // what earlier proposed readings have taken away already
      const column = Float64Array.from(whole0);
      for (const each of columns) {
        const share = each[index]!;
        for (let i = 0; i < n; i += 1) column[i]! -= each[i]! * share;
      }
      const noise = readingSd / (median[index]! * Math.exp(mean[index]!));
      const total = column[index]! + noise * noise;
      if (!(total > 0)) continue;
      const after = variance.map((value, i) => value - column[i]! ** 2 / total);
      let expected = 0;
      for (let k = 0; k < NODES.length; k += 1) {
        const shift = NODES[k]! / Math.sqrt(total);
        expected +=
          WEIGHTS[k]! *
          riskOf(
            mean.map((value, i) => value + column[i]! * shift),
            after,
          );
      }
      const gain = risk - expected;
      if (best === undefined || gain > best.gain) best = { index, gain, column, total };
    }
    if (best === undefined || best.gain <= least) break;
    const { index, gain, column, total } = best;
    stations.push({ at: posterior.at[index]!, gain, gainPerMinute: gain / (stakes.readingTime / 60) });
    const root = Math.sqrt(total);
    columns.push(column.map((value) => value / root));
    for (let i = 0; i < n; i += 1) variance[i]! -= column[i]! ** 2 / total;
    risk -= gain;
  }
  return { risk: first, stations };
}

/**
 * Puts first where a fault that one place tells of begins and ends: half way over what nobody has seen, on each side of it.
 *
 * What a reading there is worth is the good groove that is not cut again for want of it, half of what was not seen.
 *
 * @param next - what else is worth measuring [record], from `nextStations`
 * @param faults - stretches whose ends nobody has seen [list], from `spotFaults`
 * @param stakes - what is at stake [record], all > 0
 * @returns the same with the stations at those ends before the others [record]
 * @source bisection; the loss as in `nextStations`
 * @example
 * const fault = { from: 0.4, to: 0.6, unseen: { before: 0.1, after: 0.1 } };
 * withFaultEnds({ risk: 0, stations: [] }, [fault], { perMetre: 1, readingTime: 30 }).stations // => [{"at":0.45,"gain":0.05,"gainPerMinute":0.1},{"at":0.55,"gain":0.05,"gainPerMinute":0.1}]
 */
export function withFaultEnds(
  next: NextStations,
  faults: readonly Pick<Stretch, 'from' | 'to' | 'unseen'>[],
  { perMetre, readingTime }: SeamStakes,
): NextStations {
  const ends = faults.flatMap(({ from, to, unseen }) =>
    [
      { at: from + unseen!.before / 2, length: unseen!.before },
      { at: to - unseen!.after / 2, length: unseen!.after },
    ].map(({ at, length }): NextStation => {
      const gain = (perMetre * length) / 2;
      return { at, gain, gainPerMinute: (gain * 60) / readingTime };
    }),
  );
  return { ...next, stations: [...ends, ...next.stations].slice(0, STATIONS_MOST) };
}
