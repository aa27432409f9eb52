import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { API_PATHS, type Commissioning, fillPath, type SavedJob, type SavedShopFile } from '@furrow/contract';
import { FAULT_MODEL, ISSUE_CODES } from '@furrow/engine';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { buildServer } from './build-server.ts';
import type { ZodServer } from './routes/zod-server.ts';
import { EXAMPLES, type TestParts, testParts } from './testing/test-server.ts';

const SEED = 20_260_105;
const examples = readdirSync(EXAMPLES)
  .filter((name) => name.endsWith('.yaml'))
  .map((name) => readFileSync(join(EXAMPLES, name), 'utf8'));

let test: TestParts;
let server: ZodServer;
beforeAll(async () => {
  test = await testParts();
  server = await buildServer(test.parts);
});
afterAll(async () => {
  await server.close();
  await test.cleanUp();
});

/** A job in which one stretch of characters is replaced by another. */
const mangledOf = (texts: readonly string[]) =>
  fc
    .tuple(
      fc.constantFrom(...texts),
      fc.nat(),
      fc.nat(20),
      fc.oneof(
        fc.string({ unit: 'binary', maxLength: 12 }),
        fc.constantFrom('1,500', '-0', '1e999', '&a *a', '{', '\t'),
      ),
    )
    .map(([text, at, length, piece]) => {
      const start = at % text.length;
      return text.slice(0, start) + piece + text.slice(start + length);
    });

const anyText = fc.oneof(mangledOf(examples), fc.string({ unit: 'binary', maxLength: 300 }), fc.json());

/** The pocket with the planner kept to one pass, so that many can be planned. */
const onePass = examples
  .filter((text) => text.includes('shape: pocket'))
  .map((text) => `${text}\nplan: { gauge_stops: never, tracks_most: 1, layers_most: 1 }\n`);

/** Bodies from nearly right to no JSON at all. */
const anyBody = fc.oneof(
  anyText.map((text) => JSON.stringify({ text })),
  fc.record({ text: anyText, based_on: fc.anything() }).map((body) => JSON.stringify(body)),
  fc.json(),
  fc.string({ unit: 'binary', maxLength: 100 }),
);

/** Bodies to be planned: many that are no JSON or no job, and some that are. */
const plannable = fc.oneof(
  mangledOf(onePass).map((text) => JSON.stringify({ text })),
  fc.string({ unit: 'binary', maxLength: 300 }).map((text) => JSON.stringify({ text })),
  fc.json(),
  fc.json().map((text) => JSON.stringify({ text })),
);

const anyName = fc.oneof(
  fc.string({ unit: 'grapheme', minLength: 1, maxLength: 20 }),
  fc.constantFrom('constructor', 'toString', 'hasOwnProperty', 'x'.repeat(121)),
);
const anyWords = fc.oneof(fc.string({ unit: 'grapheme', maxLength: 30 }), fc.string({ unit: 'binary' }));
const anySymptoms = fc.dictionary(
  fc.oneof(fc.constantFrom(...FAULT_MODEL.observables.map(({ id }) => id)), anyName),
  fc.constantFrom('yes', 'no', 'low', 'in', 'high', 'unknown'),
  { maxKeys: 4 },
);
const anyCause = fc.oneof(fc.constantFrom(...FAULT_MODEL.causes.map(({ id }) => id)), anyName);
const anyCase = fc.record({ id: fc.uuid(), cause: anyCause, symptoms: anySymptoms });

/** What may come from a rig, and some of what cannot be kept. */
const anyEntry = fc.record({
  readings: fc.dictionary(
    anyName,
    fc.record({ text: anyWords, value: fc.option(fc.double({ noNaN: true })), note: anyWords }),
    { maxKeys: 5 },
  ),
  ticks: fc.array(anyName, { maxLength: 5 }),
  findings: fc.array(
    fc.record({ id: fc.uuid(), symptoms: anySymptoms, cause: fc.option(anyCause), note: anyWords }),
    { maxLength: 3 },
  ),
});

type Method = 'POST' | 'PUT' | 'GET';

async function expectCodedAnswer(method: Method, url: string, payload?: string): Promise<number> {
  const reply = await server.inject({
    method,
    url,
    ...(payload === undefined ? {} : { payload, headers: { 'content-type': 'application/json' } }),
  });
  expect(test.faults).toEqual([]);
  expect(reply.statusCode).toBeLessThan(500);
  const body: unknown = reply.json();
  if (reply.statusCode >= 400) {
    const { code, message } = body as { code: string; message: string };
    expect(Object.keys(ISSUE_CODES)).toContain(code);
    expect(message.length).toBeGreaterThan(10);
  }
  return reply.statusCode;
}

