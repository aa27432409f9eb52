import {
  API_PATHS,
  type Example,
  exampleSchema,
  kitSchemas,
  type SavedShopFile,
  type ShopFileRevisionSummary,
} from '@furrow/contract';
import { z } from 'zod';
import type { Reply } from './failure.ts';
import { request } from './request.ts';

/** The shop's kit as it is saved; with empty text where none is. */
export function fetchKit(): Promise<Reply<SavedShopFile>> {
  return request('GET', API_PATHS.kit, kitSchemas.saved);
}

/** Saves the kit, as the next revision after the one it was made from. */
export function saveKit(text: string, basedOn: number): Promise<Reply<SavedShopFile>> {
  return request('PUT', API_PATHS.kit, kitSchemas.saved, { text, based_on: basedOn });
}

/** Every revision of the kit, newest first. */
export function fetchKitRevisions(): Promise<Reply<ShopFileRevisionSummary[]>> {
  return request('GET', `${API_PATHS.kit}/revisions`, z.array(kitSchemas.summary));
}

/** One revision of the kit with its text. */
export function fetchKitRevision(number: number): Promise<Reply<z.output<typeof kitSchemas.revision>>> {
  return request('GET', `${API_PATHS.kit}/revisions/${number}`, kitSchemas.revision);
}

/** Erases every revision of the kit but the newest for good. */
export function eraseEarlierKits(): Promise<Reply<unknown>> {
  return request('DELETE', `${API_PATHS.kit}/revisions`, z.unknown());
}

/** The demo kits that come with the program. */
export function fetchKitExamples(): Promise<Reply<Example[]>> {
  return request('GET', API_PATHS.kitExamples, z.array(exampleSchema));
}
