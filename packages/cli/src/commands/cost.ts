import { answerCost, coolingForCost, sentencesWritten, tryCostChanges } from '@furrow/engine';
import { renderCostText } from '@furrow/papers';
import { exitOf, type JobOptions, onJob, printed } from '../frame/on-job.ts';

/** Tells time and money of the whole job, and what changes of job or kit would do to them. */
export const run = onJob<JobOptions & { readonly json: boolean }>(
  ({ job, kit, knowledge }, answer, { json, units }) => {
    const waits = coolingForCost(job, answer, knowledge);
    const cost = answerCost(job, answer, waits);
    const changes = cost.kind === 'no_plan' ? [] : [...tryCostChanges(job, answer, cost, kit, waits)];
    return {
      exit: exitOf(answer),
      print: printed(json, sentencesWritten({ inputs: answer.inputs, cost, changes }, 'metric'), () =>
        renderCostText(cost, changes, { read: job, inputs: answer.inputs }, units),
      ),
    };
  },
);
