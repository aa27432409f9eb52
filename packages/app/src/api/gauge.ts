import { API_PATHS, type Example, exampleSchema, gaugeSchemas, type SavedShopFile } from '@furrow/contract';
import { z } from 'zod';
import type { Reply } from './failure.ts';
import { request } from './request.ts';

/** The shop's gauge as it is saved; with empty text where none is. */
export function fetchGauge(): Promise<Reply<SavedShopFile>> {
  return request('GET', API_PATHS.gauge, gaugeSchemas.saved);
}

/** Saves it, as the next revision after the one it was made from. */
export function saveGauge(text: string, basedOn: number): Promise<Reply<SavedShopFile>> {
  return request('PUT', API_PATHS.gauge, gaugeSchemas.saved, { text, based_on: basedOn });
}

/** The invented gauge of the demo shop. */
export function fetchGaugeExamples(): Promise<Reply<Example[]>> {
  return request('GET', API_PATHS.gaugeExamples, z.array(exampleSchema));
}
