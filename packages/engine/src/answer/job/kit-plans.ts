import type { Job } from '../../job/index.ts';
import type { KitLimits } from '../../kit/index.ts';
import { type PlanOutcome, type PlanResult, type PlanWithin, planAlone, planJob } from '../../plan/index.ts';
import type { RemovalBelief } from '../../removal/index.ts';

/** The job planned with the kit's margins and by the process alone. */
export interface KitPlans {
  readonly result: PlanResult;
  readonly withKit: PlanOutcome | undefined;
  readonly withoutKit: PlanOutcome | undefined;
}

/** Plans a job within a kit, and by the process alone wherever the kit's margins turned a setting away. */
export function planWithKit(
  job: Job,
  posterior: RemovalBelief,
  within: PlanWithin,
  kit: KitLimits,
): KitPlans {
  const result = planJob(job, posterior, { ...within, limits: [...within.limits, ...kit.functions] });
  const withKit = 'plan' in result ? result.plan : undefined;
  // Margins that turned nothing away changed nothing.
  if (!kit.turnedAway()) return { result, withKit, withoutKit: withKit };
  return { result, withKit, withoutKit: planAlone(job, posterior, within) };
}
