import { answerHazard, sentencesWritten } from '@furrow/engine';
import { renderHazardText } from '@furrow/papers';
import { exitOf, type JobOptions, onJob, printed } from '../frame/on-job.ts';

/** Tells what a job asks of the people around it; told too where there is no plan. */
export const run = onJob<JobOptions & { readonly json: boolean }>(({ job, kit }, answer, { json, units }) => {
  const hazard = answerHazard(job, answer, kit);
  return {
    exit: exitOf(answer),
    print: printed(json, sentencesWritten({ inputs: answer.inputs, hazard }, 'metric'), () =>
      renderHazardText(hazard, job.job.title, units),
    ),
  };
});
