import { drawShops, type PlanOutcome, pathOf, planningBelief, stationVariance } from '../plan/index.ts';
import { beliefOfElectrode, depthRegressors, type RemovalBelief } from '../removal/index.ts';

/** A reading of the trial or the run-in, as far as the row that was taken of its table tells it. */
export interface ReadBefore {
  /** The reading was this [m] at least. */
  readonly from: number;
  /** And below this [m]. */
  readonly to: number;
}

/** Shops in which this run may have been made; lists of one value per shop. */
export interface RunShops {
  readonly count: number;
  /** ln of depth over diameter at ln specific energy 0, and what it rises by per unit of it [-]. */
  readonly level: Float64Array;
  readonly slope: Float64Array;
  /** Standard deviation of one pass, and of the process along the seam, in ln depth [-]. */
  readonly passSd: Float64Array;
  readonly seamSd: Float64Array;
  /** Depth factor of passes after the first in a track [-]. */
  readonly laterFactor: Float64Array;
  /** Standard normal draws of a series. */
  readonly normals: (series: number) => Float64Array;
  /** Which of so many courses along the seam each shop meets in a series. */
  readonly courseOf: (series: number, shop: number, courses: number) => number;
}

/** Shops drawn for each that is kept, where a reading says which may be this one [-]. */
const DRAWN_PER_KEPT = 12;
/** Series of draws that belong to a reading of the trial. */
const TRIAL = { pass: 900, seam: 901, gauge: 902 } as const;

/**
 * Draws the shops in which a run may have been made. Where a trial or run-in was read before, those are kept that would
 * have read as it did.
 *
 * @param plan - the plan that was run [record], from `planJob`
 * @param belief - what is known of removal [record], as the plan was made with
 * @param pushAngle - push angle [rad]
 * @param read - what was read of the trial [record], or undefined
 * @param count - how many shops [-], at least 1
 * @param seed - the seed [-], a whole number from 0 to 2^30
 * @returns the shops [record]
 * @source derived: draws from the belief, rejected where the reading would have been another
 * @example
 * shopsOfRun(demoAnswer.basis.plan, publishedBelief(metalOf('carbon_steel'), 'flat'), 0.785, undefined, 3, 1).level.length // => 3
 */
export function shopsOfRun(
  plan: PlanOutcome,
  belief: RemovalBelief,
  pushAngle: number,
  read: ReadBefore | undefined,
  count: number,
  seed: number,
): RunShops {
  const known = planningBelief(beliefOfElectrode(belief, plan.electrode));
  const { tryout } = plan;
  const isRead = read !== undefined && tryout !== undefined;
  const draws = drawShops(known, isRead ? count * DRAWN_PER_KEPT : count, seed);
  const angle = (pushAngle - Math.PI / 4) / (Math.PI / 12);
  const all = Array.from({ length: draws.count }, (_, shop) => shop);
  let own = all;
  if (isRead) {
    const { diameter } = plan.electrode;
    const { current, travel, length, stations, readingSd } = tryout;
    const voltage = plan.passes[0]?.voltage ?? 1;
    const energy = depthRegressors(
      { diameter, current, voltage, travel, pushAngle },
      known.meltingEnergy,
    )[1]!;
    const along = Math.sqrt(stationVariance(length, stations.length, known.seamRange));
    const [pass, seam, gauge] = [TRIAL.pass, TRIAL.seam, TRIAL.gauge].map(draws.normals) as Float64Array[];
    const sd = readingSd / Math.sqrt(stations.length);
    const middle = (read.from + read.to) / 2;
    const readings = all.map((shop) => {
      const ln =
        draws.level[shop]! +
        draws.slope[shop]! * energy +
        draws.angle[shop]! * angle +
        draws.passSd[shop]! * pass![shop]! +
        draws.seamSd[shop]! * along * seam![shop]!;
      return diameter * Math.exp(ln) + sd * gauge![shop]!;
    });
    // nearest first, so that there are always enough; those inside the row come in the order drawn
    const off = (shop: number): number =>
      Math.max(0, Math.abs(readings[shop]! - middle) - (read.to - read.from) / 2);
    own = all.sort((a, b) => off(a) - off(b) || a - b).slice(0, count);
  }
  const picked = (values: Float64Array): Float64Array => Float64Array.from(own, (shop) => values[shop]!);
  return {
    count,
    level: Float64Array.from(own, (shop) => draws.level[shop]! + draws.angle[shop]! * angle),
    slope: picked(draws.slope),
    passSd: picked(draws.passSd),
    seamSd: picked(draws.seamSd),
    laterFactor: picked(draws.laterFactor),
    normals: (series) => picked(draws.normals(series)),
    courseOf: (series, shop, courses) => pathOf(series, own[shop]!, courses),
  };
}
