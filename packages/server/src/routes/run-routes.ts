import { createReadStream } from 'node:fs';
import { stat } from 'node:fs/promises';
import { Readable } from 'node:stream';
import {
  API_PATHS,
  errorSchema,
  jobParametersSchema,
  type OpenedRun,
  openedRunSchema,
  runKeepSchema,
  runParametersSchema,
  runSummarySchema,
  type SavedRun,
  savedRunSchema,
} from '@furrow/contract';
import { REHEARSAL_MARK } from '@furrow/engine';
import {
  eraseUnused,
  type ListedRun,
  OriginalDamaged,
  type Originals,
  type Store,
  type StoredReview,
  type StoredRun,
} from '@furrow/store';
import { z } from 'zod';
import { Refused } from '../guard/refused.ts';
import { liveSourceOf, sourceWords } from '../run/live-source.ts';
import { jobNotFound } from './saved-job.ts';
import type { ZodServer } from './zod-server.ts';

const FILE = z.custom<Readable>().meta({ type: 'string', format: 'binary' });

/** The runs of saved jobs: keep, list, open, review again, erase, and their files. */
export function runRoutes(server: ZodServer): void {
  listRoutes(server);
  fileRoutes(server);
}

function listRoutes(server: ZodServer): void {
  server.get(
    API_PATHS.jobRuns,
    {
      schema: {
        summary: 'Runs of a job, newest first',
        params: jobParametersSchema,
        response: { 200: z.array(savedRunSchema), 404: errorSchema },
      },
    },
    async (request) =>
      ((await request.shop.store.runs.list(request.params.id)) ?? jobNotFound(request.params.id)).map(
        savedRun,
      ),
  );
  server.post(
    API_PATHS.jobRuns,
    {
      schema: {
        summary: 'Keep a run of a job',
        description:
          'Its file is sent to the originals first. The run is reviewed in the background, by this version of the ' +
          'program and by each later one; sent again under its identifier, it is not kept twice.',
        params: jobParametersSchema,
        body: runKeepSchema,
        response: { 201: savedRunSchema, 400: errorSchema, 404: errorSchema, 422: errorSchema },
      },
    },
    async (request, reply) => {
      const { store, originals, reviewer } = request.shop;
      const { sha256, logger = null, ...run } = request.body;
      const bytes = await originals.bytes(sha256);
      if (bytes === undefined)
        throw new Refused('RUN_FILE_UNKNOWN', 'The file of this run was not sent yet; nothing was kept.');
      const given = {
        ...run,
        ...(await plannedWith(store)),
        logger,
        rehearsal: await isMarked(originals, sha256),
        source: null,
        original: { sha256, bytes },
      };
      const kept = (await store.runs.add(request.params.id, given)) ?? noRevision(request.params.id, run);
      reviewer.look();
      return reply.status(201).send(savedRun({ ...kept, review: null }));
    },
  );
  server.get(
    API_PATHS.run,
    {
      schema: {
        summary: 'A run with everything that was found of it',
        params: runParametersSchema,
        response: { 200: openedRunSchema, 404: errorSchema },
      },
    },
    async (request) => {
      const { store } = request.shop;
      const run = await storedRun(store, request.params.id);
      return openedRun(run, await store.runs.reviews(run.id));
    },
  );
  server.post(
    API_PATHS.runReview,
    {
      schema: {
        summary: 'Review a run again',
        description: 'What this version of the program found before is replaced once that is done.',
        params: runParametersSchema,
        response: { 202: savedRunSchema, 404: errorSchema, 409: errorSchema },
      },
    },
    async (request, reply) => {
      const { store, reviewer } = request.shop;
      const run = await storedRun(store, request.params.id);
      await reviewer.again(run.id);
      return reply.status(202).send(savedRun({ ...run, review: null }));
    },
  );
  server.delete(
    API_PATHS.run,
    {
      schema: {
        summary: 'Erase a run for good, with its file and all that was found of it',
        params: runParametersSchema,
        response: { 204: z.undefined().describe('Erased; it cannot be brought back.'), 404: errorSchema },
      },
    },
    async (request, reply) => {
      const { store, originals, live } = request.shop;
      const run = await storedRun(store, request.params.id);
      await store.runs.erase(run.id);
      await live.erase(run.id);
      if (run.original !== null) await eraseUnused(store, originals, [run.original.sha256]);
      return reply.status(204).send();
    },
  );
}

