import { API_PATHS, type Example, fillPath, PROGRAM_VERSION } from '@furrow/contract';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { buildServer } from './build-server.ts';
import type { ZodServer } from './routes/zod-server.ts';
import { type TestParts, testParts } from './testing/test-server.ts';

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

const asPage = { accept: 'text/html,application/xhtml+xml' };

describe('the server', () => {
  it('says what runs and where its data lies', async () => {
    expect((await server.inject(API_PATHS.about)).json()).toEqual({
      program_version: PROGRAM_VERSION,
      data_folder: test.store.place,
      store: 'sqlite',
    });
  });

  it('hands out the demo jobs', async () => {
    const examples = (await server.inject(API_PATHS.examples)).json<Example[]>();
    expect(examples.map(({ name }) => name)).toContain('penstock-seam');
    for (const { title, text } of examples) expect(text).toContain(`title: ${title}`);
  });

  it('hands out the demo kits apart from the jobs', async () => {
    const kits = (await server.inject(API_PATHS.kitExamples)).json<Example[]>();
    expect(kits.map(({ name }) => name)).toContain('yard-kit');
    for (const { title, text } of kits) expect(text).toContain(`title: ${title}`);
    const jobs = (await server.inject(API_PATHS.examples)).json<Example[]>();
    expect(jobs.map(({ name }) => name)).not.toContain('yard-kit');
  });

  it.each(['/', '/jobs', '/jobs/some-id'])('answers %s with the app', async (url) => {
    const reply = await server.inject({ url, headers: asPage });
    expect([reply.statusCode, reply.headers['cache-control']]).toEqual([200, 'no-cache']);
    expect(reply.body).toContain('the app');
  });

  it('serves the files of the app, named by their content, for good', async () => {
    const reply = await server.inject('/assets/main-1a2b3c.js');
    expect(reply.statusCode).toBe(200);
    expect(reply.headers['content-type']).toMatch(/javascript/);
    expect(reply.headers['cache-control']).toContain('immutable');
  });

  it.each([
    ['/assets/gone.js', asPage],
    ['/../data/furrow.sqlite', {}],
    ['/..%2fdata%2ffurrow.sqlite', {}],
    ['/%2e%2e/data/furrow.sqlite', {}],
    ['/api/nothing', asPage],
    ['/jobs', {}],
  ])('has nothing at %s', async (url, headers) => {
    const reply = await server.inject({ url, headers });
    expect(reply.statusCode).toBe(404);
    expect(reply.body).not.toContain('SQLite');
    expect(reply.body).toContain('PATH_NOT_FOUND');
  });

  it('serves no page that could be framed, scripted or styled from elsewhere', async () => {
    for (const url of ['/', API_PATHS.jobs, '/nothing', '/%zz']) {
      const { headers } = await server.inject({ url, headers: asPage });
      expect(headers['cache-control'], url).toBe(['/', '/nothing'].includes(url) ? 'no-cache' : 'no-store');
      const policy = String(headers['content-security-policy']);
      expect(policy, url).toContain("default-src 'none'");
      expect(policy.replaceAll("'wasm-unsafe-eval'", ''), url).not.toContain('unsafe');
      expect(policy, url).toContain("frame-ancestors 'none'");
      expect(headers['x-content-type-options'], url).toBe('nosniff');
      expect(headers['referrer-policy'], url).toBe('same-origin');
      expect(headers['access-control-allow-origin'], url).toBeUndefined();
    }
  });

  it.each(['/api/jobs', '/%61pi/jobs', '/%61%70%69/jobs', '/ap%69/nothing'])(
    'lets no answer of the API be kept, nor another site ask, however it is written: %s',
    async (url) => {
      expect((await server.inject(url)).headers['cache-control']).toBe('no-store');
      const headers = {
        'sec-fetch-site': 'cross-site',
        'sec-fetch-mode': 'navigate',
        'sec-fetch-dest': 'document',
      };
      expect((await server.inject({ url, headers })).json()).toMatchObject({ code: 'ORIGIN_REFUSED' });
    },
  );

  it('plans nothing for the pictures of another site', async () => {
    const headers = {
      'sec-fetch-site': 'cross-site',
      'sec-fetch-mode': 'no-cors',
      'sec-fetch-dest': 'image',
    };
    const url = fillPath(API_PATHS.examplePaperPage, { name: 'penstock-seam', file: 'set-up-card' });
    const replies = await Promise.all(Array.from({ length: 12 }, () => server.inject({ url, headers })));
    expect(replies.map(({ statusCode }) => statusCode)).toEqual(Array(12).fill(403));
  });

  it('answers another site’s question before sending with no permission', async () => {
    const reply = await server.inject({
      method: 'OPTIONS',
      url: API_PATHS.jobs,
      headers: { origin: 'http://yard.example', 'access-control-request-method': 'POST' },
    });
    expect([reply.statusCode, reply.json<{ code: string }>().code]).toEqual([403, 'ORIGIN_REFUSED']);
    expect(reply.headers['access-control-allow-origin']).toBeUndefined();
  });

  it('tells a bug to its log and not to the one who asked', async () => {
    const broken = await testParts();
    const list = async (): Promise<never> => {
      throw new Error('secret: the list fell over');
    };
    const faulty = await buildServer({ ...broken.parts, store: { ...broken.store, list } });
    const reply = await faulty.inject(API_PATHS.jobs);
    expect([reply.statusCode, reply.json<{ code: string }>().code]).toEqual([500, 'PROGRAM_FAULT']);
    expect(reply.body).not.toMatch(/secret|\.ts|at /);
    expect(broken.faults).toEqual([expect.stringContaining('secret: the list fell over')]);
    await faulty.close();
    await broken.cleanUp();
  });

  it('serves the API alone where there is no app', async () => {
    const alone = await buildServer({ ...test.parts, appFolder: undefined });
    expect((await alone.inject({ url: '/', headers: asPage })).statusCode).toBe(404);
    expect((await alone.inject(API_PATHS.about)).statusCode).toBe(200);
    await alone.close();
  });
});
