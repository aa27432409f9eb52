import {
  API_PATHS,
  type CardOptions,
  cardOptionSchema,
  cardRequestSchema,
  errorSchema,
  jobParametersSchema,
  PROGRAM_VERSION,
} from '@furrow/contract';
import { answerJob } from '@furrow/engine';
import { cardDocument, PAPER_STYLESHEET, type PaperDocument, renderHtml, renderPdf } from '@furrow/papers';
import type { JobStore } from '@furrow/store';
import type { FastifyReply } from 'fastify';
import { z } from 'zod';
import { readWhole } from './job-reading.ts';
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
export function cardRoutes(server: ZodServer, store: JobStore): void {
  server.post(
    API_PATHS.card,
    {
      schema: {
        summary: 'The set-up card of a job that need not be saved',
        body: cardRequestSchema,
        response: { 200: pdfResponse, 400: errorSchema, 413: errorSchema, 422: errorSchema },
      },
    },
    (request, reply) => sendPdf(reply, cardOf(request.body.text, request.body)),
  );
  server.get(
    API_PATHS.jobCardPdf,
    {
      schema: {
        summary: 'The set-up card of a saved job',
        params: jobParametersSchema,
        querystring: cardOptionSchema,
        response: { 200: pdfResponse, 400: errorSchema, 404: errorSchema, 422: errorSchema },
      },
    },
    async (request, reply) => {
      const { text } = await storedJob(store, request.params.id);
      return sendPdf(reply, cardOf(text, request.query));
    },
  );
  server.get(
    API_PATHS.jobCardPage,
    {
      schema: { hide: true, params: jobParametersSchema, querystring: cardOptionSchema },
      config: { framed: true },
    },
    async (request, reply) => {
      const { text } = await storedJob(store, request.params.id);
      return reply.type('text/html; charset=utf-8').send(renderHtml(cardOf(text, request.query)));
    },
  );
  server.get(API_PATHS.paperStylesheet, { schema: { hide: true } }, (_request, reply) =>
    reply.type('text/css; charset=utf-8').send(PAPER_STYLESHEET),
  );
}

function cardOf(text: string, { units, paper }: CardOptions): PaperDocument {
  const read = readWhole(text);
  return cardDocument(read, answerJob(read, PROGRAM_VERSION), { units, paper });
}

/** The bytes of the card, and the headers that go with them. */
async function sendPdf(reply: FastifyReply, document: PaperDocument): Promise<Buffer> {
  const bytes = await renderPdf(document);
  reply.type('application/pdf').header('content-disposition', 'inline; filename="set-up-card.pdf"');
  return Buffer.from(bytes);
}
