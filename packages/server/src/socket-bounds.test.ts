import { connect, type Socket } from 'node:net';
import { API_PATHS } from '@furrow/contract';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type RunningServer, startServer } from './start-server.ts';
import { type TestParts, testParts } from './testing/test-server.ts';

const CONNECTIONS = 12;
let test: TestParts;
let server: RunningServer;
const sockets: Socket[] = [];
beforeAll(async () => {
  test = await testParts();
  const bounds = { headers: 300, request: 600, next: 300, idle: 900, connections: CONNECTIONS };
  const started = await startServer(test.parts, 0, bounds);
  if (!started.ok) throw new Error(started.issues[0]?.message);
  server = started.value;
});
afterAll(async () => {
  for (const socket of sockets) socket.destroy();
  await server.close();
  await test.cleanUp();
  expect(test.faults).toEqual([]);
});

/** Connects and goes on sending, a piece at a time, until it is put out; gives back what it was told. */
function dribble(first: string, piece: string): Promise<string> {
  return new Promise((resolve) => {
    let told = '';
    const socket = connect(server.port, '127.0.0.1', () => socket.write(first));
    sockets.push(socket);
    const more = setInterval(() => socket.writable && socket.write(piece), 20);
    socket.on('data', (chunk) => {
      told += chunk.toString();
    });
    socket.on('error', () => undefined);
    socket.on('close', () => {
      clearInterval(more);
      resolve(told);
    });
  });
}

describe('a server that is held up', () => {
  it('puts out whoever never ends the headers, the content, or begins nothing', async () => {
    const host = `Host: 127.0.0.1:${server.port}\r\n`;
    const headers = Array.from({ length: 6 }, () => dribble(`GET / HTTP/1.1\r\n${host}`, 'X-More: y\r\n'));
    const start = `POST ${API_PATHS.jobs} HTTP/1.1\r\n${host}Content-Type: application/json\r\nContent-Length: 9000\r\n\r\n`;
    for (const told of await Promise.all(headers)) expect(told).toMatch(/^HTTP\/1\.1 408 /);
    expect(await dribble(start, ' ')).toMatch(/^HTTP\/1\.1 408 /);
    expect(await dribble('', '')).toMatch(/^(HTTP\/1\.1 408 |$)/);
  });

  it('turns away more than so many at a time, and answers again when they have gone', async () => {
    const held = Array.from({ length: CONNECTIONS }, () => dribble('GET / HTTP/1.1\r\n', 'X-More: y\r\n'));
    const turnedAway = await Promise.all(Array.from({ length: 3 }, () => dribble('GET / HTTP/1.1\r\n', '')));
    expect(turnedAway).toEqual(['', '', '']);
    await Promise.all(held);
    expect((await fetch(server.url + API_PATHS.about)).status).toBe(200);
  });
});
