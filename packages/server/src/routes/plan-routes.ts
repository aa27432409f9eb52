import { API_PATHS, errorSchema, planRequestSchema } from '@furrow/contract';
import { answerSchema, writtenAnswer } from '@furrow/engine';
import { readWhole } from '../reading/job-reading.ts';
import { readWholeKit } from '../reading/kit-reading.ts';
import { wholeTrials } from '../reading/trials-reading.ts';
import type { Work } from '../work/open-work.ts';
import { nobodyWaits } from './nobody-waits.ts';
import type { ZodServer } from './zod-server.ts';

/** Planning for other programs. */
export function planRoutes(server: ZodServer, work: Work): void {
  server.post(
    API_PATHS.plan,
    {
      schema: {
        summary: 'Plan a job',
        description:
          'With a kit, the plan keeps to what the kit can carry; with trials, its chances are of what they teach. A refusal is a result like a plan; only a text ' +
          'that is no job or no kit is an error.',
        body: planRequestSchema,
        response: {
          200: answerSchema,
          400: errorSchema,
          413: errorSchema,
          422: errorSchema,
          503: errorSchema,
        },
      },
    },
    async (request, reply) => {
      const { text, kit, knowledge } = request.body;
      const read = readWhole(text);
      const question = {
        read,
        kit: kit === undefined ? undefined : readWholeKit(kit),
        knowledge: knowledge === undefined ? undefined : wholeTrials(knowledge),
      };
      return answerSchema.parse(writtenAnswer(await work.answer(question, nobodyWaits(reply)), 'metric'));
    },
  );
}
