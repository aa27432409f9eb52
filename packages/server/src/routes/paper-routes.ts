import {
  API_PATHS,
  errorSchema,
  examplePaperParametersSchema,
  exampleParametersSchema,
  filledPaperSchema,
  fillPath,
  jobPaperParametersSchema,
  jobParametersSchema,
  type PaperChoices,
  type PaperList,
  paperListSchema,
  paperOptionSchema,
  printedSchema,
} from '@furrow/contract';
import type { Store } from '@furrow/store';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { z } from 'zod';
import { Refused } from '../guard/refused.ts';
import type { Examples } from '../reading/read-examples.ts';
import type { Work } from '../work/open-work.ts';
import { isPaperFile, type PaperSource, type PossibleFile, type SentFile } from '../work/paper-file.ts';
import { nobodyWaits } from './nobody-waits.ts';
import { examplePaperSource, filledSource, savedPaperSource } from './paper-source.ts';
import { printedStates, releaseOf } from './printed-state.ts';
import { jobNotFound } from './saved-job.ts';
import { shopGauge } from './shop-files.ts';
import type { ZodServer } from './zod-server.ts';

const binary = z.custom<Buffer>().meta({ type: 'string', format: 'binary' });
const fileResponse = {
  description: 'The paper or the drawing.',
  content: {
    'application/pdf': { schema: binary },
    'image/svg+xml': { schema: binary },
    'image/vnd.dxf': { schema: binary },
  },
};
const refusals = { 400: errorSchema, 404: errorSchema, 422: errorSchema, 503: errorSchema };

/** The papers and drawings of saved jobs and of demo jobs, and which of them were handed out. */
export function paperRoutes(server: ZodServer, examples: Examples, work: Work): void {
  const demo = (
    { shop }: FastifyRequest,
    name: string,
    choices: PaperChoices,
    signal: AbortSignal,
  ): Promise<PaperSource> => examplePaperSource({ ...shop, work, signal }, examples, name, choices);
  const saved: SavedSource = async (id, choices, request, signal, file) => {
    const { shop, who } = request;
    const source = await savedPaperSource({ ...shop, work, signal }, id, choices, addressOf(request, id));
    if (who === null || file === undefined) return source;
    const released = await releaseOf(shop.store, id, file, source);
    return { ...source, options: { ...source.options, released } };
  };
  savedRoutes(server, work, saved);
  server.get(
    API_PATHS.examplePapers,
    {
      schema: {
        summary: 'The papers and drawings of a demo job',
        params: exampleParametersSchema,
        querystring: paperOptionSchema,
        response: { 200: paperListSchema, ...refusals },
      },
    },
    async (request, reply) => {
      const signal = nobodyWaits(reply);
      const source = await demo(request, request.params.name, request.query, signal);
      return listOf(source, await work.make('list', source, signal), new Map());
    },
  );
  server.get(
    API_PATHS.examplePaper,
    {
      schema: {
        summary: 'A paper or a drawing of a demo job',
        params: examplePaperParametersSchema,
        querystring: paperOptionSchema,
        response: { 200: fileResponse, ...refusals },
      },
    },
    async (request, reply) => {
      const { name, file } = request.params;
      const signal = nobodyWaits(reply);
      const source = await demo(request, name, request.query, signal);
      return sendFile(reply, await work.make('file', { source, name: file }, signal));
    },
  );
  server.post(
    API_PATHS.examplePaper,
    {
      schema: {
        summary: 'A paper of a demo job, filled in from a readings file',
        params: examplePaperParametersSchema,
        querystring: paperOptionSchema,
        body: filledPaperSchema,
        response: { 200: fileResponse, ...refusals },
      },
    },
    async (request, reply) => {
      const { name, file } = request.params;
      const signal = nobodyWaits(reply);
      // in a shop that keeps no gauge the readings of a demo are the demo gauge's
      const gauge = (await shopGauge(request.shop.store)) ?? examples.gauges[0]?.text;
      const source = filledSource(
        await demo(request, name, request.query, signal),
        request.body.readings,
        gauge,
      );
      return sendFile(reply, await work.make('file', { source, name: file }, signal));
    },
  );
  server.get(
    API_PATHS.examplePaperPage,
    {
      schema: { hide: true, params: examplePaperParametersSchema, querystring: paperOptionSchema },
      config: { framed: true },
    },
    async (request, reply) => {
      const { name, file } = request.params;
      const signal = nobodyWaits(reply);
      const source = await demo(request, name, request.query, signal);
      return sendPage(reply, await work.make('page', { source, kind: file }, signal));
    },
  );
}

/** What the papers of a saved job are made of, and where one is named, which account released it. */
type SavedSource = (
  id: string,
  choices: PaperChoices,
  request: FastifyRequest,
  signal: AbortSignal,
  file?: string,
) => Promise<PaperSource>;

