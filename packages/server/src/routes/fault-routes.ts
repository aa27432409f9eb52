import {
  API_PATHS,
  errorSchema,
  faultCaseParametersSchema,
  faultCaseSchema,
  faultCountsSchema,
} from '@furrow/contract';
import { Refused } from '../guard/refused.ts';
import { countedFaults, faultCaseIssues } from './counted-faults.ts';
import type { ZodServer } from './zod-server.ts';

/** The shop's own counts of faults found. */
export function faultRoutes(server: ZodServer): void {
  server.get(
    API_PATHS.faultCounts,
    { schema: { summary: 'Counts of the faults found', response: { 200: faultCountsSchema } } },
    async (request) => countedFaults(await request.shop.store.faultCases.list()),
  );
  server.post(
    API_PATHS.faultCounts,
    {
      schema: {
        summary: 'Count a fault found',
        description: 'A case of the same identifier is replaced, so that one sent twice counts once.',
        body: faultCaseSchema,
        response: { 200: faultCountsSchema, 400: errorSchema, 413: errorSchema, 422: errorSchema },
      },
    },
    async (request) => {
      const issues = faultCaseIssues(request.body);
      const [first] = issues;
      if (first !== undefined) {
        throw new Refused('FAULT_EVIDENCE', `Nothing was counted: ${first.message}`, { issues });
      }
      await request.shop.store.faultCases.put(request.body);
      return countedFaults(await request.shop.store.faultCases.list());
    },
  );
  server.delete(
    API_PATHS.faultCase,
    {
      schema: {
        summary: 'Take a fault out of the counts',
        description: 'An identifier that was never counted changes nothing.',
        params: faultCaseParametersSchema,
        response: { 200: faultCountsSchema, 400: errorSchema },
      },
    },
    async (request) => {
      await request.shop.store.faultCases.remove(request.params.id);
      return countedFaults(await request.shop.store.faultCases.list());
    },
  );
}
