import { Readable } from 'node:stream';
import {
  API_PATHS,
  errorSchema,
  framesTakenSchema,
  jobParametersSchema,
  ORIGINAL_BYTES_MOST,
  originalSchema,
  runBeginSchema,
  runParametersSchema,
  savedRunSchema,
} from '@furrow/contract';
import { JournalFailure, StoreFailure } from '@furrow/store';
import { z } from 'zod';
import { Refused } from '../guard/refused.ts';
import { TooManyLines } from '../intake/take-lines.ts';
import type { LiveRun, LiveRuns } from '../run/live-runs.ts';
import { checkSource } from '../run/live-source.ts';
import { runEvents } from '../run/run-events.ts';
import { noRevision, plannedWith, savedRun, storedRun } from './run-routes.ts';
import type { ZodServer } from './zod-server.ts';

const EVENTS = {
  description: 'Server-sent events.',
  content: { 'text/event-stream': { schema: z.custom<Readable>().meta({ type: 'string' }) } },
};

/** Runs whose readings come in as they are run: begin, take frames, listen, end. */
export function liveRoutes(server: ZodServer, now: () => Date): void {
  server.post(
    API_PATHS.jobLive,
    {
      schema: {
        summary: 'Begin a live run of a job',
        description:
          'From then on readings are gathered from the source named, also after a restart of the program, until the run ' +
          'is ended. Sent again under its identifier, it is not begun twice.',
        params: jobParametersSchema,
        body: runBeginSchema,
        response: {
          201: savedRunSchema,
          400: errorSchema,
          404: errorSchema,
          422: errorSchema,
          503: errorSchema,
        },
      },
    },
    async (request, reply) => {
      const { store, live } = request.shop;
      const { source, logger = null, ...run } = request.body;
      checkSource(source, process.env);
      const given = {
        ...run,
        ...(await plannedWith(store)),
        logger,
        rehearsal: source.kind === 'rehearsal',
        source: JSON.stringify(source),
        original: null,
      };
      const begun = (await store.runs.add(request.params.id, given)) ?? noRevision(request.params.id, run);
      try {
        await live.begin(begun);
      } catch (error) {
        // nothing came in yet, and a run that cannot begin is none
        await live.erase(begun.id);
        await store.runs.erase(begun.id);
        throw error;
      }
      return reply.status(201).send(savedRun({ ...begun, review: null }));
    },
  );
  server.get(
    API_PATHS.runEvents,
    {
      schema: {
        summary: 'Everything that comes in of a live run, as server-sent events',
        description:
          'Lines of readings, under the identifier of the place in the file behind them; `state` with what is told ' +
          'beside them, at least once a second; `end` when the run has ended. Asked for on from a place, by ' +
          '`Last-Event-ID` or `from`, it goes on there.',
        params: runParametersSchema,
        querystring: z.object({
          from: z.coerce.number().int().min(0).default(0).describe('Place in the file to begin at [bytes].'),
        }),
        response: { 200: EVENTS, 404: errorSchema, 409: errorSchema },
      },
    },
    async (request, reply) => {
      const { store, live } = request.shop;
      const run = await gathered(live, request.params.id, () => storedRun(store, request.params.id));
      const last = Number(request.headers['last-event-id'] ?? request.query.from);
      const from = Number.isSafeInteger(last) && last >= 0 ? last : 0;
      const events = runEvents(run, { from, mayStill: request.mayStill, now });
      return reply.type('text/event-stream').send(Readable.from(events));
    },
  );
  server.post(
    API_PATHS.runEnd,
    {
      schema: {
        summary: 'End a live run',
        description: 'No more readings are taken; what came in is its file from then on, and is reviewed.',
        params: runParametersSchema,
        response: { 200: savedRunSchema, 404: errorSchema, 409: errorSchema, 503: errorSchema },
      },
    },
    async (request) => {
      const { store, live } = request.shop;
      const { id } = request.params;
      const before = await storedRun(store, id);
      const ended = before.original === null ? await live.end(id, store.runs) : before;
      return savedRun({ ...(ended ?? notLive()), review: null });
    },
  );
}

