import { type Issue, JOB_TEXT_MOST, type ReadJob, readJob } from '@furrow/engine';
import type { JobContent } from '@furrow/store';
import { boundedIssues } from '../guard/bounded.ts';
import { Refused } from '../guard/refused.ts';
import { draftTitle, shownTitle } from './document-title.ts';
import { toMend } from './to-mend.ts';

const UNTITLED = 'Untitled job';

/** What is to be saved of a text: a draft with mistakes is kept like a job that can be planned. */
export function contentOf(text: string): JobContent {
  if (text.length > JOB_TEXT_MOST) {
    throw new Refused(
      'JOB_TOO_LARGE',
      `The text has ${text.length} characters; a job has at most ${JOB_TEXT_MOST}. Nothing was saved.`,
    );
  }
  const outcome = readJob(text);
  return outcome.ok
    ? { text, title: shownTitle(outcome.value.job.title, UNTITLED), revision: outcome.value.revision }
    : { text, title: draftTitle(text, UNTITLED), revision: null };
}

/** The job of a text that has to be a whole one. */
export function readWhole(text: string): ReadJob {
  const outcome = readJob(text);
  if (outcome.ok) return outcome.value;
  const { issues } = outcome;
  throw new Refused('JOB_NOT_READABLE', `The job cannot be planned yet: ${toMend(issues)}.`, { issues });
}

/** What is wrong with a text; empty for a whole job. */
export function issuesOf(text: string): Issue[] {
  const outcome = readJob(text);
  return outcome.ok ? [] : boundedIssues(outcome.issues);
}