describe('whatever is sent', () => {
  it('to be planned is answered with a result or a code, never with a fault', async () => {
    await fc.assert(
      fc.asyncProperty(plannable, async (payload) => {
        expect([200, 400, 422]).toContain(await expectCodedAnswer('POST', API_PATHS.plan, payload));
      }),
      { seed: SEED, numRuns: 150 },
    );
  });

  it('to be saved is either kept to the letter or not at all', async () => {
    const made = await server.inject({ method: 'POST', url: API_PATHS.jobs, payload: { text: 'title: a' } });
    const { id } = made.json<SavedJob>();
    const url = fillPath(API_PATHS.job, { id });
    await fc.assert(
      fc.asyncProperty(anyText, fc.oneof(fc.constant(0), fc.integer()), async (text, late) => {
        const before = (await server.inject(url)).json<SavedJob>();
        const based_on = before.revision_number - late;
        const status = await expectCodedAnswer('PUT', url, JSON.stringify({ text, based_on }));
        const after = (await server.inject(url)).json<SavedJob>();
        if (status !== 200) expect(after).toEqual(before);
        else expect(after).toMatchObject({ text, revision_number: before.revision_number + 1 });
      }),
      { seed: SEED, numRuns: 300 },
    );
  });

  it('to be saved as the kit is either kept to the letter or not at all', async () => {
    await fc.assert(
      fc.asyncProperty(anyText, fc.oneof(fc.constant(0), fc.integer()), async (text, late) => {
        const before = (await server.inject(API_PATHS.kit)).json<SavedShopFile>();
        const based_on = before.revision_number - late;
        const status = await expectCodedAnswer('PUT', API_PATHS.kit, JSON.stringify({ text, based_on }));
        const after = (await server.inject(API_PATHS.kit)).json<SavedShopFile>();
        if (status !== 200) expect(after).toEqual(before);
        else expect(after).toMatchObject({ text, revision_number: before.revision_number + 1 });
      }),
      { seed: SEED, numRuns: 200 },
    );
  });

  it('as what was read at the rig is either kept to the letter or not at all', async () => {
    const made = await server.inject({ method: 'POST', url: API_PATHS.jobs, payload: { text: 'title: a' } });
    const url = fillPath(API_PATHS.jobCommissioning, { id: made.json<SavedJob>().id });
    await fc.assert(
      fc.asyncProperty(anyEntry, fc.oneof(fc.constant(0), fc.integer()), async (entry, late) => {
        const before = (await server.inject(url)).json<Commissioning>();
        const based_on = before.revision_number - late;
        const status = await expectCodedAnswer('PUT', url, JSON.stringify({ ...entry, based_on }));
        const after = (await server.inject(url)).json<Commissioning>();
        if (status !== 200) {
          expect(after).toEqual(before);
          return;
        }
        expect(Object.keys(after.ticks).sort()).toEqual([...new Set(entry.ticks)].sort());
        expect(after.findings).toMatchObject(entry.findings);
        for (const [check, reading] of Object.entries(entry.readings)) {
          // A number that JSON writes as 0 comes back as that.
          expect(after.readings[check]).toMatchObject(JSON.parse(JSON.stringify(reading)) as object);
        }
        expect(Object.keys(after.readings)).toHaveLength(Object.keys(entry.readings).length);
      }),
      { seed: SEED, numRuns: 200 },
    );
  });

  it('as a fault found is answered with the counts or a code', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.oneof(
          anyCase.map((found) => JSON.stringify(found)),
          anyBody,
        ),
        async (payload) => {
          expect([200, 400, 422]).toContain(await expectCodedAnswer('POST', API_PATHS.faultCounts, payload));
        },
      ),
      { seed: SEED, numRuns: 200 },
    );
  });

  it('as the content of a save is answered with a code, never with a fault', async () => {
    const made = await server.inject({ method: 'POST', url: API_PATHS.jobs, payload: { text: 'title: a' } });
    const { id } = made.json<SavedJob>();
    const urls = [
      fillPath(API_PATHS.job, { id }),
      fillPath(API_PATHS.jobCommissioning, { id }),
      API_PATHS.kit,
    ];
    await fc.assert(
      fc.asyncProperty(anyBody, fc.constantFrom(...urls), async (payload, url) => {
        expect([200, 400, 409]).toContain(await expectCodedAnswer('PUT', url, payload));
      }),
      { seed: SEED, numRuns: 300 },
    );
  });

  it('as an identifier finds no job', async () => {
    await fc.assert(
      fc.asyncProperty(fc.string({ unit: 'grapheme', minLength: 1, maxLength: 120 }), async (id) => {
        const url = fillPath(API_PATHS.jobRevisions, { id: id.replaceAll(/^\.+$/g, 'dots') });
        expect([400, 404, 414]).toContain(await expectCodedAnswer('GET', url));
      }),
      { seed: SEED, numRuns: 300 },
    );
  });
});

describe('a text made to exhaust the reader', () => {
  it.each([
    ['lists in lists', '['.repeat(100_000)],
    ['fields in fields', '{a: '.repeat(50_000)],
    ['deep indentation', Array.from({ length: 600 }, (_, depth) => `${' '.repeat(depth)}a:`).join('\n')],
    ['deep sequence', '- '.repeat(90_000)],
    [
      'aliases of aliases',
      `a0: &a0 [x, x]\n${Array.from({ length: 40 }, (_, n) => `a${n + 1}: &a${n + 1} [*a${n}, *a${n}]`).join('\n')}`,
    ],
    ['many fields', Array.from({ length: 4000 }, (_, n) => `k${n}: 1`).join('\n')],
  ])('is answered with a code: %s', async (_name, text) => {
    expect(await expectCodedAnswer('POST', API_PATHS.plan, JSON.stringify({ text }))).toBe(422);
  });
});
