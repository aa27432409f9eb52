import type { Job } from '../job/index.ts';
import { startDwell } from '../removal/index.ts';
import type { RunOutcomes } from './run-plan.ts';
import type { Setup } from './setup.ts';
import type { ShopDraws } from './shop-draws.ts';

/** What a plan takes in every shop, one value per shop. */
export interface Effort {
  /** Time with the arc burning, dwells included [s]. */
  readonly arcTime: Float64Array;
  /** Arc time with starts, returns, electrode changes and gauge stops [s]. */
  readonly jobTime: Float64Array;
  /** Electrodes begun [-]. */
  readonly electrodes: Float64Array;
  /** Electrodes, labour over the job time, and power, in the job's currency [-]. */
  readonly cost: Float64Array;
  /** Arc energy [J]. */
  readonly energy: Float64Array;
}

/** Length of one electrode that can be burnt [m]. */
export function usableLength(electrode: Setup['electrode']): number {
  return electrode.kind === 'plain' ? electrode.length - electrode.stub : electrode.length;
}

/** Labour and overhead of the crew, per hour in the job's currency [1/h]. */
export function crewRate({ rates, after }: Job): number {
  return rates.labour_per_hour + after.overhead_per_hour;
}

/** Works out time, electrodes, cost and energy in every shop. */
export function effortOf(
  setup: Setup,
  outcomes: RunOutcomes,
  draws: ShopDraws,
  job: Job,
  passLength: number,
): Effort {
  const { rates, kit } = job;
  const crewPerHour = crewRate(job);
  const { count } = draws;
  const { electrode, current, voltage, pattern } = setup;
  const power = voltage * current;
  const gaugeTime = setup.layers.reduce(
    (sum, rule) => sum + (rule.kind === 'table' ? rule.stations * pattern.tracks * rates.gauge_time : 0),
    0,
  );
  // The dwell is a length over the travel, so all dwells together scale with the time under way.
  const dwellLength = startDwell(electrode.diameter, kit.push_angle, 1);
  const returnTime = passLength / rates.return_travel;
  const bar = (Math.PI * electrode.diameter ** 2) / 4;
  const effort: Effort = {
    arcTime: new Float64Array(count),
    jobTime: new Float64Array(count),
    electrodes: new Float64Array(count),
    cost: new Float64Array(count),
    energy: new Float64Array(count),
  };
  for (let shop = 0; shop < count; shop += 1) {
    const travelTime = outcomes.travelTime[shop]!;
    const passes = outcomes.passes[shop]!;
    const arcTime = travelTime * (1 + dwellLength / passLength);
    const burnt = (draws.wear[shop]! * current * arcTime) / bar;
    const electrodes = Math.max(1, Math.ceil(burnt / usableLength(electrode)));
    const jobTime =
      arcTime +
      passes * rates.start_time +
      Math.max(0, passes - 1) * returnTime +
      (electrodes - 1) * rates.electrode_change_time +
      gaugeTime;
    const energy = power * arcTime;
    effort.arcTime[shop] = arcTime;
    effort.jobTime[shop] = jobTime;
    effort.electrodes[shop] = electrodes;
    effort.energy[shop] = energy;
    effort.cost[shop] =
      electrodes * electrode.price_each +
      (jobTime / 3600) * crewPerHour +
      (energy / 3.6e6 / rates.source_efficiency) * rates.power_per_kWh;
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

/** Means over the shops of what an effort takes. */
export function meritOf(effort: Effort, wholeCost: Float64Array): Merit {
  return { time: mean(effort.jobTime), cost: mean(wholeCost), heat: mean(effort.energy) };
}

function mean(values: Float64Array): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
