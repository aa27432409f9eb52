import {
  API_PATHS,
  type CardOptions,
  cardRequestSchema,
  errorSchema,
  jobParametersSchema,
  type SavedCardOptions,
  savedCardOptionSchema,
} from '@furrow/contract';
import type { ReadJob, ReadKit } from '@furrow/engine';
import { PAPER_FACES, PAPER_STYLESHEET, paperFace } from '@furrow/papers';
import type { Store } from '@furrow/store';
import type { FastifyReply } from 'fastify';
import { z } from 'zod';
import { readWhole } from '../reading/job-reading.ts';
import { readWholeKit } from '../reading/kit-reading.ts';
import { wholeTrials } from '../reading/trials-reading.ts';
import type { Work } from '../work/open-work.ts';
import type { CardSource } from '../work/worker.ts';
import { nobodyWaits } from './nobody-waits.ts';
import { storedJob } from './saved-job.ts';
import { shopKit, shopTrials } from './shop-files.ts';
import type { ZodServer } from './zod-server.ts';

const pdfResponse = {
  description: 'The set-up card.',
  content: {
    'application/pdf': {
      schema: z.custom<Buffer>().meta({ type: 'string', contentMediaType: 'application/pdf' }),
    },
  },
};

/** The set-up card, as PDF and as a page: both come from the same document. */
export function cardRoutes(server: ZodServer, work: Work): void {
  const cardOf = async (
    { read, kit, knowledge }: Chosen,
    { units, paper }: CardOptions,
    signal: AbortSignal,
  ): Promise<CardSource> => {
    const answer = await work.answer({ read, kit, knowledge }, signal);
    return { read, answer, options: { units, paper } };
  };
  server.post(
    API_PATHS.card,
    {
      schema: {
        summary: 'The set-up card of a job that need not be saved',
        body: cardRequestSchema,
        response: {
          200: pdfResponse,
          400: errorSchema,
          413: errorSchema,
          422: errorSchema,
          503: errorSchema,
        },
      },
    },
    async (request, reply) => {
      const { text, kit, knowledge } = request.body;
      const chosen = {
        read: readWhole(text),
        kit: kit === undefined ? undefined : readWholeKit(kit),
        knowledge: knowledge === undefined ? undefined : wholeTrials(knowledge),
      };
      const signal = nobodyWaits(reply);
      const card = await cardOf(chosen, request.body, signal);
      return sendPdf(reply, await work.make('cardPdf', card, signal));
    },
  );
  server.get(
    API_PATHS.jobCardPdf,
    {
      schema: {
        summary: 'The set-up card of a saved job',
        params: jobParametersSchema,
        querystring: savedCardOptionSchema,
        response: {
          200: pdfResponse,
          400: errorSchema,
          404: errorSchema,
          422: errorSchema,
          503: errorSchema,
        },
      },
    },
    async (request, reply) => {
      const chosen = await savedCard(request.shop.store, request.params.id, request.query);
      const signal = nobodyWaits(reply);
      const card = await cardOf(chosen, request.query, signal);
      return sendPdf(reply, await work.make('cardPdf', card, signal));
    },
  );
  server.get(
    API_PATHS.jobCardPage,
    {
      schema: { hide: true, params: jobParametersSchema, querystring: savedCardOptionSchema },
      config: { framed: true },
    },
    async (request, reply) => {
      const chosen = await savedCard(request.shop.store, request.params.id, request.query);
      const signal = nobodyWaits(reply);
      const card = await cardOf(chosen, request.query, signal);
      return reply.type('text/html; charset=utf-8').send(await work.make('cardPage', card, signal));
    },
  );
  server.get(API_PATHS.paperStylesheet, { schema: { hide: true } }, (_request, reply) =>
    reply.type('text/css; charset=utf-8').send(PAPER_STYLESHEET),
  );
  for (const { path, weight } of PAPER_FACES)
    server.get(path, { schema: { hide: true } }, (_request, reply) =>
      reply
        .type('font/woff')
        .header('cache-control', 'max-age=86400')
        .send(Buffer.from(paperFace(weight))),
    );
}

/** What a card is planned from. */
interface Chosen {
  readonly read: ReadJob;
  readonly kit: ReadKit | undefined;
  /** Text of the trials that the shop has learned from. */
  readonly knowledge: string | undefined;
}

/** A saved job, and the saved kit and trials if there are any and they are asked for. */
async function savedCard(store: Store, id: string, options: SavedCardOptions): Promise<Chosen> {
  const read = readWhole((await storedJob(store, id)).text);
  const kit = options.kit === 'shop' ? await shopKit(store) : undefined;
  const knowledge = options.history === 'shop' ? await shopTrials(store) : undefined;
  return { read, kit, knowledge };
}

/** The bytes of the card, and the headers that go with them. */
function sendPdf(reply: FastifyReply, bytes: Uint8Array): Buffer {
  reply.type('application/pdf').header('content-disposition', 'inline; filename="set-up-card.pdf"');
  return Buffer.from(bytes);
}
