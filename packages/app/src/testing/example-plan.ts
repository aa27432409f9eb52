import { PROGRAM_VERSION } from '@furrow/contract';
import { type Answer, answerJob, type Plan, type ReadJob, readJob } from '@furrow/engine';

/** Reads a job that is known to be fine. */
export function readGood(text: string): ReadJob {
  const outcome = readJob(text);
  if (!outcome.ok) throw new Error(outcome.issues.map(({ message }) => message).join('\n'));
  return outcome.value;
}

/** Plans a job that is known to have a plan. */
export function planOf(text: string): {
  readonly read: ReadJob;
  readonly answer: Answer;
  readonly plan: Plan;
} {
  const read = readGood(text);
  const answer = answerJob({ job: read, version: PROGRAM_VERSION });
  if (answer.plan === undefined) throw new Error('the job has no plan');
  return { read, answer, plan: answer.plan };
}
