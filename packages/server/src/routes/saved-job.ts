import type { SavedJob } from '@furrow/contract';
import type { JobStore, StoredJob } from '@furrow/store';
import { Refused } from '../guard/refused.ts';
import { issuesOf } from '../reading/job-reading.ts';

/** A stored job as it is handed out: with what this version of the program makes of its text. */
export function savedJob(job: StoredJob): SavedJob {
  const issues = issuesOf(job.text);
  return { ...job, valid: issues.length === 0, issues };
}

/** The stored job of an identifier, or the refusal that names it. */
export async function storedJob(store: JobStore, id: string): Promise<StoredJob> {
  return (await store.get(id)) ?? jobNotFound(id);
}

/** Refuses an identifier that no saved job has. */
export function jobNotFound(id: string): never {
  throw new Refused('JOB_NOT_FOUND', `There is no saved job “${id.slice(0, 60)}”; it may be in the bin.`);
}
