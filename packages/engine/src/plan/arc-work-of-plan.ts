import type { ArcWork, GrooveSection } from '../cost/index.ts';
import type { Job } from '../job/index.ts';
import { fromUnit } from '../quantity/index.ts';
import { betweenLayers } from './effort.ts';
import type { PlanOutcome } from './outcome.ts';

/** What the plan does not tell of the cycle. */
export interface CycleSurroundings {
  /** Free air through the torch; undefined where none is known [m3/s]. */
  readonly airFlow: number | undefined;
  /** Waits for the interpass temperature, all together [s]. */
  readonly coolingTime: number;
  /** Hired plant by the day, in the job's currency [-]. */
  readonly hirePerDay: number;
}

/** Joules of a kilowatt hour [J]. */
const KILOWATT_HOUR = 3.6e6;

/**
 * A plan as cost sees it: what its cycle takes and the groove that is filled again.
 *
 * @param plan - the plan in SI [record], from `planJob`
 * @param job - its job [record], from `readJob`
 * @param around - air, waits and hire [record], amounts >= 0
 * @returns the work [record]
 * @source none: bookkeeping
 * @example
 * arcWorkOfPlan(demoAnswer.basis.plan, demoJob.job, { airFlow: undefined, coolingTime: 60, hirePerDay: 0 }).coolingTime // => 60
 */
export function arcWorkOfPlan(plan: PlanOutcome, job: Job, around: CycleSurroundings): ArcWork {
  const { rates, after, seam } = job;
  const { tryout } = plan;
  const hasTrial = tryout?.kind === 'trial';
  const readings =
    (tryout?.stations.length ?? 0) +
    plan.stops.reduce((sum, stop) => sum + stop.stations.length * plan.pattern.tracks, 0);
  const arcPower = plan.arcEnergy / plan.arcTime.p50;
  return {
    arcTime: plan.arcTime,
    electrodes: plan.electrodesUsed,
    electrodePrice: plan.electrode.price_each,
    // A trial is one start more; there is no carriage to bring back from it, nor round a girth.
    passes: plan.passes.length + (hasTrial ? 1 : 0),
    startTime: rates.start_time,
    layerTime: (plan.layers - 1) * betweenLayers(job),
    returnTime: returnTimeOf(plan, job),
    changeTime: rates.electrode_change_time,
    gaugeTime: readings * rates.gauge_time + (hasTrial ? rates.trial_time : 0),
    coolingTime: after.cooling_wait ?? around.coolingTime,
    setUpTime: after.set_up_time,
    commissioningTime: after.commissioning_time,
    power: (arcPower / rates.source_efficiency / KILOWATT_HOUR) * rates.power_per_kWh,
    air: (after.air.flow ?? around.airFlow ?? 0) * after.air.price_per_m3,
    hirePerDay: around.hirePerDay,
    shift: after.hire.shift,
    section: sectionOfPlan(plan, job),
    depth: plan.floorDepth,
    width: plan.width,
    depthReached: plan.chances.reached,
    reworkTime:
      after.rework_min_per_m === undefined
        ? undefined
        : fromUnit(after.rework_min_per_m, 'min') * seam.length,
  };
}

/**
 * The median groove of a plan, as the work after the arc sees it.
 *
 * @param plan - the plan in SI [record], from `planJob`
 * @param job - its job [record], from `readJob`
 * @returns the section [record]
 * @source none: bookkeeping
 * @example
 * sectionOfPlan({ removed: 1e-4, width: { p50: 0.012 }, floorDepth: { p50: 0.01 } }, { seam: { length: 6 } }) // => {"areaPerLength":0.0001,"topWidth":0.012,"depth":0.01,"seamLength":6}
 */
export function sectionOfPlan(
  { removed, width, floorDepth }: Pick<PlanOutcome, 'removed' | 'width' | 'floorDepth'>,
  { seam }: { readonly seam: Pick<Job['seam'], 'length'> },
): GrooveSection {
  return { areaPerLength: removed, topWidth: width.p50, depth: floorDepth.p50, seamLength: seam.length };
}

/** Time of one return of the carriage, so that those of a cycle add up to what the plan has. */
function returnTimeOf({ passLength, passes, tryout }: PlanOutcome, { seam, rates }: Job): number {
  if (seam.path === 'girth') return 0;
  const once = passLength / rates.return_travel;
  const counted = passes.length - (tryout?.kind === 'trial' ? 0 : 1);
  const made = tryout?.kind === 'run_in' ? 1 : passes.length - 1;
  return counted === 0 ? 0 : (once * made) / counted;
}
