import type { Issue, Outcome } from '../issue/index.ts';
import { combinationIssues } from './combination.ts';
import { completeDocument, type DefaultUsed, pathText } from './complete.ts';
import { positionOf } from './file-position.ts';
import { type Job, jobOf } from './job.ts';
import { type ParsedText, parseText } from './parse-text.ts';
import { personIssues, writtenPath } from './person-issues.ts';
import { revisionOf } from './revision.ts';
import { jobSchema } from './schema.ts';

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
 * @returns the job, the defaults used and the revision, or the issues [record]
 * @source none: bookkeeping
 * @example
 * readJob('furrow: 1').ok // => false
 */
export function readJob(text: string): Outcome<ReadJob> {
  const file = parseText(text);
  if (!file.ok) return file;
  const { raw, document, lines } = file.value;
  const version = raw['furrow'];
  if (typeof version === 'number' && version !== 1) {
    return { ok: false, issues: [versionIssue(version, file.value)] };
  }
  const completed = completeDocument(jobSchema, raw);
  const parsed = jobSchema.safeParse(completed.value);
  if (!parsed.success) return { ok: false, issues: personIssues(parsed.error, completed, file.value) };
  const job = jobOf(parsed.data);
  const issues = combinationIssues(job).map(
    ({ at, ...issue }): Issue => ({
      ...issue,
      ...positionOf(document, lines, writtenPath(completed, at)),
      path: pathText(at),
    }),
  );
  if (issues.length > 0) return { ok: false, issues };
  return {
    ok: true,
    value: { job, defaultsUsed: completed.defaultsUsed, revision: revisionOf(parsed.data) },
  };
}

function versionIssue(version: number, { document, lines }: ParsedText): Issue {
  return {
    code: 'JOB_VERSION',
    message: `The file is of version ${version}; this program reads version 1.`,
    path: 'furrow',
    read: String(version),
    accepted: '1',
    ...positionOf(document, lines, ['furrow']),
  };
}
