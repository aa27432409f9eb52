import { type DocumentDifference, documentDifference } from '../document/index.ts';
import type { UnitSystem } from '../quantity/index.ts';
import { jobFields } from './fields.ts';
import type { ReadJob } from './read-job.ts';

/** One thing in which two revisions of a job differ. */
export type JobDifference = DocumentDifference;

/**
 * Tells in what two revisions of a job differ, in words.
 *
 * Defaults count as if they were stated; layout and comments do not count.
 *
 * @param before - the earlier revision as read [record], from `readJob`
 * @param after - the later revision as read [record], from `readJob`
 * @param system - units of the words [text], inch or metric
 * @returns the differences in the order of the file, none for the same revision [list]
 * @source none: bookkeeping
 * @example
 * jobDifference(demoJob, demoJob, 'metric') // => []
 */
export function jobDifference(before: ReadJob, after: ReadJob, system: UnitSystem): readonly JobDifference[] {
  return documentDifference(jobFields(), before.job, after.job, system);
}
