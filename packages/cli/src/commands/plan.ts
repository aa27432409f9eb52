import { writtenAnswer } from '@furrow/engine';
import { renderText } from '@furrow/papers';
import { exitOf, type JobOptions, onJob, printed } from '../frame/on-job.ts';

/** Plans a job file and tells the result. */
export const run = onJob<JobOptions & { readonly json: boolean }>(({ job }, answer, { json, units }) => ({
  exit: exitOf(answer),
  print: printed(json, writtenAnswer(answer, units), () => renderText(answer, job, units)),
}));
