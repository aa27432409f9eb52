import { readFileSync } from 'node:fs';
import { connect } from 'node:net';
import { networkInterfaces } from 'node:os';
import { join } from 'node:path';
import { API_PATHS, REQUEST_BYTES_MOST } from '@furrow/contract';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { Refused } from './guard/refused.ts';
import { type RunningServer, startServer } from './start-server.ts';
import { EXAMPLES, type TestParts, testParts } from './testing/test-server.ts';
import type { Work } from './work/open-work.ts';

let test: TestParts;
let server: RunningServer;
let answer: Work['answer'];
beforeAll(async () => {
  test = await testParts();
  ({ answer } = test.parts.work);
  const work: Work = { ...test.parts.work, answer: (question, signal) => answer(question, signal) };
  const started = await startServer({ ...test.parts, work }, 0);
  if (!started.ok) throw new Error(started.issues[0]?.message);
  server = started.value;
});
afterAll(async () => {
  await server.close();
  await test.cleanUp();
  expect(test.faults).toEqual([]);
});

/** Sends bytes as they are, which no well-behaved client would, and gives back all that is answered. */
function exchange(bytes: string): Promise<string> {
  return new Promise((resolve, reject) => {
    const socket = connect(server.port, '127.0.0.1', () => socket.write(bytes));
    let answer = '';
    socket.on('data', (chunk) => {
      answer += chunk.toString();
    });
    socket.on('close', () => resolve(answer));
    socket.on('error', reject);
  });
}

function get(path: string, ...headers: string[]): string {
  return [`GET ${path} HTTP/1.1`, ...headers, 'Connection: close', '', ''].join('\r\n');
}

