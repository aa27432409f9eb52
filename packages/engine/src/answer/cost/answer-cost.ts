import { wholeCost } from '../../cost/index.ts';
import type { ReadJob } from '../../job/index.ts';
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
  const { plan, torchFlow } = basis;
  const waits = coolingOf(options.heat);
  const work = arcWorkOfPlan(plan, job, {
    airFlow: torchFlow,
    coolingTime: waits ?? 0,
    hirePerDay: options.hirePerDay ?? 0,
  });
  return stateCost(wholeCost(job, work, { air: torchFlow !== undefined, waits: waits !== undefined }));
}

/** Waits of a heat report, for its middle share of heat kept [s]. */
function coolingOf(heat: CostOptions['heat']): number | undefined {
  return heat?.passes.reduce((sum, pass) => sum + pass.wait_s.middle, 0);
}