function fileRoutes(server: ZodServer): void {
  const response = { 200: FILE, 404: errorSchema, 409: errorSchema, 410: errorSchema };
  server.get(
    API_PATHS.runOriginal,
    {
      schema: {
        summary: 'The file of a run, byte for byte as the logger wrote it',
        description: 'It is held against its hash before any of it is sent.',
        params: runParametersSchema,
        response,
      },
    },
    async (request, reply) => {
      const { store, originals } = request.shop;
      const { name, original } = await storedRun(store, request.params.id);
      const { sha256, bytes } = original ?? stillLive();
      try {
        for await (const _ of originals.read(sha256));
      } catch (error) {
        if (!(error instanceof OriginalDamaged)) throw error;
        throw new Refused('RUN_FILE_DAMAGED', error.message);
      }
      return reply
        .headers({ 'content-length': bytes, 'content-disposition': attachment(name) })
        .type('application/octet-stream')
        .send(Readable.from(originals.read(sha256), { objectMode: false }));
    },
  );
  server.get(
    API_PATHS.runParquet,
    {
      schema: {
        summary: 'What the rows of a run are, in SI, as Parquet',
        description: 'It is there once the run was reviewed.',
        params: runParametersSchema,
        response,
      },
    },
    async (request, reply) => {
      const { store, originals } = request.shop;
      const { name, original } = await storedRun(store, request.params.id);
      const path = originals.parquetPath((original ?? stillLive()).sha256);
      const found = await stat(path).catch(() => undefined);
      if (found === undefined)
        throw new Refused(
          'RUN_NOT_FOUND',
          'There is no Parquet of this run: it was not reviewed yet, or cannot be read.',
        );
      return reply
        .headers({
          'content-length': found.size,
          'content-disposition': attachment(`${name.replace(/\.[^.]*$/u, '')}.parquet`),
        })
        .type('application/vnd.apache.parquet')
        .send(createReadStream(path));
    },
  );
}

/** The run of an identifier, or the refusal that names it. */
export async function storedRun(store: Store, id: string): Promise<StoredRun> {
  const run = await store.runs.get(id);
  if (run !== undefined) return run;
  throw new Refused('RUN_NOT_FOUND', `There is no run “${id.slice(0, 60)}”.`);
}

/** Refuses a run of a revision that the job has not; a job that is not there is told apart. */
export function noRevision(jobId: string, { revision_number }: { readonly revision_number: number }): never {
  throw new Refused(
    'JOB_NOT_FOUND',
    `There is no saved job “${jobId.slice(0, 60)}” with a revision ${revision_number}; it may be in the bin.`,
  );
}

/** Numbers of the kit and the trials that are saved now, which a run of today was planned with. */
export async function plannedWith(
  store: Store,
): Promise<{ readonly kit_number: number | null; readonly knowledge_number: number | null }> {
  const [kit, knowledge] = await Promise.all([store.kit.get(), store.knowledge.get()]);
  return { kit_number: kit?.revision_number ?? null, knowledge_number: knowledge?.revision_number ?? null };
}

function stillLive(): never {
  throw new Refused('RUN_NOT_LIVE', 'This run is still under way: it has its file when it has ended.');
}

/** Bytes of the beginning in which a file says that it is a rehearsal [bytes]. */
const HEAD = 4096;

async function isMarked(originals: Originals, sha256: string): Promise<boolean> {
  for await (const piece of originals.read(sha256))
    return Buffer.from(piece.subarray(0, HEAD)).toString('latin1').includes(REHEARSAL_MARK);
  return false;
}

function attachment(name: string): string {
  const plain = name.replace(/[^\w. -]/gu, '_');
  return `attachment; filename="${plain}"; filename*=UTF-8''${encodeURIComponent(name)}`;
}

/** A run as it is handed out. */
export function savedRun({ kit_number, knowledge_number, original, review, ...run }: ListedRun): SavedRun {
  return {
    ...run,
    source: run.source === null ? null : sourceWords(liveSourceOf(run.source)),
    kit_revision_number: kit_number,
    knowledge_revision_number: knowledge_number,
    live: original === null,
    sha256: original?.sha256 ?? null,
    bytes: original?.bytes ?? null,
    review: review && {
      program_version: review.program_version,
      reviewed_at: review.reviewed_at,
      trouble: review.trouble,
      summary: summaryOf(review.summary),
    },
  };
}

/** A summary of another version may lack what this one knows; it is left out then, the report is there still. */
function summaryOf(text: string | null): NonNullable<SavedRun['review']>['summary'] {
  const read = text === null ? undefined : runSummarySchema.safeParse(JSON.parse(text));
  return read?.success ? read.data : null;
}

function openedRun(run: StoredRun, reviews: readonly StoredReview[]): OpenedRun {
  const newest = reviews.find(({ report }) => report !== null) ?? reviews[0] ?? null;
  return {
    ...savedRun({ ...run, review: newest }),
    reviews: reviews.map(({ program_version, reviewed_at, report, trouble }) => ({
      program_version,
      reviewed_at,
      trouble,
      report: report === null ? null : (JSON.parse(report) as Record<string, unknown>),
    })),
  };
}