describe('a server that listens', () => {
  it('is reached at the address it gives', async () => {
    expect(server.url).toBe(`http://127.0.0.1:${server.port}`);
    expect((await fetch(`${server.url}${API_PATHS.about}`)).status).toBe(200);
  });

  it('is not reached at any other address of this computer', async () => {
    const others = Object.values(networkInterfaces())
      .flatMap((list) => list ?? [])
      .filter(({ internal, family }) => !internal && family === 'IPv4');
    for (const { address } of others) {
      await expect(fetch(`http://${address}:${server.port}${API_PATHS.about}`)).rejects.toThrow();
    }
  });

  it('refuses a request for another host', async () => {
    const answer = await exchange(get(API_PATHS.jobs, 'Host: yard.example'));
    expect(answer).toMatch(/^HTTP\/1\.1 421 /);
    expect(answer).toContain('"code":"HOST_REFUSED"');
    expect(await exchange(get(API_PATHS.jobs, `Host: yard.example:${server.port}`))).toContain(
      'HOST_REFUSED',
    );
    expect(await exchange(get(API_PATHS.jobs, 'Host: 127.0.0.1'))).toContain('HOST_REFUSED');
    expect(await exchange(get(API_PATHS.jobs, `Host: localhost:${server.port}`))).toMatch(/^HTTP\/1\.1 200 /);
  });

  it('refuses a request of another origin and saves nothing of it', async () => {
    const reply = await fetch(`${server.url}${API_PATHS.jobs}`, {
      method: 'POST',
      headers: { origin: 'http://yard.example', 'content-type': 'application/json' },
      body: JSON.stringify({ text: 'title: planted' }),
    });
    expect([reply.status, await reply.json()]).toMatchObject([403, { code: 'ORIGIN_REFUSED' }]);
    expect(await test.store.list()).toEqual([]);
  });

  it('refuses the form of another page, which needs no permission to be sent', async () => {
    for (const type of ['text/plain', 'application/x-www-form-urlencoded', 'multipart/form-data']) {
      const reply = await fetch(`${server.url}${API_PATHS.jobs}`, {
        method: 'POST',
        headers: { 'content-type': type },
        body: '{"text":"title: planted"}',
      });
      expect([reply.status, await reply.json()]).toMatchObject([415, { code: 'REQUEST_MEDIA_TYPE' }]);
    }
    expect(await test.store.list()).toEqual([]);
  });

  it('refuses what is too large and says how much is taken', async () => {
    const reply = await fetch(`${server.url}${API_PATHS.jobs}`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ text: 'x'.repeat(REQUEST_BYTES_MOST) }),
    });
    expect([reply.status, await reply.json()]).toEqual([
      413,
      { code: 'REQUEST_TOO_LARGE', message: 'The request is too large: at most 1024 kB are taken.' },
    ]);
  });

  it.each(['{', '', '{"text": "a",}', '{"__proto__": {"a": 1}, "text": "a"}'])(
    'refuses the content %j',
    async (body) => {
      const reply = await fetch(`${server.url}${API_PATHS.plan}`, {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body,
      });
      expect([reply.status, await reply.json()]).toMatchObject([400, { code: 'REQUEST_INVALID' }]);
    },
  );

  it('refuses what is no UTF-8 rather than keep it changed', async () => {
    const reply = await fetch(`${server.url}${API_PATHS.jobs}`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: Buffer.concat([Buffer.from('{"text":"title: Sch'), Buffer.of(0xfc), Buffer.from('tte"}')]),
    });
    expect([reply.status, await reply.json()]).toMatchObject([
      400,
      { code: 'REQUEST_INVALID', message: 'The content is not valid UTF-8.' },
    ]);
    expect(await test.store.list()).toEqual([]);
  });

  it('tells what is wrong with a text in less than the text', async () => {
    const text = Array.from({ length: 4000 }, (_, n) => `k${n}${'x'.repeat(20)}: "${'y'.repeat(20)}"`).join(
      '\n',
    );
    for (const body of [
      { text },
      { text: 'a', ['z'.repeat(200_000)]: 1 },
      { text: 1, kit: ['z'.repeat(200_000)] },
    ]) {
      const reply = await fetch(`${server.url}${API_PATHS.plan}`, {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify(body),
      });
      expect(reply.status).toBeGreaterThanOrEqual(400);
      expect((await reply.text()).length).toBeLessThan(100_000);
    }
  });

  it('answers what is not HTTP in the form of every other error', async () => {
    expect(await exchange('what is this\r\n\r\n')).toMatch(/^HTTP\/1\.1 400 [\s\S]*"code":"REQUEST_INVALID"/);
    expect(await exchange(get('/', `X: ${'x'.repeat(20_000)}`))).toMatch(
      /^HTTP\/1\.1 431 [\s\S]*"code":"REQUEST_TOO_LARGE"/,
    );
  });

  it('plans what is sent to it', async () => {
    const job = readFileSync(join(EXAMPLES, 'defect-pocket.yaml'), 'utf8');
    const text = `${job}\nplan: { gauge_stops: never, tracks_most: 1, layers_most: 1 }\n`;
    const reply = await fetch(`${server.url}${API_PATHS.plan}`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ text }),
    });
    expect([reply.status, await reply.json()]).toMatchObject([200, { inputs: { program_version: '0.1.0' } }]);
  });

  it('stops the work on what nobody waits for any longer', async () => {
    const gone = new AbortController();
    const stopped = new Promise<string>((resolve) => {
      answer = async (_question, signal) => {
        gone.abort();
        await new Promise((leave) => signal.addEventListener('abort', leave));
        resolve('stopped');
        throw new Refused('WORK_STOPPED', 'nobody waits');
      };
    });
    const text = readFileSync(join(EXAMPLES, 'defect-pocket.yaml'), 'utf8');
    const asked = fetch(`${server.url}${API_PATHS.plan}`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ text }),
      signal: gone.signal,
    });
    await expect(asked).rejects.toThrow();
    expect(await stopped).toBe('stopped');
  });

  it('says that its port is taken', async () => {
    expect(await startServer(test.parts, server.port)).toMatchObject({
      ok: false,
      issues: [{ code: 'PORT_UNAVAILABLE', message: expect.stringContaining('another program uses it') }],
    });
  });
});
