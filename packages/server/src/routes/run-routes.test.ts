import { createHash } from 'node:crypto';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { API_PATHS, fillPath, type OpenedRun, type SavedJob, type SavedRun } from '@furrow/contract';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { buildServer } from '../build-server.ts';
import { EXAMPLES, type TestParts, testParts } from '../testing/test-server.ts';
import type { ZodServer } from './zod-server.ts';

const text = readFileSync(join(EXAMPLES, 'penstock-seam.yaml'), 'utf8');
const idOf = (n: number): string => `00000000-0000-4000-8000-0000000000${n}`;
const unknown = idOf(99);

/** A log with decimal commas: the arc is out for a second at 10 s. */
function log(rows = 300): Buffer {
  const comma = (value: number): string => value.toFixed(2).replace('.', ',');
  const lines = ['Zeit [s];Spannung [V];Strom [A];Fahrt [mm/min]'];
  for (let n = 0; n < rows; n += 1) {
    const t = n / 10;
    const burns = t >= 2 && t < 28 && !(t >= 10 && t < 11);
    lines.push([t, burns ? 42 + Math.sin(n) : 75, burns ? 600 : 0, 420].map(comma).join(';'));
  }
  return Buffer.from(`${lines.join('\n')}\n`);
}

let test: TestParts;
let server: ZodServer;
let id: string;
beforeEach(async () => {
  test = await testParts();
  server = await buildServer(test.parts);
  await server.ready();
  const made = await server.inject({ method: 'POST', url: API_PATHS.jobs, payload: { text } });
  id = made.json<SavedJob>().id;
});
afterEach(async () => {
  await server.close();
  await test.cleanUp();
  expect(test.faults).toEqual([]);
});

const send = (bytes: Buffer, type = 'application/octet-stream') =>
  server.inject({
    method: 'POST',
    url: API_PATHS.originals,
    headers: { 'content-type': type },
    payload: bytes,
  });
const keep = (payload: object, job = id) =>
  server.inject({ method: 'POST', url: fillPath(API_PATHS.jobRuns, { id: job }), payload });
const runs = async (): Promise<SavedRun[]> =>
  (await server.inject(fillPath(API_PATHS.jobRuns, { id }))).json<SavedRun[]>();
const opened = async (run: string): Promise<OpenedRun> =>
  (await server.inject(fillPath(API_PATHS.run, { id: run }))).json<OpenedRun>();

/** Waits until the background has reviewed a run. */
async function reviewed(run: string): Promise<OpenedRun> {
  for (;;) {
    const found = await opened(run);
    if (found.review !== null) return found;
    await new Promise((done) => setImmediate(done));
  }
}

async function keepLog(bytes: Buffer, more: object = {}): Promise<string> {
  const sent = await send(bytes);
  expect(sent.statusCode).toBe(201);
  const { sha256 } = sent.json<{ sha256: string }>();
  const reply = await keep({ id: idOf(10), name: 'bay-2.csv', revision_number: 1, sha256, ...more });
  expect(reply.statusCode).toBe(201);
  return reply.json<SavedRun>().id;
}

