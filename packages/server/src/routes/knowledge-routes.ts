import { API_PATHS, knowledgeSchemas } from '@furrow/contract';
import { TRIALS_READING } from '../reading/trials-reading.ts';
import { shopFileRoutes } from './shop-file-routes.ts';
import type { ZodServer } from './zod-server.ts';

/** What the shop has tried and gauged, and its revisions. */
export function knowledgeRoutes(server: ZodServer): void {
  shopFileRoutes(server, {
    storeOf: ({ shop }) => shop.store.knowledge,
    noun: 'trials file',
    path: API_PATHS.knowledge,
    schemas: knowledgeSchemas,
    reading: TRIALS_READING,
    changed: 'KNOWLEDGE_CHANGED_MEANWHILE',
  });
}
