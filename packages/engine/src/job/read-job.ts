import {
  type DefaultUsed,
  DOCUMENT_TEXT_MOST,
  type DocumentKind,
  documentCodes,
  readDocument,
} from '../document/index.ts';
import type { Outcome } from '../issue/index.ts';
import type { Reader } from '../quantity/index.ts';
import { combinationIssues } from './combination.ts';
import { type Job, jobOf } from './job.ts';
import { jobSchema } from './schema.ts';

/** Greatest size of a job file [characters]. */
export const JOB_TEXT_MOST = DOCUMENT_TEXT_MOST;

const JOB: DocumentKind<typeof jobSchema> = {
  name: 'job',
  versionField: 'furrow',
  schema: jobSchema,
  codes: documentCodes('JOB'),
};

/** A job as read: in SI, with the defaults that stood in and the hash of its content. */
export interface ReadJob {
  readonly job: Job;
  readonly defaultsUsed: readonly DefaultUsed[];
  /** SHA-256 of the content, defaults included, in hex; layout and comments do not count. */
  readonly revision: string;
}

/**
 * Reads a job file, YAML or JSON, into a job in SI, or tells what is wrong with it and where.
 *
 * Each default used is listed; nothing is filled in silently. Keys may carry the unit
 * (`thickness_mm: 32`) in place of an amount with its unit (`thickness: 32 mm`).
 *
 * @param text - the file's content [text], at most 200 000 characters
 * @param reader - whose units mistakes are told in [text], inch or metric; both where it is not known who reads
 * @returns the job, the defaults used and the revision, or the issues [record]
 * @source none: bookkeeping
 * @example
 * readJob('furrow: 1').ok // => false
 */
export function readJob(text: string, reader: Reader = 'both'): Outcome<ReadJob> {
  const outcome = readDocument(text, JOB, { wholeOf: jobOf, contradictions: combinationIssues }, reader);
  if (!outcome.ok) return outcome;
  const { whole: job, defaultsUsed, revision } = outcome.value;
  return { ok: true, value: { job, defaultsUsed, revision } };
}
