import { API_PATHS, answerSchema, errorSchema, jobTextSchema, PROGRAM_VERSION } from '@furrow/contract';
import { answerJob } from '@furrow/engine';
import { readWhole } from './job-reading.ts';
import type { ZodServer } from './zod-server.ts';

/** Planning for other programs. */
export function planRoutes(server: ZodServer): void {
  server.post(
    API_PATHS.plan,
    {
      schema: {
        summary: 'Plan a job',
        description: 'A refusal is a result like a plan; only a text that is no job is an error.',
        body: jobTextSchema,
        response: { 200: answerSchema, 400: errorSchema, 413: errorSchema, 422: errorSchema },
      },
    },
    (request) => answerSchema.parse(answerJob(readWhole(request.body.text), PROGRAM_VERSION)),
  );
}
