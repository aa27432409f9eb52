import {
  API_PATHS,
  type CardOptions,
  cardRequestSchema,
  errorSchema,
  jobParametersSchema,
  PROGRAM_VERSION,
  type SavedCardOptions,
  savedCardOptionSchema,
} from '@furrow/contract';
import { answerJob, type ReadJob, type ReadKit } from '@furrow/engine';
import { cardDocument, PAPER_STYLESHEET, type PaperDocument, renderHtml, renderPdf } from '@furrow/papers';
import type { Store } from '@furrow/store';
import type { FastifyReply } from 'fastify';
import { z } from 'zod';
import { readWhole } from './job-reading.ts';
import { readWholeKit } from './kit-reading.ts';
import { storedJob } from './saved-job.ts';
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
export function cardRoutes(server: ZodServer, store: Store): void {
  server.post(
    API_PATHS.card,
    {
      schema: {
        summary: 'The set-up card of a job that need not be saved',
        body: cardRequestSchema,
        response: { 200: pdfResponse, 400: errorSchema, 413: errorSchema, 422: errorSchema },
      },
    },
    (request, reply) => {
      const { text, kit } = request.body;
      const read = readWhole(text);
      const document = cardOf(read, kit === undefined ? undefined : readWholeKit(kit), request.body);
      return sendPdf(reply, document);
    },
  );
  server.get(
    API_PATHS.jobCardPdf,
    {
      schema: {
        summary: 'The set-up card of a saved job',
        params: jobParametersSchema,
        querystring: savedCardOptionSchema,
        response: { 200: pdfResponse, 400: errorSchema, 404: errorSchema, 422: errorSchema },
      },
    },
    async (request, reply) => sendPdf(reply, await savedCard(store, request.params.id, request.query)),
  );
  server.get(
    API_PATHS.jobCardPage,
    {
      schema: { hide: true, params: jobParametersSchema, querystring: savedCardOptionSchema },
      config: { framed: true },
    },
    async (request, reply) => {
      const document = await savedCard(store, request.params.id, request.query);
      return reply.type('text/html; charset=utf-8').send(renderHtml(document));
    },
  );
  server.get(API_PATHS.paperStylesheet, { schema: { hide: true } }, (_request, reply) =>
    reply.type('text/css; charset=utf-8').send(PAPER_STYLESHEET),
  );
}

/** The card of a saved job, planned with the saved kit if there is one and it is wanted. */
async function savedCard(store: Store, id: string, options: SavedCardOptions): Promise<PaperDocument> {
  const read = readWhole((await storedJob(store, id)).text);
  const saved = options.kit === 'shop' ? await store.kit.get() : undefined;
  return cardOf(read, saved && readWholeKit(saved.text, 'The kit saved here'), options);
}

function cardOf(read: ReadJob, kit: ReadKit | undefined, { units, paper }: CardOptions): PaperDocument {
  return cardDocument(read, answerJob(read, PROGRAM_VERSION, kit), { units, paper });
}

/** The bytes of the card, and the headers that go with them. */
async function sendPdf(reply: FastifyReply, document: PaperDocument): Promise<Buffer> {
  const bytes = await renderPdf(document);
  reply.type('application/pdf').header('content-disposition', 'inline; filename="set-up-card.pdf"');
  return Buffer.from(bytes);
}
