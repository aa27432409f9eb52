import { API_PATHS, aboutSchema, type Example, exampleSchema, PROGRAM_VERSION } from '@furrow/contract';
import type { JobStore } from '@furrow/store';
import { z } from 'zod';
import type { ZodServer } from './zod-server.ts';

/** What runs here, and the demo jobs that come with it. */
export function aboutRoutes(server: ZodServer, store: JobStore, examples: readonly Example[]): void {
  server.get(
    API_PATHS.about,
    { schema: { summary: 'What runs here and where it keeps its data', response: { 200: aboutSchema } } },
    () => ({ program_version: PROGRAM_VERSION, data_folder: store.place, store: store.kind }),
  );
  server.get(
    API_PATHS.examples,
    { schema: { summary: 'The demo jobs', response: { 200: z.array(exampleSchema) } } },
    () => [...examples],
  );
}
