import {
  API_PATHS,
  errorSchema,
  kitConflictSchema,
  kitRevisionParametersSchema,
  kitRevisionSchema,
  kitRevisionSummarySchema,
  kitSaveSchema,
  savedKitSchema,
} from '@furrow/contract';
import type { KitStore } from '@furrow/store';
import { z } from 'zod';
import { Refused } from '../guard/refused.ts';
import { kitContentOf } from '../reading/kit-reading.ts';
import { savedKit } from './saved-kit.ts';
import type { ZodServer } from './zod-server.ts';

/** The shop's one kit and its revisions. */
export function kitRoutes(server: ZodServer, kits: KitStore): void {
  server.get(
    API_PATHS.kit,
    {
      schema: {
        summary: 'The kit',
        description: 'As long as none was saved, its text is empty and its revision number 0.',
        response: { 200: savedKitSchema },
      },
    },
    async () => savedKit(await kits.get()),
  );
  server.put(
    API_PATHS.kit,
    {
      schema: {
        summary: 'Save the kit',
        description:
          'A draft with mistakes is saved too; `valid` and `issues` tell. Refused if somebody else saved a ' +
          'newer revision since; nothing is overwritten.',
        body: kitSaveSchema,
        response: { 200: savedKitSchema, 400: errorSchema, 409: kitConflictSchema, 413: errorSchema },
      },
    },
    async (request, reply) => {
      const { text, based_on } = request.body;
      const outcome = await kits.save(kitContentOf(text), based_on);
      if (outcome.ok) return savedKit(outcome.kit);
      const newer = savedKit(outcome.newer);
      return reply.status(409).send({
        code: outcome.code,
        message:
          `The kit was saved elsewhere meanwhile: it is at revision ${newer.revision_number}, ` +
          `yours was made from ${based_on}. Nothing was overwritten.`,
        newer,
      });
    },
  );
  server.get(
    API_PATHS.kitRevisions,
    {
      schema: {
        summary: 'All revisions of the kit, newest first',
        response: { 200: z.array(kitRevisionSummarySchema) },
      },
    },
    async () => [...(await kits.revisions())],
  );
  server.delete(
    API_PATHS.kitRevisions,
    {
      schema: {
        summary: 'Erase all revisions of the kit but the newest for good',
        response: { 204: z.undefined().describe('Erased; it cannot be brought back.') },
      },
    },
    async (_request, reply) => {
      await kits.eraseEarlier();
      return reply.status(204).send();
    },
  );
  server.get(
    API_PATHS.kitRevision,
    {
      schema: {
        summary: 'One revision of the kit, with its text',
        params: kitRevisionParametersSchema,
        response: { 200: kitRevisionSchema, 400: errorSchema, 404: errorSchema },
      },
    },
    async (request) => {
      const { number } = request.params;
      const revision = await kits.revision(number);
      if (revision !== undefined) return revision;
      const newest = (await kits.get())?.revision_number;
      const what = newest === undefined ? 'no kit was saved yet' : `its revisions are 1 to ${newest}`;
      throw new Refused('REVISION_NOT_FOUND', `The kit has no revision ${number}; ${what}.`);
    },
  );
}
