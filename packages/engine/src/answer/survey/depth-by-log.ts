import { type GivenReading, readLogger } from '../../delimited/index.ts';
import type { Outcome } from '../../issue/index.ts';
import type { ReadJob } from '../../job/index.ts';
import type { Knowledge } from '../../learn/index.ts';
import type { Answer } from '../../result/index.ts';
import { type DepthAlong, depthAlong, expectationOf, LogReader, reviewRun } from '../../run/index.ts';
import { beliefOfJob } from '../knowledge/belief-of-job.ts';
import { type RanPass, ranPasses } from './groove-entry.ts';

/** The log of a run, by which the depth along the seam is predicted. */
export interface LogOfRun {
  /** Its content as the logger wrote it [bytes]. */
  readonly bytes: Uint8Array;
  /** Logger description by which it is read [text]; left out: as found. */
  readonly description?: string | undefined;
}

/** What a log says of a groove before anything is measured. */
export interface DepthByLog {
  readonly depth: DepthAlong;
  /** How the planned passes were run. */
  readonly passes: readonly RanPass[];
}

/** Bytes of a log that are read at once. */
const PIECE = 1 << 20;

/**
 * The depth along the seam by the log of its run, and how each planned pass was run.
 *
 * @param log - its bytes and how they are read [record], any
 * @param job - the job that was run, its answer and what was known [record], of one and the same job
 * @returns depth and passes; why there are none, where the file cannot be read or has no place on the seam [record]
 * @source composes `reviewRun` and `depthAlong`
 * @example
 * depthByLog({ bytes: new Uint8Array(0) }, { read: demoJob, answer: demoAnswer, knowledge: undefined }).ok // => false
 */
export function depthByLog(
  { bytes, description }: LogOfRun,
  {
    read: { job },
    answer,
    knowledge,
  }: { readonly read: ReadJob; readonly answer: Answer; readonly knowledge: Knowledge | undefined },
): Outcome<DepthByLog> {
  const plan = answer.basis?.plan;
  if (plan === undefined) return unusable('The job has no plan, so its log predicts no depth.');
  const described = description === undefined ? undefined : readLogger(description);
  if (described?.ok === false) return described;
  const given: GivenReading = described?.value.given ?? {};
  const reader = new LogReader(given);
  const belief = beliefOfJob(job, knowledge);
  const review = reviewRun(expectationOf(job, plan, belief));
  for (let at = 0; at < bytes.length; at += PIECE)
    for (const batch of reader.push(bytes.subarray(at, at + PIECE))) review.push(batch);
  const end = reader.end();
  if (!end.ok) return end;
  for (const batch of end.value.batches) review.push(batch);
  const outcome = review.end();
  const depth = depthAlong(outcome.passes, plan, belief, job.seam.length, job.kit.push_angle);
  return depth === undefined
    ? unusable('No pass of the log has a place on the seam, so it predicts no depth.')
    : { ok: true, value: { depth, passes: ranPasses(outcome) } };
}

function unusable(message: string): Outcome<never> {
  return { ok: false, issues: [{ code: 'SURVEY_NOT_READABLE', message, path: '' }] };
}
