import { API_PATHS, type HistoryEntry, historyEntrySchema, historyQuestionSchema } from '@furrow/contract';
import type { Company, KeptEntry } from '@furrow/store';
import { z } from 'zod';
import type { ZodServer } from './zod-server.ts';

const response = { 200: z.array(historyEntrySchema) };

/** Who changed what in the shop. */
export function historyRoutes(server: ZodServer): void {
  server.get(
    API_PATHS.history,
    {
      schema: {
        summary: 'Who changed what in the shop, newest first',
        description: 'Nothing is ever changed in it; each entry holds the one before it by its hash.',
        querystring: historyQuestionSchema,
        response,
      },
    },
    async (request) => (await request.shop.store.history.list(request.query)).map(told),
  );
}

/** Who changed what of people, shops and machines. */
export function companyHistoryRoutes(server: ZodServer, company: Pick<Company, 'history'>): void {
  server.get(
    API_PATHS.companyHistory,
    {
      schema: {
        summary: 'Who let whom in, opened shops and set rights, newest first',
        querystring: historyQuestionSchema,
        response,
      },
    },
    async (request) => (await company.history.list(request.query)).map(told),
  );
}

function told({ shop: _, who, ...entry }: KeptEntry): HistoryEntry {
  return { ...entry, who: who.name, who_id: who.id };
}
