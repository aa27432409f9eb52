import {
  API_PATHS,
  type Example,
  exampleSchema,
  knowledgeSchemas,
  type SavedShopFile,
  type ShopFileRevisionSummary,
} from '@furrow/contract';
import { z } from 'zod';
import type { Reply } from './failure.ts';
import { request } from './request.ts';

/** What the shop has tried and gauged, as it is saved; with empty text where nothing is. */
export function fetchTrials(): Promise<Reply<SavedShopFile>> {
  return request('GET', API_PATHS.knowledge, knowledgeSchemas.saved);
}

/** Every revision of it, newest first. */
export function fetchTrialsRevisions(): Promise<Reply<ShopFileRevisionSummary[]>> {
  return request('GET', API_PATHS.knowledgeRevisions, z.array(knowledgeSchemas.summary));
}

/** Saves it, as the next revision after the one it was made from. */
export function saveTrials(text: string, basedOn: number): Promise<Reply<SavedShopFile>> {
  return request('PUT', API_PATHS.knowledge, knowledgeSchemas.saved, { text, based_on: basedOn });
}

/** The invented history of the demo shop. */
export function fetchTrialsExamples(): Promise<Reply<Example[]>> {
  return request('GET', API_PATHS.knowledgeExamples, z.array(exampleSchema));
}
