import { type Answer, answerHeat, type HeatReport, type Knowledge, type ReadJob } from '@furrow/engine';

/** A quick look at the heat of a plan, in the middle of the seam; undefined without a plan. */
export function quickHeat(
  read: ReadJob,
  answer: Answer,
  knowledge: Knowledge | undefined,
): HeatReport | undefined {
  if (answer.plan === undefined) return undefined;
  const steps = answerHeat(read, answer, { quality: 'quick', knowledge });
  let step = steps.next();
  while (step.done !== true) step = steps.next();
  return step.value?.report;
}
