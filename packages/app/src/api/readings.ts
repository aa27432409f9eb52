import {
  API_PATHS,
  type Example,
  exampleSchema,
  fillPath,
  readingsSchemas,
  type SavedShopFile,
  type ShopFileRevisionSummary,
} from '@furrow/contract';
import { z } from 'zod';
import type { Reply } from './failure.ts';
import { fetchFile, request } from './request.ts';

/** What was run and gauged on a job; with empty text where nothing was saved yet. */
export function fetchReadings(id: string): Promise<Reply<SavedShopFile>> {
  return request('GET', fillPath(API_PATHS.jobReadings, { id }), readingsSchemas.saved);
}

/** Saves it, as the next revision after the one it was made from. */
export function saveReadings(id: string, text: string, basedOn: number): Promise<Reply<SavedShopFile>> {
  const body = { text, based_on: basedOn };
  return request('PUT', fillPath(API_PATHS.jobReadings, { id }), readingsSchemas.saved, body);
}

/** Every revision of it, newest first. */
export function fetchReadingsRevisions(id: string): Promise<Reply<ShopFileRevisionSummary[]>> {
  const path = fillPath(API_PATHS.jobReadingsRevisions, { id });
  return request('GET', path, z.array(readingsSchemas.summary));
}

/** One revision of it with its text. */
export function fetchReadingsRevision(id: string, number: number): Promise<Reply<{ readonly text: string }>> {
  return request('GET', fillPath(API_PATHS.jobReadingsRevision, { id, number }), readingsSchemas.revision);
}

/** What was invented as run and gauged on the demo jobs, by their names. */
export function fetchReadingsExamples(): Promise<Reply<Example[]>> {
  return request('GET', API_PATHS.readingsExamples, z.array(exampleSchema));
}

/** A file that was measured on a job, byte for byte. */
export function fetchMeasured(id: string, sha256: string): Promise<Reply<Blob>> {
  return fetchFile(fillPath(API_PATHS.jobOriginal, { id, sha256 }));
}
