import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import { JournalFailure } from '@furrow/store';
import { FRAME_BYTES_MOST } from './frame.ts';
import type { Intake } from './intake.ts';
import { LineCutter } from './line-cutter.ts';

const LOOPBACK = '127.0.0.1';
/** Greatest body of one request [bytes]. */
const BODY_MOST = 16 * 1024 * 1024;
/** Content that no page of another origin may send without asking first. */
const NDJSON = /^application\/(?:x-ndjson|jsonl|json)\b/u;
const REFUSED_NAMED = 20;

/** Something that brings readings until it is closed. */
export interface Source {
  /** Where readings can be sent, or where they come from. */
  readonly address: string;
  close(): Promise<void>;
}

/**
 * Listens for newline JSON on this computer's own address: `POST /` with a frame per line. The answer comes when all
 * frames of the request are on disk: 200 with the number kept and those refused, by line.
 */
export async function httpSource(intake: Intake, port: number): Promise<Source> {
  const server = createServer((request, response) => {
    answer(request, response, intake).catch((error: unknown) => {
      const full = error instanceof JournalFailure;
      tell(response, full ? 507 : 400, { message: error instanceof Error ? error.message : 'not read' });
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
  const cutter = new LineCutter(FRAME_BYTES_MOST);
  const refused: { line: number; why: string }[] = [];
  let line = 0;
  let length = 0;
  let kept = 0;
  let refusedCount = 0;
  const take = async (lines: readonly Uint8Array[]): Promise<void> => {
    const outcomes = await Promise.all(
      lines.map(async (bytes) => {
        line += 1;
        const at = line;
        return bytes.length === 0 ? undefined : { at, why: await intake.take(bytes) };
      }),
    );
    for (const outcome of outcomes) {
      if (outcome === undefined) continue;
      if (outcome.why === undefined) kept += 1;
      else {
        refusedCount += 1;
        if (refused.length < REFUSED_NAMED) refused.push({ line: outcome.at, why: outcome.why });
      }
    }
  };
  for await (const piece of request) {
    length += (piece as Buffer).length;
    if (length > BODY_MOST) {
      tell(response, 413, { message: `A request holds at most ${BODY_MOST / 1024 / 1024} MiB.`, kept });
      request.destroy();
      return;
    }
    await take(cutter.push(piece as Buffer));
  }
  await take(cutter.end());
  tell(response, 200, { kept, refused, refused_count: refusedCount });
}
