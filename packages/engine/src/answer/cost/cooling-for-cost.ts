import type { ReadJob } from '../../job/index.ts';
import type { Knowledge } from '../../learn/index.ts';
import type { Answer } from '../../result/index.ts';
import { answerHeat } from '../heat/answer-heat.ts';
import type { CostOptions } from './answer-cost.ts';

/**
 * Looks up the cooling waits that the heat of a plan asks for, as its cost takes them in.
 *
 * A quick look at the heat, which takes longer than the cost itself; none where the job states its own waits or there
 * is no plan.
 *
 * @param read - the job as read [record], from `readJob`
 * @param answer - the answer to it [record], from `answerJob`
 * @param knowledge - what the shop has learned, as it was planned with [record], or left out
 * @returns the options for `answerCost` [record]
 * @source none: composition
 * @example
 * coolingForCost({ job: { after: {} } }, { refusal: {} }) // => {}
 */
export function coolingForCost(read: ReadJob, answer: Answer, knowledge?: Knowledge): CostOptions {
  const known = knowledge === undefined ? {} : { knowledge };
  if (answer.basis === undefined || read.job.after.cooling_wait !== undefined) return known;
  const look = answerHeat(read, answer, { quality: 'quick', knowledge });
  let step = look.next();
  while (step.done !== true) step = look.next();
  return step.value === null ? known : { ...known, heat: step.value.report };
}
