import {
  API_PATHS,
  commissioningConflictSchema,
  commissioningSaveSchema,
  commissioningSchema,
  errorSchema,
  jobParametersSchema,
} from '@furrow/contract';
import { z } from 'zod';
import { jobNotFound } from './saved-job.ts';
import type { ZodServer } from './zod-server.ts';

/** What is ticked, read and found at the rig for a saved job. */
export function commissioningRoutes(server: ZodServer): void {
  server.get(
    API_PATHS.jobCommissioning,
    {
      schema: {
        summary: 'What was ticked, read and found at the rig for a job',
        description: 'As long as nothing was saved, it is empty and its revision number 0.',
        params: jobParametersSchema,
        response: { 200: commissioningSchema, 404: errorSchema },
      },
    },
    async (request) =>
      commissioningSchema.parse(
        (await request.shop.store.commissioning.get(request.params.id)) ?? jobNotFound(request.params.id),
      ),
  );
  server.delete(
    API_PATHS.jobCommissioning,
    {
      schema: {
        summary: 'Erase what was ticked, read and found at the rig for a job for good, with all revisions',
        params: jobParametersSchema,
        response: { 204: z.undefined().describe('Erased; it cannot be brought back.'), 404: errorSchema },
      },
    },
    async (request, reply) => {
      if (!(await request.shop.store.commissioning.erase(request.params.id))) jobNotFound(request.params.id);
      return reply.status(204).send();
    },
  );
  server.put(
    API_PATHS.jobCommissioning,
    {
      schema: {
        summary: 'Save what was ticked, read and found at the rig for a job',
        description:
          'The whole of it is sent; an entry that stands as it was keeps its time. Refused if somebody else ' +
          'saved since; nothing is overwritten.',
        params: jobParametersSchema,
        body: commissioningSaveSchema,
        response: {
          200: commissioningSchema,
          400: errorSchema,
          404: errorSchema,
          409: commissioningConflictSchema,
          413: errorSchema,
        },
      },
    },
    async (request, reply) => {
      const { based_on, ...entry } = request.body;
      const outcome = await request.shop.store.commissioning.save(request.params.id, entry, based_on);
      if (outcome.ok) return commissioningSchema.parse(outcome.commissioning);
      if (outcome.code === 'JOB_NOT_FOUND') return jobNotFound(request.params.id);
      const newer = commissioningSchema.parse(outcome.newer);
      return reply.status(409).send({
        code: outcome.code,
        message:
          `The readings were saved elsewhere meanwhile: they are at revision ${newer.revision_number}, ` +
          `yours were made from ${based_on}. Nothing was overwritten.`,
        newer,
      });
    },
  );
}
