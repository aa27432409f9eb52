import type { Job } from '../job/index.ts';
import { metalOf } from '../material/index.ts';
import { sentenceText } from '../quantity/index.ts';
import { processEasings, processLimits, publishedBelief, type RemovalBelief } from '../removal/index.ts';
import type { PlanOutcome } from './outcome.ts';
import { type PlanResult, planJob } from './plan-job.ts';
import type { AfterCostFunction } from './whole-cost.ts';

/** What a shop without history knows of a job's removal. */
export function beliefOf({ plate, seam }: Job): RemovalBelief {
  return publishedBelief(metalOf(plate.material, plate.composition), seam.position);
}

/** Plans a job by the process alone. */
export function planOf(job: Job, afterCost?: AfterCostFunction): PlanResult {
  const belief = beliefOf(job);
  return planJob(job, belief, {
    limits: [processLimits(belief.meltingEnergy)],
    easings: processEasings(job),
    ...(afterCost !== undefined && { afterCost }),
  });
}

/** The same for a job that has a plan. */
export function planned(
  job: Job,
  afterCost?: AfterCostFunction,
): { readonly plan: PlanOutcome; readonly alternatives: readonly PlanOutcome[] } {
  const result = planOf(job, afterCost);
  if ('refusal' in result) throw new Error(sentenceText(result.refusal.summary, 'metric'));
  return result;
}
