import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { API_PATHS, fillPath, type SavedJob } from '@furrow/contract';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { buildServer } from '../build-server.ts';
import { EXAMPLES, type TestParts, testParts } from '../testing/test-server.ts';
import type { ZodServer } from './zod-server.ts';

const whole = readFileSync(join(EXAMPLES, 'penstock-seam.yaml'), 'utf8');
const draft = 'furrow: 1\ntitle: Not finished\nseam: { length: 1,500 }\n';
const unknown = '00000000-0000-4000-8000-999999999999';

let test: TestParts;
let server: ZodServer;
beforeEach(async () => {
  test = await testParts();
  server = await buildServer(test.parts);
});
afterEach(async () => {
  await server.close();
  await test.cleanUp();
  expect(test.faults).toEqual([]);
});

async function create(text: string): Promise<SavedJob> {
  const reply = await server.inject({ method: 'POST', url: API_PATHS.jobs, payload: { text } });
  expect(reply.statusCode).toBe(201);
  return reply.json<SavedJob>();
}

function save(id: string, text: string, based_on: number) {
  return server.inject({ method: 'PUT', url: fillPath(API_PATHS.job, { id }), payload: { text, based_on } });
}

describe('saved jobs', () => {
  it('are created, listed and opened', async () => {
    const job = await create(whole);
    expect(job).toMatchObject({
      text: whole,
      title: 'Penstock section 7, long seam, second side',
      revision: expect.stringMatching(/^[0-9a-f]{64}$/),
      revision_number: 1,
      valid: true,
      issues: [],
    });
    const { text: _text, valid: _valid, issues: _issues, ...summary } = job;
    expect((await server.inject(API_PATHS.jobs)).json()).toEqual([summary]);
    expect((await server.inject(fillPath(API_PATHS.job, { id: job.id }))).json()).toEqual(job);
  });

  it('may be drafts, which are kept to the letter with what is wrong in them', async () => {
    const job = await create(draft);
    expect(job).toMatchObject({ text: draft, title: 'Not finished', revision: null, valid: false });
    expect(job.issues.map(({ code }) => code)).toContain('AMOUNT_AMBIGUOUS');
    expect(job.issues.find(({ code }) => code === 'AMOUNT_AMBIGUOUS')).toMatchObject({
      path: 'seam.length',
      position: { line: 3 },
    });
  });

  it('get a revision with each save, and keep the earlier ones', async () => {
    const { id } = await create(whole);
    const saved = await save(id, draft, 1);
    expect(saved.statusCode).toBe(200);
    expect(saved.json()).toMatchObject({ id, text: draft, revision_number: 2, valid: false });
    const revisions = await server.inject(fillPath(API_PATHS.jobRevisions, { id }));
    expect(revisions.json()).toMatchObject([
      { revision_number: 2, revision: null },
      { revision_number: 1, revision: expect.any(String) },
    ]);
    const first = await server.inject(fillPath(API_PATHS.jobRevision, { id, number: 1 }));
    expect(first.json()).toMatchObject({ id, revision_number: 1, text: whole });
  });

  it('are not overwritten by a save that is based on an older revision', async () => {
    const { id } = await create(whole);
    const newer = (await save(id, draft, 1)).json<SavedJob>();
    const late = await save(id, `${whole}# late\n`, 1);
    expect(late.statusCode).toBe(409);
    expect(late.json()).toMatchObject({ code: 'JOB_CHANGED_MEANWHILE', newer });
    expect((await server.inject(fillPath(API_PATHS.job, { id }))).json()).toEqual(newer);
  });

  it('are saved once when what was not answered is sent again', async () => {
    const { id } = await create(whole);
    expect((await save(id, draft, 1)).statusCode).toBe(200);
    const again = await save(id, draft, 1);
    expect([again.statusCode, again.json<SavedJob>().revision_number]).toEqual([200, 2]);
    const named = { id: '00000000-0000-4000-8000-0000000000aa', text: whole };
    const post = (payload: object) => server.inject({ method: 'POST', url: API_PATHS.jobs, payload });
    const first = await post(named);
    expect([first.statusCode, first.json<SavedJob>().id]).toEqual([201, named.id]);
    expect((await post(named)).json()).toEqual(first.json());
    const other = await post({ ...named, text: draft });
    expect(other.statusCode).toBe(409);
    expect(other.json()).toMatchObject({ code: 'JOB_CHANGED_MEANWHILE', newer: first.json() });
    expect((await server.inject(API_PATHS.jobs)).json()).toHaveLength(2);
  });

  it('can be erased for good, out of the bin alone, and their readings and earlier revisions by themselves', async () => {
    const { id } = await create(whole);
    await save(id, draft, 1);
    const erase = async (path: string) => (await server.inject({ method: 'DELETE', url: path })).statusCode;
    const rig = fillPath(API_PATHS.jobCommissioning, { id });
    await server.inject({
      method: 'PUT',
      url: rig,
      payload: { readings: {}, ticks: ['a'], findings: [], based_on: 0 },
    });
    expect(await erase(rig)).toBe(204);
    expect((await server.inject(rig)).json()).toMatchObject({ revision_number: 0, ticks: {} });
    expect(await erase(fillPath(API_PATHS.jobRevisions, { id }))).toBe(204);
    expect((await server.inject(fillPath(API_PATHS.jobRevisions, { id }))).json()).toHaveLength(1);
    expect(await erase(fillPath(API_PATHS.binnedJob, { id }))).toBe(404);
    expect(await erase(fillPath(API_PATHS.job, { id }))).toBe(204);
    expect(await erase(fillPath(API_PATHS.binnedJob, { id }))).toBe(204);
    expect((await server.inject(API_PATHS.bin)).json()).toEqual([]);
    expect(await erase(API_PATHS.kitRevisions)).toBe(204);
  });

  it('can be duplicated, binned and restored', async () => {
    const job = await create(whole);
    const { id } = job;
    const copy = await server.inject({ method: 'POST', url: fillPath(API_PATHS.jobDuplicate, { id }) });
    expect(copy.statusCode).toBe(201);
    expect(copy.json()).toMatchObject({ text: whole, revision_number: 1, revision: job.revision });
    expect(copy.json<SavedJob>().id).not.toBe(id);

    const binned = await server.inject({ method: 'DELETE', url: fillPath(API_PATHS.job, { id }) });
    expect([binned.statusCode, binned.body]).toEqual([204, '']);
    expect((await server.inject(fillPath(API_PATHS.job, { id }))).statusCode).toBe(404);
    expect((await server.inject(API_PATHS.jobs)).json<SavedJob[]>().map((each) => each.id)).not.toContain(id);
    expect((await server.inject(API_PATHS.bin)).json()).toMatchObject([
      { id, deleted_at: expect.any(String) },
    ]);

    const restored = await server.inject({ method: 'POST', url: fillPath(API_PATHS.jobRestore, { id }) });
    expect(restored.json()).toEqual(job);
    expect((await server.inject(API_PATHS.bin)).json()).toEqual([]);
  });

  it('that do not exist are answered with a code, whatever is asked of them', async () => {
    const asked = [
      { method: 'GET', url: fillPath(API_PATHS.job, { id: unknown }) },
      { method: 'PUT', url: fillPath(API_PATHS.job, { id: unknown }), payload: { text: whole, based_on: 1 } },
      { method: 'DELETE', url: fillPath(API_PATHS.job, { id: unknown }) },
      { method: 'GET', url: fillPath(API_PATHS.jobRevisions, { id: unknown }) },
      { method: 'GET', url: fillPath(API_PATHS.jobRevision, { id: unknown, number: 1 }) },
      { method: 'POST', url: fillPath(API_PATHS.jobDuplicate, { id: unknown }) },
      { method: 'POST', url: fillPath(API_PATHS.jobRestore, { id: unknown }) },
      { method: 'GET', url: fillPath(API_PATHS.jobCardPdf, { id: unknown }) },
      { method: 'GET', url: fillPath(API_PATHS.jobCardPage, { id: unknown }) },
    ] as const;
    for (const request of asked) {
      const reply = await server.inject(request);
      expect([request.url, reply.statusCode, reply.json<{ code: string }>().code]).toEqual([
        request.url,
        404,
        'JOB_NOT_FOUND',
      ]);
    }
  });

  it('have no revisions but their own', async () => {
    const { id } = await create(whole);
    const reply = await server.inject(fillPath(API_PATHS.jobRevision, { id, number: 2 }));
    expect([reply.statusCode, reply.json()]).toEqual([
      404,
      { code: 'REVISION_NOT_FOUND', message: 'This job has no revision 2; its revisions are 1 to 1.' },
    ]);
  });

  it.each([[{ text: 7 }], [{}], [[]], ['text'], [{ text: 'a\0b' }], [{ text: '\ud800' }]])(
    'are not made from %j',
    async (payload) => {
      const reply = await server.inject({
        method: 'POST',
        url: API_PATHS.jobs,
        headers: { 'content-type': 'application/json' },
        payload: JSON.stringify(payload),
      });
      expect([reply.statusCode, reply.json<{ code: string }>().code]).toEqual([400, 'REQUEST_INVALID']);
      expect((await server.inject(API_PATHS.jobs)).json()).toEqual([]);
    },
  );

  it('are refused, not cut, when they are too long', async () => {
    const reply = await server.inject({
      method: 'POST',
      url: API_PATHS.jobs,
      payload: { text: `title: long\n#${'x'.repeat(200_000)}` },
    });
    expect([reply.statusCode, reply.json<{ code: string }>().code]).toEqual([413, 'JOB_TOO_LARGE']);
    expect((await server.inject(API_PATHS.jobs)).json()).toEqual([]);
  });

  it('tell when the store cannot be reached', async () => {
    await test.store.close();
    const reply = await server.inject(API_PATHS.jobs);
    expect([reply.statusCode, reply.json<{ code: string }>().code]).toEqual([503, 'STORE_UNAVAILABLE']);
  });
});
