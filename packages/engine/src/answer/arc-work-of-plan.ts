import type { ArcWork, GrooveSection } from '../cost/index.ts';
import type { Job } from '../job/index.ts';
import type { Band, Plan } from '../result/index.ts';

const MM = 1e-3;

/** What the plan does not tell of the cycle. */
export interface CycleSurroundings {
  /** Free air through the torch; undefined where none is known [m3/s]. */
  readonly airFlow: number | undefined;
  /** Waits for the interpass temperature, all together [s]. */
  readonly coolingTime: number;
  /** Hired plant by the day, in the job's currency [-]. */
  readonly hirePerDay: number;
}

/** A plan as cost sees it. */
export function arcWorkOfPlan(plan: Plan, job: Job, around: CycleSurroundings): ArcWork {
  const { rates, after, kit, seam } = job;
  const diameter = plan.electrode_diameter_mm * MM;
  const electrode = kit.electrodes.find((each) => Math.abs(each.diameter - diameter) < 1e-6);
  if (electrode === undefined) throw new Error('a plan uses an electrode that its job does not have');
  const tryout = plan.trial ?? plan.run_in;
  const readings =
    (tryout?.stations.length ?? 0) +
    plan.gauge_stops.reduce((sum, stop) => sum + stop.stations * plan.tracks, 0);
  const section = sectionOfPlan(plan, job);
  const arcPower = (plan.arc_energy_kJ * 1000) / plan.arc_time_s.p50;
  return {
    arcTime: plan.arc_time_s,
    electrodes: plan.electrodes_used,
    electrodePrice: electrode.price_each,
    // A trial is one start more; there is no carriage to bring back from it, nor round a girth.
    passes: plan.passes.length + (plan.trial === undefined ? 0 : 1),
    startTime: rates.start_time,
    returnTime: returnTimeOf(plan, job),
    changeTime: rates.electrode_change_time,
    gaugeTime: readings * rates.gauge_time + (plan.trial === undefined ? 0 : rates.trial_time),
    coolingTime: after.cooling_wait ?? around.coolingTime,
    setUpTime: after.set_up_time,
    commissioningTime: after.commissioning_time,
    power: (arcPower / rates.source_efficiency / 3.6e6) * rates.power_per_kWh,
    air: (after.air.flow ?? around.airFlow ?? 0) * after.air.price_per_m3,
    hirePerDay: around.hirePerDay,
    shift: after.hire.shift,
    section,
    depth: inMetres(plan.floor_depth_mm),
    width: inMetres(plan.width_mm),
    depthReached: plan.assurance.depth_reached,
    reworkTime: after.rework_min_per_m === undefined ? undefined : after.rework_min_per_m * 60 * seam.length,
  };
}

/** The median groove of a plan. */
export function sectionOfPlan(plan: Plan, { seam }: Job): GrooveSection {
  return {
    areaPerLength: plan.removed_mm3_per_mm * MM ** 2,
    topWidth: plan.width_mm.p50 * MM,
    depth: plan.floor_depth_mm.p50 * MM,
    seamLength: seam.length,
  };
}

/** Time of one return of the carriage, so that those of a cycle add up to what the plan has. */
function returnTimeOf(plan: Plan, { seam, rates }: Job): number {
  if (seam.path === 'girth') return 0;
  const once = (plan.pass_length_mm * MM) / rates.return_travel;
  const counted = plan.passes.length - (plan.trial === undefined ? 1 : 0);
  const made = plan.run_in === undefined ? plan.passes.length - 1 : 1;
  return counted === 0 ? 0 : (once * made) / counted;
}

function inMetres({ p05, p50, p95 }: Band): Band {
  return { p05: p05 * MM, p50: p50 * MM, p95: p95 * MM };
}
