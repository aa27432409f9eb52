import type { Job } from '../job/index.ts';
import type { LimitFunction } from '../limit/index.ts';
import { type AfterCostFunction, type Plan, type PlanResult, planJob } from '../plan/index.ts';
import type { RemovalBelief } from '../removal/index.ts';
import type { KitLimits } from './kit-limits.ts';

/** The job planned with the kit's margins and by the process alone. */
export interface KitPlans {
  readonly result: PlanResult;
  readonly withKit: Plan | undefined;
  readonly withoutKit: Plan | undefined;
}

/** Plans a job within a kit, and by the process alone wherever the kit's margins turned a setting away. */
export function planWithKit(
  job: Job,
  posterior: RemovalBelief,
  process: readonly LimitFunction[],
  kit: KitLimits,
  afterCost: AfterCostFunction,
): KitPlans {
  const result = planJob(job, posterior, [...process, ...kit.functions], afterCost);
  const withKit = 'plan' in result ? result.plan : undefined;
  // Margins that turned nothing away changed nothing.
  if (!kit.turnedAway()) return { result, withKit, withoutKit: withKit };
  const free = planJob(job, posterior, process, afterCost);
  return { result, withKit, withoutKit: 'plan' in free ? free.plan : undefined };
}
