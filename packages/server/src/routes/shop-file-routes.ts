import {
  type API_PATHS,
  errorSchema,
  type SavedShopFile,
  type ShopFileConflict,
  type ShopFileSchemas,
  shopFileRevisionSchema,
} from '@furrow/contract';
import type { IssueCode } from '@furrow/engine';
import type { ShopFileStore, StoredShopFile } from '@furrow/store';
import type { FastifyRequest } from 'fastify';
import { z } from 'zod';
import { Refused } from '../guard/refused.ts';
import type { ShopFileReading } from '../reading/shop-file-reading.ts';
import type { ZodServer } from './zod-server.ts';

/** A file that a shop has one of, as it is served. */
export interface ServedShopFile {
  /** What it is called in sentences. */
  readonly noun: string;
  /** Where the shop of a request keeps it. */
  readonly storeOf: (request: FastifyRequest) => ShopFileStore;
  readonly path: (typeof API_PATHS)['kit' | 'knowledge' | 'gauge'];
  readonly schemas: ShopFileSchemas;
  readonly reading: ShopFileReading;
  readonly changed: ShopFileConflict['code'] & IssueCode;
}

const NONE = {
  title: '',
  revision: null,
  revision_number: 0,
  saved_at: null,
  saved_by: null,
  text: '',
  valid: false,
} as const;

/** The file and its revisions. */
export function shopFileRoutes(
  server: ZodServer,
  { noun, path, schemas, reading, changed, storeOf }: ServedShopFile,
): void {
  const saved = (file: StoredShopFile | undefined): SavedShopFile => {
    if (file === undefined) return { ...NONE, issues: [] };
    const issues = reading.issuesOf(file.text);
    return { ...file, valid: issues.length === 0, issues };
  };
  server.get(
    path,
    {
      schema: {
        summary: `The ${noun}`,
        description: 'As long as none was saved, its text is empty and its revision number 0.',
        response: { 200: schemas.saved },
      },
    },
    async (request) => saved(await storeOf(request).get()),
  );
  server.put(
    path,
    {
      schema: {
        summary: `Save the ${noun}`,
        description:
          'A draft with mistakes is saved too; `valid` and `issues` tell. Refused if somebody else saved a ' +
          'newer revision since; nothing is overwritten.',
        body: schemas.save,
        response: { 200: schemas.saved, 400: errorSchema, 409: schemas.conflict, 413: errorSchema },
      },
    },
    async (request, reply) => {
      const { text, based_on } = request.body;
      const outcome = await storeOf(request).save(reading.contentOf(text), based_on);
      if (outcome.ok) return saved(outcome.saved);
      const newer = saved(outcome.newer);
      const conflict: ShopFileConflict = {
        code: changed,
        message:
          `The ${noun} was saved elsewhere meanwhile: it is at revision ${newer.revision_number}, ` +
          `yours was made from ${based_on}. Nothing was overwritten.`,
        newer,
      };
      return reply.status(409).send(conflict as never);
    },
  );
  server.get(
    `${path}/revisions`,
    {
      schema: {
        summary: `All revisions of the ${noun}, newest first`,
        response: { 200: z.array(schemas.summary) },
      },
    },
    async (request) => [...(await storeOf(request).revisions())],
  );
  server.delete(
    `${path}/revisions`,
    {
      schema: {
        summary: `Erase all revisions of the ${noun} but the newest for good`,
        response: { 204: z.undefined().describe('Erased; it cannot be brought back.') },
      },
    },
    async (request, reply) => {
      await storeOf(request).eraseEarlier();
      return reply.status(204).send();
    },
  );
  server.get(
    `${path}/revisions/:number`,
    {
      schema: {
        summary: `One revision of the ${noun}, with its text`,
        params: shopFileRevisionSchema,
        response: { 200: schemas.revision, 400: errorSchema, 404: errorSchema },
      },
    },
    async (request) => {
      const { number } = request.params;
      const revision = await storeOf(request).revision(number);
      if (revision !== undefined) return revision;
      const newest = (await storeOf(request).get())?.revision_number;
      const what = newest === undefined ? `no ${noun} was saved yet` : `its revisions are 1 to ${newest}`;
      throw new Refused('REVISION_NOT_FOUND', `The ${noun} has no revision ${number}; ${what}.`);
    },
  );
}
