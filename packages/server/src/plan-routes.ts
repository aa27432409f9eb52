import { API_PATHS, answerSchema, errorSchema, PROGRAM_VERSION, planRequestSchema } from '@furrow/contract';
import { answerJob } from '@furrow/engine';
import { readWhole } from './job-reading.ts';
import { readWholeKit } from './kit-reading.ts';
import type { ZodServer } from './zod-server.ts';

/** Planning for other programs. */
export function planRoutes(server: ZodServer): void {
  server.post(
    API_PATHS.plan,
    {
      schema: {
        summary: 'Plan a job',
        description:
          'With a kit, the plan keeps to what the kit can carry. A refusal is a result like a plan; only a text ' +
          'that is no job or no kit is an error.',
        body: planRequestSchema,
        response: { 200: answerSchema, 400: errorSchema, 413: errorSchema, 422: errorSchema },
      },
    },
    (request) => {
      const { text, kit } = request.body;
      const read = readWhole(text);
      return answerSchema.parse(
        answerJob(read, PROGRAM_VERSION, kit === undefined ? undefined : readWholeKit(kit)),
      );
    },
  );
}
