import type { Job } from '../job/index.ts';
import { fromUnit } from '../quantity/index.ts';
import { startDwell } from '../removal/index.ts';
import type { RunDemand, RunOutcomes, Setup } from './run-plan.ts';
import type { ShopDraws } from './shop-draws.ts';
import type { Rig, Way } from './way.ts';

/** What a plan takes in every shop, one value per shop. */
export interface Effort {
  /** Time with the arc burning, a trial and all dwells included [s]. */
  readonly arcTime: Float64Array;
  /** Arc time with starts, returns, electrode changes, a trial and gauge stops [s]. */
  readonly jobTime: Float64Array;
  /** Electrodes begun [-]. */
  readonly electrodes: Float64Array;
  /** Electrodes, labour over the job time, and power, in the job's currency [-]. */
  readonly cost: Float64Array;
  /** Arc energy into the work, without a trial beside it [J]. */
  readonly energy: Float64Array;
}

/**
 * Length of one electrode that can be burnt: a jointed one feeds without a stub.
 *
 * @param electrode - the electrode [record], from a job
 * @returns length [m]
 * @source common practice, no source
 * @example
 * usableLength({ kind: 'plain', diameter: 0.01, length: 0.43, stub: 0.075 }) // => 0.355
 */
export function usableLength(electrode: Rig['electrode']): number {
  return electrode.kind === 'plain' ? electrode.length - electrode.stub : electrode.length;
}

/**
 * Time to clean a groove before the next pass.
 *
 * @param rates - rates of a job [record], from `readJob`
 * @param length - length of groove [m], >= 0
 * @returns time [s]
 * @source common practice, no source
 * @example
 * cleaningTime({ layer_cleaning_min_per_m: 2 }, 1.5) // => 180
 */
export function cleaningTime(
  { layer_cleaning_min_per_m }: Pick<Job['rates'], 'layer_cleaning_min_per_m'>,
  length: number,
): number {
  return fromUnit(layer_cleaning_min_per_m, 'min') * length;
}

/** Time between two layers: to clean the one, and to set the torch for the next [s]. */
export function betweenLayers({ rates, seam }: Job): number {
  return rates.layer_time + cleaningTime(rates, seam.length);
}

/** Labour and overhead of the crew, per hour in the job's currency [1/h]. */
function crewRate({ rates, after }: Job): number {
  return rates.labour_per_hour + after.overhead_per_hour;
}

/** What one run of a job takes, before it is spread over shops. */
export interface RunOnce {
  /** Time under way on the seam, and on a trial beside it [s]. */
  readonly travelTime: number;
  readonly trialTravelTime: number;
  /** Passes on the seam [-]. */
  readonly passes: number;
  /** Stops at which every track is gauged [-]. */
  readonly gauged: number;
  /** Electrode volume burnt per ampere-second [m3/(A s)]. */
  readonly wear: number;
}

/** What a run takes: the one place where times and prices are added up. */
export interface OnceTaken {
  readonly arcTime: number;
  readonly jobTime: number;
  readonly electrodes: number;
  readonly cost: number;
  readonly energy: number;
}

/**
 * Adds up what a run takes; whole electrodes, or as many as are burnt on the mean.
 *
 * @param job - the job [record], from `readJob`
 * @param rig - electrode, current, voltage and tracks [record], all values > 0
 * @param way - trial or run-in, and stations of a stop [record], of the plan
 * @param passLength - length of a pass, run-outs included [m], > 0
 * @returns what adds one run up [function], from its times and passes
 * @source derived: sum of times and prices
 * @example
 * const { job } = demoJob;
 * const rig = { electrode: job.kit.electrodes[0], current: 400, voltage: 40, pattern: { tracks: 1, spacing: 0 } };
 * takes(job, rig, { tryout: undefined, stations: 1 }, 1)({ travelTime: 60, trialTravelTime: 0, passes: 1, gauged: 0, wear: 1e-10 }).energy > 960000 // => true
 */
