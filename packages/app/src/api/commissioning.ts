import {
  API_PATHS,
  type Commissioning,
  type CommissioningSave,
  commissioningSchema,
  fillPath,
} from '@furrow/contract';
import type { Reply } from './failure.ts';
import { request } from './request.ts';

/** What was ticked, read and found at the rig for a job; revision 0 where nothing was saved yet. */
export function fetchCommissioning(id: string): Promise<Reply<Commissioning>> {
  return request('GET', fillPath(API_PATHS.jobCommissioning, { id }), commissioningSchema);
}

/** Saves the whole of it, as the next revision after the one it was made from. */
export function saveCommissioning(id: string, save: CommissioningSave): Promise<Reply<Commissioning>> {
  return request('PUT', fillPath(API_PATHS.jobCommissioning, { id }), commissioningSchema, save);
}
