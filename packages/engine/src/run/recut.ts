import type { Job } from '../job/index.ts';
import type { PlanOutcome } from '../plan/index.ts';
import {
  beliefOfElectrode,
  middleLaw,
  type Prediction,
  predictDepth,
  type RemovalBelief,
  startDwell,
} from '../removal/index.ts';

/** A cut of one set-up to a depth, as a short plan; SI. */
export interface Recut {
  /** Where the arc is struck, run-in included, from the start of the seam [m]. */
  readonly from: number;
  /** Where it is let go out, run-out included [m]. */
  readonly to: number;
  /** Current [A]. */
  readonly current: number;
  /** Arc voltage [V]. */
  readonly voltage: number;
  /** Travel [m/s]. */
  readonly travel: number;
  /** Wait between arc and travel [s]. */
  readonly dwell: number;
  /** What it is to take off, with its interval [m]. */
  readonly depth: Prediction;
}

/**
 * Travel at which the plan's set-up takes off a depth, in the middle of what is known.
 *
 * Solves ln(h / D) = a + b ln q + c (angle - 45 deg) / 15 deg for the travel.
 *
 * @param job - the job [record], from `readJob`
 * @param plan - its plan [record], from `planJob`
 * @param belief - what is known of removal [record], as the plan was made with
 * @param depth - depth of one pass [m], > 0
 * @returns travel [m/s]
 * @source derived: inverse of the log-linear depth law
 * @example
 * travelForDepth(demoJob.job, demoAnswer.basis.plan, publishedBelief(metalOf('carbon_steel'), 'flat'), 0.006) > 0 // => true
 */
export function travelForDepth(job: Job, plan: PlanOutcome, belief: RemovalBelief, depth: number): number {
  const known = beliefOfElectrode(belief, plan.electrode);
  const { diameter } = plan.electrode;
  const { current, voltage, pushAngle } = settingOf(job, plan);
  const [a, b, c] = middleLaw(known) as [number, number, number];
  const angle = (pushAngle - Math.PI / 4) / (Math.PI / 12);
  const q = Math.exp((Math.log(depth / diameter) - a - c * angle) / b);
  return (voltage * current) / (diameter ** 2 * known.meltingEnergy * q);
}

/** The recut of a stretch; undefined where the carriage cannot run fast enough to cut so little. */
export function recutOf(
  stretch: { readonly from: number; readonly to: number; readonly depth: number },
  job: Job,
  plan: PlanOutcome,
  belief: RemovalBelief,
): Recut | undefined {
  const travel = Math.max(job.kit.travel.least, travelForDepth(job, plan, belief, stretch.depth));
  if (travel > job.kit.travel.most) return undefined;
  const { diameter } = plan.electrode;
  const { current, voltage, pushAngle } = settingOf(job, plan);
  const setting = { diameter, current, voltage, travel, pushAngle };
  return {
    from: Math.max(0, stretch.from - diameter),
    to: Math.min(job.seam.length, stretch.to + diameter),
    current,
    voltage,
    travel,
    dwell: startDwell(diameter, pushAngle, travel),
    depth: predictDepth(beliefOfElectrode(belief, plan.electrode), setting),
  };
}

function settingOf(
  { kit }: Job,
  plan: PlanOutcome,
): { readonly current: number; readonly voltage: number; readonly pushAngle: number } {
  const [first] = plan.passes;
  return {
    current: first?.current ?? kit.current.most,
    voltage: first?.voltage ?? kit.arc_voltage.set,
    pushAngle: first?.pushAngle ?? kit.push_angle,
  };
}
