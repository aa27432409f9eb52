import {
  API_PATHS,
  type BinnedJob,
  binnedJobSchema,
  type CardRequest,
  type Example,
  exampleSchema,
  fillPath,
  type JobSummary,
  jobSummarySchema,
  type RevisionSummary,
  revisionSummarySchema,
  type SavedJob,
  type SavedRevision,
  savedJobSchema,
  savedRevisionSchema,
} from '@furrow/contract';
import { z } from 'zod';
import type { Reply } from './failure.ts';
import { keepAnswer } from './kept-answers.ts';
import { request, requestFile } from './request.ts';

/** The demo jobs that come with the program. */
export function fetchExamples(): Promise<Reply<Example[]>> {
  return request('GET', API_PATHS.examples, z.array(exampleSchema));
}

/** The saved jobs. */
export function fetchJobs(): Promise<Reply<JobSummary[]>> {
  return request('GET', API_PATHS.jobs, z.array(jobSummarySchema));
}

/** The jobs in the bin. */
export function fetchBin(): Promise<Reply<BinnedJob[]>> {
  return request('GET', API_PATHS.bin, z.array(binnedJobSchema));
}

/** One saved job with its text. */
export function fetchJob(id: string): Promise<Reply<SavedJob>> {
  return request('GET', fillPath(API_PATHS.job, { id }), savedJobSchema);
}

/** Every revision of a saved job, newest first. */
export function fetchRevisions(id: string): Promise<Reply<RevisionSummary[]>> {
  return request('GET', fillPath(API_PATHS.jobRevisions, { id }), z.array(revisionSummarySchema));
}

/** One revision of a saved job with its text. */
export function fetchRevision(id: string, number: number): Promise<Reply<SavedRevision>> {
  return request('GET', fillPath(API_PATHS.jobRevision, { id, number }), savedRevisionSchema);
}

/** Saves a job for the first time, under an identifier made here: sent again, it is not saved twice. */
export async function createJob(id: string, text: string): Promise<Reply<SavedJob>> {
  const reply = await request('POST', API_PATHS.jobs, savedJobSchema, { id, text });
  if (reply.ok) keepAnswer(fillPath(API_PATHS.job, { id }), reply.value);
  return reply;
}

/** Saves a job again, as the next revision after the one it was made from. */
export function saveJob(id: string, text: string, basedOn: number): Promise<Reply<SavedJob>> {
  return request('PUT', fillPath(API_PATHS.job, { id }), savedJobSchema, { text, based_on: basedOn });
}

/** Makes a copy of a saved job. */
export function duplicateJob(id: string): Promise<Reply<SavedJob>> {
  return request('POST', fillPath(API_PATHS.jobDuplicate, { id }), savedJobSchema);
}

/** Moves a job to the bin. */
export function binJob(id: string): Promise<Reply<unknown>> {
  return request('DELETE', fillPath(API_PATHS.job, { id }), z.unknown());
}

/** Takes a job back out of the bin. */
export function restoreJob(id: string): Promise<Reply<unknown>> {
  return request('POST', fillPath(API_PATHS.jobRestore, { id }), z.unknown());
}

/** Erases a job in the bin for good, with all that is kept of it. */
export function eraseJob(id: string): Promise<Reply<unknown>> {
  return request('DELETE', fillPath(API_PATHS.binnedJob, { id }), z.unknown());
}

/** Erases every revision of a job but the newest for good. */
export function eraseEarlierRevisions(id: string): Promise<Reply<unknown>> {
  return request('DELETE', fillPath(API_PATHS.jobRevisions, { id }), z.unknown());
}

/** The set-up card of a job as a PDF. */
export function fetchCard(card: CardRequest): Promise<Reply<Blob>> {
  return requestFile(API_PATHS.card, card);
}
