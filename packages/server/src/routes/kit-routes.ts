import { API_PATHS, kitSchemas } from '@furrow/contract';
import { KIT_READING } from '../reading/kit-reading.ts';
import { shopFileRoutes } from './shop-file-routes.ts';
import type { ZodServer } from './zod-server.ts';

/** The shop's one kit and its revisions. */
export function kitRoutes(server: ZodServer): void {
  shopFileRoutes(server, {
    storeOf: ({ shop }) => shop.store.kit,
    noun: 'kit',
    path: API_PATHS.kit,
    schemas: kitSchemas,
    reading: KIT_READING,
    changed: 'KIT_CHANGED_MEANWHILE',
  });
}
