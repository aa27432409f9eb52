import { API_PATHS, gaugeSchemas } from '@furrow/contract';
import { GAUGE_READING } from '../reading/gauge-reading.ts';
import { shopFileRoutes } from './shop-file-routes.ts';
import type { ZodServer } from './zod-server.ts';

/** Study and checks of the shop's gauge, and their revisions. */
export function gaugeRoutes(server: ZodServer): void {
  shopFileRoutes(server, {
    storeOf: ({ shop }) => shop.store.gauge,
    noun: 'gauge file',
    path: API_PATHS.gauge,
    schemas: gaugeSchemas,
    reading: GAUGE_READING,
    changed: 'GAUGE_CHANGED_MEANWHILE',
  });
}
