import { sentencesWritten } from '@furrow/engine';
import { renderSupplyText } from '@furrow/papers';
import { exitOf, type JobOptions, onJob, printed } from '../frame/on-job.ts';

/** Tells what a kit makes of a job's plan: margins, loop, air, place, connections and checks. */
export const run = onJob<JobOptions & { readonly json: boolean }>(({ job }, answer, { json, units }) => ({
  exit: exitOf(answer),
  print: printed(json, answer.supply && sentencesWritten(answer.supply, units), () =>
    renderSupplyText(answer, job.job.title, units),
  ),
}));