describe('the runs of a job', () => {
  it('are kept byte for byte, reviewed with the job that was run, and listed', async () => {
    const bytes = log();
    const run = await keepLog(bytes);
    const found = await reviewed(run);
    const sha256 = createHash('sha256').update(bytes).digest('hex');
    expect(found).toMatchObject({ sha256, bytes: bytes.length, rehearsal: false, live: false, source: null });
    expect(found.reviews[0]?.report).toMatchObject({
      inputs: { file_sha256: sha256, job_revision: found.revision, program_version: '0.1.0' },
      reading: { rows_read: 300, decimal: ',' },
    });
    expect(found.review?.summary?.events.map(({ kind }) => kind)).toContain('arc_out');
    expect(await runs()).toMatchObject([{ id: run, name: 'bay-2.csv', review: { trouble: null } }]);
    const original = await server.inject(fillPath(API_PATHS.runOriginal, { id: run }));
    expect(original.rawPayload).toEqual(bytes);
    expect(original.headers['content-disposition']).toContain('filename="bay-2.csv"');
    const parquet = await server.inject(fillPath(API_PATHS.runParquet, { id: run }));
    expect([parquet.statusCode, parquet.rawPayload.subarray(0, 4).toString()]).toEqual([200, 'PAR1']);
  });

  it('kept again, as after an answer that was lost, are kept once', async () => {
    await keepLog(log());
    await keepLog(log());
    expect(await runs()).toHaveLength(1);
    await reviewed(idOf(10));
  });

  it('know a rehearsal by the mark of its file', async () => {
    const run = await keepLog(Buffer.concat([Buffer.from('# Furrow rehearsal: made up\n'), log()]));
    const found = await reviewed(run);
    expect(found.rehearsal).toBe(true);
    expect(found.reviews[0]?.report).toMatchObject({ inputs: { rehearsal: true } });
  });

  it('are read by the logger description that they are kept with', async () => {
    const logger = 'furrow_logger: 1\ncolumns: [{name: "Strom [A]", quantity: none}]\n';
    const found = await reviewed(await keepLog(log(), { logger }));
    expect(found.logger).toBe(logger);
    expect(found.reviews[0]?.report).toMatchObject({ totals: { mean_current_A: null } });
  });

  it('say why a file cannot be reviewed, and keep it all the same', async () => {
    const bytes = Buffer.from([0, 1, 2, 3]);
    const found = await reviewed(await keepLog(bytes));
    expect(found.review).toMatchObject({ summary: null, trouble: expect.stringMatching(/./u) });
    const original = await server.inject(fillPath(API_PATHS.runOriginal, { id: found.id }));
    expect(original.rawPayload).toEqual(bytes);
    expect((await server.inject(fillPath(API_PATHS.runParquet, { id: found.id }))).statusCode).toBe(404);
  });

  it('are kept of a file larger than any other request', async () => {
    const bytes = log(70_000);
    expect(bytes.length).toBeGreaterThan(1.5e6);
    const found = await reviewed(await keepLog(bytes));
    expect(found.bytes).toBe(bytes.length);
  });

  it('do not give out a file that is no longer what was kept', async () => {
    const run = await keepLog(log());
    const { sha256 } = await reviewed(run);
    writeFileSync(test.parts.originals.path(sha256 ?? ''), 'something else');
    const reply = await server.inject(fillPath(API_PATHS.runOriginal, { id: run }));
    expect([reply.statusCode, reply.json()]).toMatchObject([410, { code: 'RUN_FILE_DAMAGED' }]);
    await server.inject({ method: 'POST', url: fillPath(API_PATHS.runReview, { id: run }) });
    expect((await reviewed(run)).review?.trouble).toContain('no longer what was kept');
  });

  it('are erased with their files, by themselves and with their job', async () => {
    const run = await keepLog(log());
    const { sha256 } = await reviewed(run);
    const erase = (url: string) => server.inject({ method: 'DELETE', url });
    expect((await erase(fillPath(API_PATHS.run, { id: run }))).statusCode).toBe(204);
    expect(await test.parts.originals.bytes(sha256 ?? '')).toBeUndefined();
    expect((await erase(fillPath(API_PATHS.run, { id: run }))).statusCode).toBe(404);
    await reviewed(await keepLog(log(200)));
    const { sha256: second } = (await runs())[0] ?? {};
    await erase(fillPath(API_PATHS.job, { id }));
    expect((await erase(fillPath(API_PATHS.binnedJob, { id }))).statusCode).toBe(204);
    expect(await test.parts.originals.bytes(second ?? '')).toBeUndefined();
  });

  it('are refused with a code', async () => {
    const { sha256 } = (await send(log())).json<{ sha256: string }>();
    const run = { id: idOf(11), name: 'a', revision_number: 1, sha256 };
    const refused = [
      [keep({ ...run, sha256: 'ab'.repeat(32) }), 422, 'RUN_FILE_UNKNOWN'],
      [keep({ ...run, revision_number: 2 }), 404, 'JOB_NOT_FOUND'],
      [keep(run, unknown), 404, 'JOB_NOT_FOUND'],
      [keep({ ...run, sha256: '../secret' }), 400, 'REQUEST_INVALID'],
      [keep({ ...run, name: '' }), 400, 'REQUEST_INVALID'],
      [server.inject(fillPath(API_PATHS.run, { id: unknown })), 404, 'RUN_NOT_FOUND'],
      [server.inject(fillPath(API_PATHS.runOriginal, { id: unknown })), 404, 'RUN_NOT_FOUND'],
      [server.inject(fillPath(API_PATHS.runEvents, { id: unknown })), 404, 'RUN_NOT_FOUND'],
      [send(log(), 'text/csv'), 415, 'REQUEST_MEDIA_TYPE'],
    ] as const;
    for (const [reply, status, code] of refused) {
      const { statusCode, json } = await reply;
      expect([statusCode, json<{ code: string }>().code]).toEqual([status, code]);
    }
    expect(await runs()).toEqual([]);
  });
});

describe('a review in the background', () => {
  it('goes on after a restart, and a new version of the program reviews every run again', async () => {
    // kept while nothing reviews, as when the program ends just then
    const { sha256, bytes } = (await send(log())).json<{ sha256: string; bytes: number }>();
    const given = { id: idOf(12), name: 'bay-2.csv', revision_number: 1, kit_number: null };
    const more = { knowledge_number: null, logger: null, rehearsal: false, source: null };
    await test.store.runs.add(id, { ...given, ...more, original: { sha256, bytes } });
    await test.store.runs.reviewed(idOf(12), '0.0.9', {
      report: '{"verdict":["as seen then"]}',
      summary: null,
      trouble: null,
    });
    await server.close();
    server = await buildServer(test.parts);
    await server.ready();
    for (;;) {
      const { reviews } = await opened(idOf(12));
      if (reviews.length === 2) {
        expect(reviews.map(({ program_version }) => program_version)).toEqual(['0.1.0', '0.0.9']);
        expect(reviews[1]?.report).toEqual({ verdict: ['as seen then'] });
        return;
      }
      await new Promise((done) => setImmediate(done));
    }
  });
});

describe('logger descriptions', () => {
  const post = (payload: object) => server.inject({ method: 'POST', url: API_PATHS.loggers, payload });

  it('are kept with the columns that a file is recognised by, and erased', async () => {
    const description =
      'furrow_logger: 1\nname: bay 2\ncolumns: [{name: Kanal 1, quantity: voltage, unit: V}]\n';
    const reply = await post({ text: description });
    expect(reply.json()).toMatchObject([{ name: 'bay 2', columns: ['Kanal 1'], text: description }]);
    expect((await post({ text: `# again\n${description}` })).json()).toHaveLength(1);
    const [{ revision }] = reply.json<[{ revision: string }]>();
    const erased = await server.inject({ method: 'DELETE', url: fillPath(API_PATHS.logger, { revision }) });
    expect(erased.json()).toEqual([]);
  });

  it('that cannot be read are refused, and not kept', async () => {
    const reply = await post({ text: 'furrow_logger: 1\ndecimal: dot\n' });
    expect([reply.statusCode, reply.json()]).toMatchObject([422, { code: 'LOGGER_FIELD_VALUE' }]);
    expect((await server.inject(API_PATHS.loggers)).json()).toEqual([]);
  });
});
