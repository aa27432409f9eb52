import { API_PATHS, aboutSchema, exampleSchema, PROGRAM_VERSION } from '@furrow/contract';
import type { JobStore } from '@furrow/store';
import { z } from 'zod';
import type { Examples } from '../reading/read-examples.ts';
import type { ZodServer } from './zod-server.ts';

/** What runs here, and the demo jobs and kits that come with it. */
export function aboutRoutes(server: ZodServer, store: JobStore, examples: Examples): void {
  server.get(
    API_PATHS.about,
    { schema: { summary: 'What runs here and where it keeps its data', response: { 200: aboutSchema } } },
    () => ({ program_version: PROGRAM_VERSION, data_folder: store.place, store: store.kind }),
  );
  server.get(
    API_PATHS.examples,
    { schema: { summary: 'The demo jobs', response: { 200: z.array(exampleSchema) } } },
    () => [...examples.jobs],
  );
  server.get(
    API_PATHS.kitExamples,
    { schema: { summary: 'The demo kits', response: { 200: z.array(exampleSchema) } } },
    () => [...examples.kits],
  );
  server.get(
    API_PATHS.knowledgeExamples,
    {
      schema: {
        summary: 'The invented history of the demo shop, as trials files',
        response: { 200: z.array(exampleSchema) },
      },
    },
    () => [...examples.trials],
  );
  server.get(
    API_PATHS.readingsExamples,
    {
      schema: {
        summary: 'What was invented as run and gauged on the demo jobs, by their names',
        response: { 200: z.array(exampleSchema) },
      },
    },
    () => [...examples.readings],
  );
  server.get(
    API_PATHS.gaugeExamples,
    {
      schema: {
        summary: 'The invented gauge of the demo shop, with its study',
        response: { 200: z.array(exampleSchema) },
      },
    },
    () => [...examples.gauges],
  );
}