/** What is sent as it is, in place of JSON: frames of readings, and files of runs. */
export function rawRoutes(server: ZodServer): void {
  server.register(async (scope: ZodServer) => {
    for (const type of ['application/x-ndjson', 'application/jsonl'])
      scope.addContentTypeParser(type, (_request, payload, done) => done(null, payload));
    scope.post(
      API_PATHS.runFrames,
      {
        schema: {
          summary: 'Send readings of a live run',
          description:
            'Newline JSON (application/x-ndjson): an object per line with a number per name, or a list per name for ' +
            'several readings at once. The answer comes when all that is taken is on disk.',
          params: runParametersSchema,
          response: {
            200: framesTakenSchema,
            404: errorSchema,
            409: errorSchema,
            413: errorSchema,
            415: errorSchema,
            503: errorSchema,
            507: errorSchema,
          },
        },
      },
      async (request) => {
        const { store, live } = request.shop;
        const run = await gathered(live, request.params.id, () => storedRun(store, request.params.id));
        const { body } = request;
        if (!(body instanceof Readable))
          throw new Refused(
            'REQUEST_MEDIA_TYPE',
            'Readings are sent as application/x-ndjson: a JSON object per line.',
          );
        try {
          return await run.take(sent(body));
        } catch (error) {
          if (error instanceof TooManyLines) throw new Refused('REQUEST_TOO_LARGE', error.message);
          if (error instanceof JournalFailure)
            throw new StoreFailure(error.full ? 'STORE_FULL' : 'STORE_UNAVAILABLE', error.message, error);
          throw error;
        }
      },
    );
  });
  server.register(async (scope: ZodServer) => {
    scope.addContentTypeParser('application/octet-stream', (_request, payload, done) => done(null, payload));
    scope.post(
      API_PATHS.originals,
      {
        schema: {
          summary: 'Send the file of a run',
          description:
            'As it is (application/octet-stream), byte for byte. It is kept under its SHA-256; the run of it is kept after that.',
          response: {
            201: originalSchema,
            413: errorSchema,
            415: errorSchema,
            503: errorSchema,
            507: errorSchema,
          },
        },
      },
      async (request, reply) => {
        const { originals } = request.shop;
        const { body } = request;
        if (!(body instanceof Readable))
          throw new Refused('REQUEST_MEDIA_TYPE', 'A file is sent as application/octet-stream.');
        return reply.status(201).send(await originals.put(bounded(body)));
      },
    );
  });
}

async function* bounded(body: AsyncIterable<Uint8Array>): AsyncGenerator<Uint8Array> {
  let length = 0;
  for await (const piece of sent(body)) {
    length += piece.length;
    if (length > ORIGINAL_BYTES_MOST)
      throw new Refused(
        'REQUEST_TOO_LARGE',
        `The file of a run holds at most ${ORIGINAL_BYTES_MOST / 1024 ** 3} GiB; nothing was kept.`,
      );
    yield piece;
  }
}

/** What is sent, piece by piece; whoever sends may go before all of it is. */
async function* sent(body: AsyncIterable<Uint8Array>): AsyncGenerator<Uint8Array> {
  try {
    yield* body;
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'ECONNRESET') throw error;
    throw new Refused('REQUEST_INVALID', 'The request broke off before all of it was sent.');
  }
}

/** The live run of an identifier; a run that is not live, or is gathered elsewhere, is refused. */
async function gathered(live: LiveRuns, id: string, look: () => Promise<unknown>): Promise<LiveRun> {
  const run = live.get(id);
  if (run !== undefined) return run;
  await look();
  return notLive();
}

function notLive(): never {
  throw new Refused(
    'RUN_NOT_LIVE',
    'This run is not under way here: it has ended, or another program gathers it.',
  );
}
