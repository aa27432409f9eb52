import { mkdtempSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { API_PATHS, fillPath } from '@furrow/contract';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type RunningServer, startServer } from '../start-server.ts';
import { type TestParts, testParts } from '../testing/test-server.ts';
import { tokenOf } from './token-file.ts';

const TOKEN = 'a-token-of-thirty-two-characters';
const folder = mkdtempSync(join(tmpdir(), 'furrow-token-'));
let test: TestParts;
let server: RunningServer;
beforeAll(async () => {
  test = await testParts();
  const started = await startServer({ ...test.parts, token: TOKEN }, 0);
  if (!started.ok) throw new Error(started.issues[0]?.message);
  server = started.value;
});
afterAll(async () => {
  await server.close();
  await test.cleanUp();
  rmSync(folder, { recursive: true, force: true });
});

const ask = (path: string, headers: Record<string, string> = {}, method = 'GET'): Promise<Response> =>
  fetch(server.url + path, { method, headers, redirect: 'manual' });

describe('a server with a token', () => {
  it('lets nobody without it read, change or delete', async () => {
    const { id } = await test.store.create({ text: 'title: a', title: 'a', revision: null });
    const attempts: [string, string][] = [
      [API_PATHS.jobs, 'GET'],
      ['/%61pi/jobs', 'GET'],
      ['/api/nothing', 'GET'],
      [API_PATHS.openapi, 'GET'],
      [API_PATHS.about, 'GET'],
      [fillPath(API_PATHS.job, { id }), 'DELETE'],
      [fillPath(API_PATHS.jobCardPage, { id }), 'GET'],
      [fillPath(API_PATHS.examplePaperPage, { name: 'penstock-seam', file: 'set-up-card' }), 'GET'],
    ];
    const port = server.port;
    for (const [path, method] of attempts) {
      for (const headers of [
        {},
        { authorization: 'Bearer ' },
        { authorization: `Bearer ${TOKEN}x` },
        { authorization: TOKEN },
        { cookie: `furrow_${port}=` },
        { cookie: `furrow_${port}=${TOKEN.slice(1)}` },
        { cookie: `furrow_${port + 1}=${TOKEN}` },
      ] as Record<string, string>[]) {
        const reply = await ask(path, headers, method);
        expect([path, reply.status, await reply.json()]).toMatchObject([
          path,
          401,
          { code: 'TOKEN_REFUSED' },
        ]);
      }
    }
    expect(await test.store.get(id)).toBeDefined();
  });

  it('lets a program in that sends it, and a browser that was opened by its address', async () => {
    expect((await ask(API_PATHS.jobs, { authorization: `Bearer ${TOKEN}` })).status).toBe(200);
    expect(server.entry).toBe(`${server.url}/?token=${TOKEN}`);
    const entered = await fetch(server.entry, { redirect: 'manual' });
    expect([entered.status, entered.headers.get('location')]).toEqual([303, '/']);
    const cookie = entered.headers.get('set-cookie') ?? '';
    expect(cookie).toMatch(/; HttpOnly; SameSite=Strict/);
    const kept = cookie.split(';')[0] ?? '';
    expect((await ask(API_PATHS.jobs, { cookie: `other=1; ${kept}` })).status).toBe(200);
  });

  it('leads from its address nowhere else, and with a wrong token nowhere', async () => {
    const to = async (path: string) => (await ask(path)).headers.get('location');
    expect(await to(`/jobs/some-id?units=inch&token=${TOKEN}`)).toBe('/jobs/some-id?units=inch');
    expect(await to(`//yard.example/?token=${TOKEN}`)).not.toMatch(/^\/\//);
    const wrong = await ask('/?token=wrong');
    expect([wrong.status, wrong.headers.get('set-cookie')]).toEqual([401, null]);
  });

  it('serves the files of the app, which hold nothing of anybody', async () => {
    expect((await ask('/', { accept: 'text/html' })).status).toBe(200);
    expect((await ask('/assets/main-1a2b3c.js')).status).toBe(200);
  });
});

describe('tokenOf', () => {
  it('is kept for its owner alone and stays', () => {
    const place = join(folder, 'new');
    const token = tokenOf(place);
    expect(token).toMatch(/^[\w-]{32}$/);
    expect(tokenOf(place)).toBe(token);
    expect(statSync(join(place, 'access-token')).mode & 0o777).toBe(0o600);
    expect(tokenOf(join(folder, 'other'))).not.toBe(token);
  });

  it('takes no token that anybody could guess', () => {
    writeFileSync(join(folder, 'access-token'), '1234\n');
    expect(() => tokenOf(folder)).toThrow('delete it and start again');
  });
});