export function takes(
  job: Job,
  rig: Pick<Rig, 'electrode' | 'current' | 'voltage' | 'pattern'>,
  way: Pick<Way, 'tryout' | 'stations'>,
  passLength: number,
): (run: RunOnce, electrodesOf?: (burnt: number) => number) => OnceTaken {
  const { rates, kit } = job;
  const { electrode, current, voltage, pattern } = rig;
  const crewPerHour = crewRate(job);
  const power = voltage * current;
  // The dwell is a length over the travel, so all dwells together scale with the time under way.
  const dwellLength = startDwell(electrode.diameter, kit.push_angle, 1);
  const { tryout } = way;
  const trial = tryout?.kind === 'trial';
  // A carriage that goes round a girth, or on from a run-in, is where the next pass begins.
  const returnTime = job.seam.path === 'girth' ? 0 : passLength / rates.return_travel;
  const bar = (Math.PI * electrode.diameter ** 2) / 4;
  const usable = usableLength(electrode);
  // A run-in is deepened over a short stretch only.
  const layerTime = tryout?.kind === 'run_in' ? 0 : betweenLayers(job);
  const gaugeTime = rates.gauge_time * pattern.tracks * way.stations;
  const before =
    tryout === undefined
      ? 0
      : tryout.stations * rates.gauge_time + (trial ? rates.start_time + rates.trial_time : 0);
  const dwelt = 1 + dwellLength / passLength;
  const trialDwelt = trial ? 1 + dwellLength / tryout.length : 1;
  return ({ travelTime, trialTravelTime, passes, gauged, wear }, electrodesOf = Math.ceil) => {
    const seamTime = travelTime * dwelt;
    const arcTime = seamTime + trialTravelTime * trialDwelt;
    const electrodes = Math.max(1, electrodesOf((wear * current * arcTime) / bar / usable));
    const returns = tryout?.kind === 'run_in' ? Math.min(1, passes - 1) : Math.max(0, passes - 1);
    const jobTime =
      arcTime +
      passes * rates.start_time +
      returns * returnTime +
      (electrodes - 1) * rates.electrode_change_time +
      gauged * gaugeTime +
      Math.max(0, passes / pattern.tracks - 1) * layerTime +
      before;
    return {
      arcTime,
      jobTime,
      electrodes,
      energy: power * seamTime,
      cost:
        electrodes * electrode.price_each +
        (jobTime / 3600) * crewPerHour +
        ((power * arcTime) / 3.6e6 / rates.source_efficiency) * rates.power_per_kWh,
    };
  };
}

/** Works out time, electrodes, cost and energy in every shop. */
export function effortOf(
  setup: Setup,
  outcomes: RunOutcomes,
  draws: ShopDraws,
  job: Job,
  demand: RunDemand,
): Effort {
  const { rig, way, course } = setup;
  const { count } = draws;
  const once = takes(job, rig, way, demand.passLength);
  const trial = way.tryout?.kind === 'trial' ? way.tryout : undefined;
  const trialTravelTime =
    trial === undefined ? 0 : (trial.length * Math.exp(course.tryoutEnergy)) / rig.unitTravel;
  const effort: Effort = {
    arcTime: new Float64Array(count),
    jobTime: new Float64Array(count),
    electrodes: new Float64Array(count),
    cost: new Float64Array(count),
    energy: new Float64Array(count),
  };
  for (let shop = 0; shop < count; shop += 1) {
    const taken = once({
      travelTime: outcomes.travelTime[shop]!,
      trialTravelTime,
      passes: outcomes.passes[shop]!,
      gauged: outcomes.gauged[shop]!,
      wear: draws.wear[shop]!,
    });
    effort.arcTime[shop] = taken.arcTime;
    effort.jobTime[shop] = taken.jobTime;
    effort.electrodes[shop] = taken.electrodes;
    effort.cost[shop] = taken.cost;
    effort.energy[shop] = taken.energy;
  }
  return effort;
}

/** The three things that alternatives trade against each other, as means over the shops. */
export interface Merit {
  /** Job time [s]. */
  readonly time: number;
  /** Cost of the whole job as far as it is known, in the job's currency [-]. */
  readonly cost: number;
  /** Arc energy [J]. */
  readonly heat: number;
}

/** Weight of a second of time where costs are equal, as they are without rates: the quickest of them [1/s]. */
const TIE = 1e-7;

/** What a set-up is ordered by; equal costs are ordered by time. */
export function meritBy(merit: Merit, objective: Job['plan']['objective']): number {
  return objective === 'time' ? merit.time : merit[objective] + TIE * merit.time;
}

/**
 * Means of what an effort takes over the shops in which the seam was run: where a table says to stop and ask, the
 * groove is still to be made, so that what was saved there saves nothing.
 */
export function meritOf(effort: Effort, costWhereRun: Float64Array, notRun: Uint8Array): Merit {
  return {
    time: meanWhereRun(effort.jobTime, notRun),
    cost: mean(costWhereRun),
    heat: meanWhereRun(effort.energy, notRun),
  };
}

function meanWhereRun(values: Float64Array, notRun: Uint8Array): number {
  let [sum, count] = [0, 0];
  for (let shop = 0; shop < values.length; shop += 1) {
    if (notRun[shop] === 1) continue;
    sum += values[shop]!;
    count += 1;
  }
  return count === 0 ? Number.POSITIVE_INFINITY : sum / count;
}

/** Mean of a list. */
export function mean(values: Float64Array): number {
  if (values.length === 0) return Number.POSITIVE_INFINITY;
  let sum = 0;
  for (const value of values) sum += value;
  return sum / values.length;
}
