import {
  API_PATHS,
  binnedJobSchema,
  type ConflictBody,
  conflictSchema,
  errorSchema,
  jobParametersSchema,
  jobSaveSchema,
  jobSummarySchema,
  jobTextSchema,
  revisionParametersSchema,
  revisionSummarySchema,
  savedJobSchema,
  savedRevisionSchema,
} from '@furrow/contract';
import { eraseUnused, type StoredJob } from '@furrow/store';
import { z } from 'zod';
import { Refused } from '../guard/refused.ts';
import { contentOf } from '../reading/job-reading.ts';
import { jobNotFound, savedJob, storedJob } from './saved-job.ts';
import type { ZodServer } from './zod-server.ts';

const ofJob = { params: jobParametersSchema };

/** Saved jobs: list, open, save, revisions, duplicate, bin. */
export function jobRoutes(server: ZodServer): void {
  server.get(
    API_PATHS.jobs,
    { schema: { summary: 'Saved jobs, newest first', response: { 200: z.array(jobSummarySchema) } } },
    async (request) => [...(await request.shop.store.list())],
  );
  server.post(
    API_PATHS.jobs,
    {
      schema: {
        summary: 'Save a new job',
        description:
          'A draft with mistakes is saved too; `valid` and `issues` tell. With an identifier of its own it can be ' +
          'sent again after an answer that was lost.',
        body: jobTextSchema,
        response: {
          201: savedJobSchema,
          400: errorSchema,
          404: errorSchema,
          409: conflictSchema,
          413: errorSchema,
        },
      },
    },
    async (request, reply) => {
      const { text, id } = request.body;
      const content = contentOf(text);
      if (id === undefined) return reply.status(201).send(savedJob(await request.shop.store.create(content)));
      const outcome = await request.shop.store.createAs(id, content);
      if (outcome.ok) return reply.status(201).send(savedJob(outcome.job));
      if (outcome.code === 'JOB_NOT_FOUND') return jobNotFound(id);
      return reply.status(409).send(conflictOf(outcome.newer, 'made anew'));
    },
  );
  server.get(
    API_PATHS.job,
    { schema: { summary: 'Open a job', ...ofJob, response: { 200: savedJobSchema, 404: errorSchema } } },
    async (request) => savedJob(await storedJob(request.shop.store, request.params.id)),
  );
  server.put(
    API_PATHS.job,
    {
      schema: {
        summary: 'Save a new revision of a job',
        description: 'Refused if somebody else saved a newer revision since; nothing is overwritten.',
        ...ofJob,
        body: jobSaveSchema,
        response: {
          200: savedJobSchema,
          400: errorSchema,
          404: errorSchema,
          409: conflictSchema,
          413: errorSchema,
        },
      },
    },
    async (request, reply) => {
      const { text, based_on } = request.body;
      const outcome = await request.shop.store.save(request.params.id, contentOf(text), based_on);
      if (outcome.ok) return savedJob(outcome.job);
      if (outcome.code === 'JOB_NOT_FOUND') return jobNotFound(request.params.id);
      return reply.status(409).send(conflictOf(outcome.newer, `made from ${based_on}`));
    },
  );
  server.delete(
    API_PATHS.job,
    {
      schema: {
        summary: 'Move a job into the bin',
        ...ofJob,
        response: { 204: z.undefined().describe('Moved into the bin.'), 404: errorSchema },
      },
    },
    async (request, reply) => {
      if (!(await request.shop.store.bin(request.params.id))) jobNotFound(request.params.id);
      return reply.status(204).send();
    },
  );
  revisionRoutes(server);
  copyRoutes(server);
  eraseRoutes(server);
}

function eraseRoutes(server: ZodServer): void {
  const response = { 204: z.undefined().describe('Erased; it cannot be brought back.'), 404: errorSchema };
  server.delete(
    API_PATHS.binnedJob,
    {
      schema: {
        summary: 'Erase a job in the bin for good, with all revisions, readings, runs and papers handed out',
        ...ofJob,
        response,
      },
    },
    async (request, reply) => {
      const { id } = request.params;
      const { store, originals } = request.shop;
      const files = [...(await store.runs.hashesOf(id)), ...(await store.readings.hashesOf(id))];
      if (await store.erase(id)) {
        await eraseUnused(store, originals, files);
        return reply.status(204).send();
      }
      throw new Refused('JOB_NOT_FOUND', `There is no job “${id.slice(0, 60)}” in the bin.`);
    },
  );
  server.delete(
    API_PATHS.jobRevisions,
    {
      schema: { summary: 'Erase all revisions of a job but the newest for good', ...ofJob, response },
    },
    async (request, reply) => {
      if ((await request.shop.store.eraseEarlier(request.params.id)) === undefined)
        jobNotFound(request.params.id);
      return reply.status(204).send();
    },
  );
}

function conflictOf(job: StoredJob, made: string): ConflictBody {
  const newer = savedJob(job);
  return {
    code: 'JOB_CHANGED_MEANWHILE',
    message:
      `This job was saved elsewhere meanwhile: it is at revision ${newer.revision_number}, ` +
      `yours was ${made}. Nothing was overwritten.`,
    newer,
  };
}

function revisionRoutes(server: ZodServer): void {
  server.get(
    API_PATHS.jobRevisions,
    {
      schema: {
        summary: 'All revisions of a job, newest first',
        ...ofJob,
        response: { 200: z.array(revisionSummarySchema), 404: errorSchema },
      },
    },
    async (request) => [
      ...((await request.shop.store.revisions(request.params.id)) ?? jobNotFound(request.params.id)),
    ],
  );
  server.get(
    API_PATHS.jobRevision,
    {
      schema: {
        summary: 'One revision of a job, with its text',
        params: revisionParametersSchema,
        response: { 200: savedRevisionSchema, 400: errorSchema, 404: errorSchema },
      },
    },
    async (request) => {
      const { id, number } = request.params;
      const revision = await request.shop.store.revision(id, number);
      if (revision !== undefined) return revision;
      const { revision_number } = await storedJob(request.shop.store, id);
      throw new Refused(
        'REVISION_NOT_FOUND',
        `This job has no revision ${number}; its revisions are 1 to ${revision_number}.`,
      );
    },
  );
}

function copyRoutes(server: ZodServer): void {
  server.post(
    API_PATHS.jobDuplicate,
    {
      schema: {
        summary: 'Save a copy of a job as a new job',
        ...ofJob,
        response: { 201: savedJobSchema, 404: errorSchema },
      },
    },
    async (request, reply) => {
      const copy = (await request.shop.store.duplicate(request.params.id)) ?? jobNotFound(request.params.id);
      return reply.status(201).send(savedJob(copy));
    },
  );
  server.get(
    API_PATHS.bin,
    { schema: { summary: 'Jobs in the bin, newest first', response: { 200: z.array(binnedJobSchema) } } },
    async (request) => [...(await request.shop.store.listBin())],
  );
  server.post(
    API_PATHS.jobRestore,
    {
      schema: {
        summary: 'Take a job out of the bin',
        ...ofJob,
        response: { 200: savedJobSchema, 404: errorSchema },
      },
    },
    async (request) =>
      savedJob((await request.shop.store.restore(request.params.id)) ?? jobNotFound(request.params.id)),
  );
}
