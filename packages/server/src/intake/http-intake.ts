import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import { JournalFailure } from '@furrow/store';
import type { Intake } from './intake.ts';
import type { Source } from './source.ts';
import { TooManyLines, takeLines } from './take-lines.ts';

const LOOPBACK = '127.0.0.1';
/** Content that no page of another origin may send without asking first. */
const NDJSON = /^application\/(?:x-ndjson|jsonl|json)\b/u;

/**
 * Listens for newline JSON on this computer's own address: `POST /` with a frame per line. The answer comes when all
 * frames of the request are on disk: 200 with the number kept and those refused, by line.
 */
export async function httpSource(intake: Intake, port: number): Promise<Source> {
  const server = createServer((request, response) => {
    answer(request, response, intake).catch((error: unknown) => {
      const status = error instanceof JournalFailure ? (error.full ? 507 : 503) : 400;
      tell(response, status, { message: error instanceof Error ? error.message : 'not read' });
      request.destroy();
    });
  });
  server.requestTimeout = 60_000;
  server.maxConnections = 256;
  await new Promise<void>((done, fail) => {
    server.once('error', fail);
    server.listen({ host: LOOPBACK, port }, done);
  });
  const address = server.address();
  const heard = typeof address === 'object' && address !== null ? address.port : port;
  return {
    address: `http://${LOOPBACK}:${heard}/`,
    close: () =>
      new Promise((done) => {
        server.close(() => done());
        server.closeAllConnections();
      }),
  };
}

function tell(response: ServerResponse, status: number, content: object): void {
  if (response.headersSent) return;
  response.writeHead(status, { 'content-type': 'application/json' });
  response.end(JSON.stringify(content));
}

async function answer(request: IncomingMessage, response: ServerResponse, intake: Intake): Promise<void> {
  const port = request.socket.localPort;
  if (![`${LOOPBACK}:${port}`, `localhost:${port}`].includes(request.headers.host ?? ''))
    return tell(response, 403, {
      message: 'Send readings to the address that is listened on, by its own name.',
    });
  if (request.method !== 'POST') return tell(response, 405, { message: 'Readings are sent by POST.' });
  if (!NDJSON.test(request.headers['content-type'] ?? ''))
    return tell(response, 415, {
      message: 'Readings are sent as application/x-ndjson: a JSON object per line.',
    });
  try {
    tell(response, 200, await takeLines(request, intake));
  } catch (error) {
    if (!(error instanceof TooManyLines)) throw error;
    tell(response, 413, { message: error.message, kept: error.kept });
    request.destroy();
  }
}