function savedRoutes(server: ZodServer, work: Work, saved: SavedSource): void {
  server.get(
    API_PATHS.jobPapers,
    {
      schema: {
        summary: 'The papers and drawings of a saved job, and which were handed out',
        params: jobParametersSchema,
        querystring: paperOptionSchema,
        response: { 200: paperListSchema, ...refusals },
      },
    },
    async (request, reply) => {
      const { id } = request.params;
      const signal = nobodyWaits(reply);
      const source = await saved(id, request.query, request, signal);
      const possible = await work.make('list', source, signal);
      return listOf(source, possible, await printedStates(request.shop.store, id, source));
    },
  );
  server.get(
    API_PATHS.jobPaper,
    {
      schema: {
        summary: 'A paper or a drawing of a saved job',
        params: jobPaperParametersSchema,
        querystring: paperOptionSchema,
        response: { 200: fileResponse, ...refusals },
      },
    },
    async (request, reply) => {
      const { id, file } = request.params;
      const signal = nobodyWaits(reply);
      const source = await saved(id, request.query, request, signal, file);
      return sendFile(reply, await work.make('file', { source, name: file }, signal));
    },
  );
  server.post(
    API_PATHS.jobPaper,
    {
      schema: {
        summary: 'A paper of a saved job, filled in from a readings file',
        params: jobPaperParametersSchema,
        querystring: paperOptionSchema,
        body: filledPaperSchema,
        response: { 200: fileResponse, ...refusals },
      },
    },
    async (request, reply) => {
      const { id, file } = request.params;
      const signal = nobodyWaits(reply);
      const source = filledSource(
        await saved(id, request.query, request, signal, file),
        request.body.readings,
        await shopGauge(request.shop.store),
      );
      return sendFile(reply, await work.make('file', { source, name: file }, signal));
    },
  );
  server.post(
    API_PATHS.jobPrinted,
    {
      schema: {
        summary: 'Say that a paper of a saved job was handed out',
        params: jobParametersSchema,
        body: printedSchema,
        response: { 204: z.undefined().describe('It is kept.'), ...refusals },
      },
    },
    async (request, reply) => {
      const { store } = request.shop;
      const { id } = request.params;
      const { file, revision_number, kit_revision, knowledge_id } = request.body;
      if (!isPaperFile(file))
        throw new Refused('PATH_NOT_FOUND', `There is no paper “${file.slice(0, 60)}”.`);
      const of =
        (await store.revision(id, revision_number)) ?? (await noRevision(store, id, revision_number));
      if (of.revision === null)
        throw new Refused('JOB_NOT_READABLE', `Revision ${revision_number} is a draft; it has no papers.`);
      const printed = { paper: file, revision_number, revision: of.revision, kit_revision, knowledge_id };
      if (!(await store.printed.add(id, printed))) jobNotFound(id);
      return reply.status(204).send(undefined);
    },
  );
  server.get(
    API_PATHS.jobPaperPage,
    {
      schema: { hide: true, params: jobPaperParametersSchema, querystring: paperOptionSchema },
      config: { framed: true },
    },
    async (request, reply) => {
      const { id, file } = request.params;
      const signal = nobodyWaits(reply);
      const source = await saved(id, request.query, request, signal, `${file}.pdf`);
      return sendPage(reply, await work.make('page', { source, kind: file }, signal));
    },
  );
}

async function noRevision(store: Store, id: string, number: number): Promise<never> {
  if ((await store.get(id)) === undefined) jobNotFound(id);
  throw new Refused('REVISION_NOT_FOUND', `The job has no revision ${number}.`);
}

/** Address of the job on this server, for the code on its papers. */
function addressOf(request: FastifyRequest, id: string): string {
  const { protocol, host } = request;
  return `${protocol}://${host}${fillPath(API_PATHS.job, { id }).replace('/api/', '/')}`;
}

function listOf(
  source: PaperSource,
  possible: readonly PossibleFile[],
  printed: ReadonlyMap<string, NonNullable<PaperList['papers'][number]['printed']>>,
): PaperList {
  const { inputs } = source.subject.answer;
  return {
    revision: inputs.revision,
    revision_number: source.options.revision_number ?? null,
    kit_revision: inputs.kit_revision ?? null,
    knowledge_id: inputs.knowledge.id,
    papers: possible.map((each) => ({ ...each, printed: printed.get(each.file) ?? null })),
  };
}

function sendFile(reply: FastifyReply, { name, type, bytes }: SentFile): Buffer {
  const shown = type === 'application/pdf' ? 'inline' : 'attachment';
  reply.type(type).header('content-disposition', `${shown}; filename="${name}"`);
  return Buffer.from(bytes);
}

function sendPage(reply: FastifyReply, page: string): FastifyReply {
  return reply.type('text/html; charset=utf-8').send(page);
}
