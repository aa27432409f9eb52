import {
  type ArcWork,
  type CycleTotals,
  costPracticeOf,
  simulateTotals,
  wholeCost,
} from '../../cost/index.ts';
import type { Job, ReadJob } from '../../job/index.ts';
import type { Knowledge } from '../../learn/index.ts';
import { arcWorkOfPlan } from '../../plan/index.ts';
import { joinSentences } from '../../quantity/index.ts';
import { type Answer, type CostAnswer, type HeatReport, stateCost } from '../../result/index.ts';

/** What the cost takes in beside job and plan. */
export interface CostOptions {
  /** Heat report of the same plan, for the cooling waits. */
  readonly heat?: Pick<HeatReport, 'passes'>;
  /** Hired plant by the day, in the job's currency; 0 if left out [-]. */
  readonly hirePerDay?: number;
  /** What the shop has learned, as it was planned with: changes are planned with the same. */
  readonly knowledge?: Knowledge | undefined;
}

/**
 * Tells time and money of a whole job: set-up to refill, with their scatter, and what larger grooves and other ways cost.
 *
 * @param read - the job as read [record], from `readJob`
 * @param answer - the answer to the same job [record], from `answerJob`
 * @param options - a heat report for the cooling waits, hired plant by the day [record], may be left out
 * @returns the report, or why there is none [record]
 * @source none: composition
 * @example
 * answerCost(demoJob, demoAnswer).seam_length_m // => 0.18
 */
export function answerCost(
  read: ReadJob,
  answer: Pick<Answer, 'basis' | 'refusal'>,
  options: CostOptions = {},
): CostAnswer {
  const { job } = read;
  const { basis, refusal } = answer;
  if (basis === undefined) {
    const why = refusal === undefined ? [] : [refusal.summary];
    return {
      kind: 'no_plan',
      says: joinSentences(['There is no plan, so there is nothing to tell of time and money.', ...why]),
    };
  }
  const known = { air: basis.torchFlow !== undefined, waits: options.heat !== undefined };
  return stateCost(wholeCost(job, arcWorkOf(job, basis, options), known));
}

/** Time and money of a whole job as `answerCost` tells them, and nothing beside: in SI and the job's currency. */
export function costTotals(job: Job, basis: Basis, options: CostOptions): CycleTotals {
  return simulateTotals(job, arcWorkOf(job, basis, options), costPracticeOf(job), job.plan.seed);
}

type Basis = NonNullable<Answer['basis']>;

function arcWorkOf(job: Job, { plan, torchFlow }: Basis, { heat, hirePerDay = 0 }: CostOptions): ArcWork {
  return arcWorkOfPlan(plan, job, {
    airFlow: torchFlow,
    coolingTime: coolingOf(heat) ?? 0,
    hirePerDay,
  });
}

/** Waits of a heat report, for its middle share of heat kept [s]. */
function coolingOf(heat: CostOptions['heat']): number | undefined {
  return heat?.passes.reduce((sum, pass) => sum + pass.wait_s.middle, 0);
}
