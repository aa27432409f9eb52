import {
  API_PATHS,
  fillPath,
  type Original,
  originalSchema,
  type RunBegin,
  type RunKeep,
  type SavedLogger,
  type SavedRun,
  savedLoggerSchema,
  savedRunSchema,
} from '@furrow/contract';
import { z } from 'zod';
import type { Reply } from './failure.ts';
import { fetchFile, request, sendFile } from './request.ts';

const loggers = z.array(savedLoggerSchema);

/** The runs of a saved job, newest first. */
export function fetchRuns(job: string): Promise<Reply<SavedRun[]>> {
  return request('GET', fillPath(API_PATHS.jobRuns, { id: job }), z.array(savedRunSchema));
}

/** Sends the file of a run, byte for byte. */
export function sendOriginal(file: Blob): Promise<Reply<Original>> {
  return sendFile(API_PATHS.originals, file, originalSchema);
}

/** Keeps a run of a file that was sent; sent again under its identifier, it is kept once. */
export function keepRun(job: string, run: RunKeep): Promise<Reply<SavedRun>> {
  return request('POST', fillPath(API_PATHS.jobRuns, { id: job }), savedRunSchema, run);
}

/** The file of a run, as the logger wrote it. */
export function fetchOriginal(run: string): Promise<Reply<Blob>> {
  return fetchFile(fillPath(API_PATHS.runOriginal, { id: run }));
}

/** Where the file of a run, or its rows as Parquet, can be had. */
export function runFilePath(run: string, of: 'runOriginal' | 'runParquet'): string {
  return fillPath(API_PATHS[of], { id: run });
}

/** Erases a run for good, with its file. */
export function eraseRun(run: string): Promise<Reply<unknown>> {
  return request('DELETE', fillPath(API_PATHS.run, { id: run }), z.unknown());
}

/** Begins a run whose readings come in as it is run. */
export function beginRun(job: string, run: RunBegin): Promise<Reply<SavedRun>> {
  return request('POST', fillPath(API_PATHS.jobLive, { id: job }), savedRunSchema, run);
}

/** Ends a live run: what came in is its file. */
export function endRun(run: string): Promise<Reply<SavedRun>> {
  return request('POST', fillPath(API_PATHS.runEnd, { id: run }), savedRunSchema);
}

/** Where everything that comes in of a live run can be listened to, and where readings can be sent. */
export function livePath(run: string, of: 'runEvents' | 'runFrames'): string {
  return fillPath(API_PATHS[of], { id: run });
}

/** Logger descriptions of the shop. */
export function fetchLoggers(): Promise<Reply<SavedLogger[]>> {
  return request('GET', API_PATHS.loggers, loggers);
}

/** Keeps a logger description. */
export function keepLogger(text: string): Promise<Reply<SavedLogger[]>> {
  return request('POST', API_PATHS.loggers, loggers, { text });
}

/** Erases a logger description for good. */
export function eraseLogger(revision: string): Promise<Reply<SavedLogger[]>> {
  return request('DELETE', fillPath(API_PATHS.logger, { revision }), loggers);
}
