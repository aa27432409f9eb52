import { Readable } from 'node:stream';
import {
  API_PATHS,
  errorSchema,
  jobParametersSchema,
  originalParametersSchema,
  readingsSchemas,
  revisionParametersSchema,
  type SavedShopFile,
} from '@furrow/contract';
import { surveySchema } from '@furrow/engine';
import { eraseUnused, type Store, type StoredShopFile } from '@furrow/store';
import { z } from 'zod';
import { Refused } from '../guard/refused.ts';
import { readWhole } from '../reading/job-reading.ts';
import { READINGS_READING } from '../reading/readings-reading.ts';
import type { Work } from '../work/open-work.ts';
import { measuredOf } from './measured-files.ts';
import { nobodyWaits } from './nobody-waits.ts';
import { jobNotFound, storedJob } from './saved-job.ts';
import { shopGauge, shopKit, shopTrials } from './shop-files.ts';
import type { ZodServer } from './zod-server.ts';

const FILE = z.custom<Readable>().meta({ type: 'string', format: 'binary' });

const ofJob = { params: jobParametersSchema };

/** What was run and gauged on a job, with every revision, and what that says of its groove. */
export function readingsRoutes(server: ZodServer, work: Work): void {
  const found = async (store: Store, id: string): Promise<StoredShopFile | null> =>
    (await store.readings.get(id)) ?? ((await storedJob(store, id)) && null);
  server.get(
    API_PATHS.jobReadings,
    {
      schema: {
        summary: 'What was run and gauged on a job',
        description: 'As long as nothing was saved, its text is empty and its revision number 0.',
        ...ofJob,
        response: { 200: readingsSchemas.saved, 404: errorSchema },
      },
    },
    async (request) => saved(await found(request.shop.store, request.params.id)),
  );
  server.put(
    API_PATHS.jobReadings,
    {
      schema: {
        summary: 'Save what was run and gauged on a job',
        description:
          'A draft with mistakes is saved too; `valid` and `issues` tell. Refused if somebody else saved a ' +
          'newer revision since; nothing is overwritten.',
        ...ofJob,
        body: readingsSchemas.save,
        response: {
          200: readingsSchemas.saved,
          400: errorSchema,
          404: errorSchema,
          409: readingsSchemas.conflict,
          413: errorSchema,
        },
      },
    },
    async (request, reply) => {
      const { store } = request.shop;
      const { text, based_on } = request.body;
      const { id } = request.params;
      const outcome = await store.readings.save(id, READINGS_READING.contentOf(text), based_on);
      if (outcome.ok) return saved(outcome.saved);
      if (outcome.code === 'JOB_NOT_FOUND') return jobNotFound(id);
      const newer = saved(outcome.newer ?? null);
      return reply.status(409).send({
        code: outcome.code,
        message:
          `The readings were saved elsewhere meanwhile: they are at revision ${newer.revision_number}, ` +
          `yours were made from ${based_on}. Nothing was overwritten.`,
        newer,
      });
    },
  );
  server.delete(
    API_PATHS.jobReadings,
    {
      schema: {
        summary: 'Erase what was run and gauged on a job for good, with all revisions',
        ...ofJob,
        response: { 204: z.undefined().describe('Erased; it cannot be brought back.'), 404: errorSchema },
      },
    },
    async (request, reply) => {
      const { store, originals } = request.shop;
      const { id } = request.params;
      const files = await store.readings.hashesOf(id);
      if (!(await store.readings.erase(id))) jobNotFound(id);
      await eraseUnused(store, originals, files);
      return reply.status(204).send();
    },
  );
  revisionRoutes(server);
  server.get(
    API_PATHS.jobOriginal,
    {
      schema: {
        summary: 'A file that was measured on a job, byte for byte',
        params: originalParametersSchema,
        response: { 200: FILE, 404: errorSchema },
      },
    },
    async (request, reply) => {
      const { store, originals } = request.shop;
      const { id, sha256 } = request.params;
      const named = (await store.readings.hashesOf((await storedJob(store, id)).id)).includes(sha256);
      const length = named ? await originals.bytes(sha256) : undefined;
      if (length === undefined)
        throw new Refused('PATH_NOT_FOUND', 'The readings of this job name no such file that is kept.');
      return reply
        .headers({ 'content-length': length, 'content-disposition': 'attachment' })
        .type('application/octet-stream')
        .send(Readable.from(originals.read(sha256), { objectMode: false }));
    },
  );
  server.get(
    API_PATHS.jobSurvey,
    {
      schema: {
        summary: 'What was measured of the groove of a job, and what that says of it',
        description: 'Planned with the kit saved here and with what the shop has learned, as its papers are.',
        ...ofJob,
        response: { 200: surveySchema, 404: errorSchema, 422: errorSchema, 503: errorSchema },
      },
    },
    async (request, reply) => {
      const { store } = request.shop;
      const { id } = request.params;
      const signal = nobodyWaits(reply);
      const read = readWhole((await storedJob(store, id)).text);
      const measured = await measuredOf(request.shop, id);
      const trials = await shopTrials(store);
      const answer = await work.answer({ read, kit: await shopKit(store), knowledge: trials }, signal);
      const asked = { read, answer, trials, gauge: await shopGauge(store), files: measured?.files ?? [] };
      return surveySchema.parse(await work.make('survey', asked, signal));
    },
  );
}

function revisionRoutes(server: ZodServer): void {
  server.get(
    API_PATHS.jobReadingsRevisions,
    {
      schema: {
        summary: 'All revisions of the readings of a job, newest first',
        ...ofJob,
        response: { 200: z.array(readingsSchemas.summary), 404: errorSchema },
      },
    },
    async (request) => [
      ...((await request.shop.store.readings.revisions(request.params.id)) ?? jobNotFound(request.params.id)),
    ],
  );
  server.get(
    API_PATHS.jobReadingsRevision,
    {
      schema: {
        summary: 'One revision of the readings of a job, with its text',
        params: revisionParametersSchema,
        response: { 200: readingsSchemas.revision, 400: errorSchema, 404: errorSchema },
      },
    },
    async (request) => {
      const { store } = request.shop;
      const { id, number } = request.params;
      const revision = await store.readings.revision(id, number);
      if (revision !== undefined) return revision;
      const { length } = (await store.readings.revisions(id)) ?? jobNotFound(id);
      throw new Refused(
        'REVISION_NOT_FOUND',
        `The readings have no revision ${number}; ${length === 0 ? 'none was saved yet' : `there are ${length}`}.`,
      );
    },
  );
}

function saved(file: StoredShopFile | null): SavedShopFile {
  if (file === null)
    return {
      title: '',
      revision: null,
      revision_number: 0,
      saved_at: null,
      saved_by: null,
      text: '',
      valid: false,
      issues: [],
    };
  const issues = READINGS_READING.issuesOf(file.text);
  return { ...file, valid: issues.length === 0, issues };
}
