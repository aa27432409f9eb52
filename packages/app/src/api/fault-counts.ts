import { API_PATHS, type CountedFaults, type FaultCase, faultCountsSchema, fillPath } from '@furrow/contract';
import type { Reply } from './failure.ts';
import { request } from './request.ts';

/** What the shop has counted of causes found and of what was seen with them. */
export function fetchFaultCounts(): Promise<Reply<CountedFaults>> {
  return request('GET', API_PATHS.faultCounts, faultCountsSchema);
}

/** Counts a cause that was found; the same case again replaces itself. */
export function countFault(found: FaultCase): Promise<Reply<CountedFaults>> {
  return request('POST', API_PATHS.faultCounts, faultCountsSchema, found);
}

/** Takes a case back out of the counts. */
export function uncountFault(id: string): Promise<Reply<CountedFaults>> {
  return request('DELETE', fillPath(API_PATHS.faultCase, { id }), faultCountsSchema);
}
