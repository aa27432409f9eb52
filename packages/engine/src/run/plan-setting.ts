import type { Job } from '../job/index.ts';
import type { PlanOutcome } from '../plan/index.ts';
import { beliefOfElectrode, middleLaw, type RemovalBelief } from '../removal/index.ts';

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

/** Current, voltage and angle that the plan's passes are run with. */
export function settingOf(
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
