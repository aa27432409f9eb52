import {
  API_PATHS,
  errorSchema,
  loggerKeepSchema,
  loggerParametersSchema,
  type SavedLogger,
  savedLoggerSchema,
} from '@furrow/contract';
import { readLogger } from '@furrow/engine';
import type { FastifyRequest } from 'fastify';
import { z } from 'zod';
import { Refused } from '../guard/refused.ts';
import { toMend } from '../reading/to-mend.ts';
import type { ZodServer } from './zod-server.ts';

/** How the files of the shop's loggers are read: kept for the next file of the same logger. */
export function loggerRoutes(server: ZodServer): void {
  const list = async ({ shop: { store } }: FastifyRequest): Promise<SavedLogger[]> =>
    (await store.loggers.list()).map((logger) => ({ ...logger, columns: columnsOf(logger.text) }));
  server.get(
    API_PATHS.loggers,
    {
      schema: { summary: 'Logger descriptions, newest first', response: { 200: z.array(savedLoggerSchema) } },
    },
    list,
  );
  server.post(
    API_PATHS.loggers,
    {
      schema: {
        summary: 'Keep a logger description',
        description: 'It is known by its content: the same again changes nothing.',
        body: loggerKeepSchema,
        response: { 200: z.array(savedLoggerSchema), 400: errorSchema, 413: errorSchema, 422: errorSchema },
      },
    },
    async (request) => {
      const { text } = request.body;
      const read = readLogger(text);
      if (!read.ok) {
        const [first] = read.issues;
        throw new Refused(first!.code, `The logger description was not kept: ${toMend(read.issues)}.`, {
          issues: read.issues,
        });
      }
      await request.shop.store.loggers.put({
        revision: read.value.revision,
        name: read.value.name ?? '',
        text,
      });
      return list(request);
    },
  );
  server.delete(
    API_PATHS.logger,
    {
      schema: {
        summary: 'Erase a logger description for good',
        description: 'One that is not there changes nothing.',
        params: loggerParametersSchema,
        response: { 200: z.array(savedLoggerSchema) },
      },
    },
    async (request) => {
      await request.shop.store.loggers.erase(request.params.revision);
      return list(request);
    },
  );
}

function columnsOf(text: string): string[] {
  const read = readLogger(text);
  const columns = read.ok ? (read.value.given.columns ?? []) : [];
  return columns.flatMap(({ name }) => (name === undefined ? [] : [name]));
}
