import { beliefOfJob, expectationOf, LiveWatch, readKnowledge, readLogger } from '@furrow/engine';
import type { Store, StoredRun } from '@furrow/store';
import type { Work } from '../work/open-work.ts';
import { questionOf } from './run-question.ts';

/** What watches a live run against the plan of its job; undefined where the job has none. */
export async function watchOf(
  run: StoredRun,
  { store, work }: { readonly store: Store; readonly work: Work },
): Promise<LiveWatch | undefined> {
  const question = await questionOf(store, run);
  const answer = question && (await work.answer(question, new AbortController().signal));
  if (question === undefined || answer?.basis === undefined) return undefined;
  const trials = question.knowledge === undefined ? undefined : readKnowledge(question.knowledge);
  const belief = beliefOfJob(question.read.job, trials?.ok ? trials.value : undefined);
  const logger = run.logger === null ? undefined : readLogger(run.logger);
  return new LiveWatch(
    expectationOf(question.read.job, answer.basis.plan, belief),
    logger?.ok ? logger.value.given : {},
  );
}
