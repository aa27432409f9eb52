import { createServer } from 'node:http';
import { PROGRAM_VERSION } from '@furrow/contract';
import type { Metrics } from './metrics.ts';

/** Whether the program can do its work. */
export interface Health {
  readonly ok: boolean;
  /** What stands in the way. */
  readonly trouble?: string;
}

/** What is told to whoever watches over the program. */
export interface MonitorParts {
  readonly health: () => Promise<Health>;
  readonly metrics: Metrics;
}

/** A monitor that listens. */
export interface Monitor {
  readonly port: number;
  readonly close: () => Promise<void>;
}

/** The monitor answers on this computer only: it asks nobody who they are. */
const LOOPBACK = '127.0.0.1';

/** Answers `/health` (200, or 503 with why not) and `/metrics` on a port of this computer's own address. */
export async function startMonitor({ health, metrics }: MonitorParts, port: number): Promise<Monitor> {
  const server = createServer({ requestTimeout: 5000 }, (request, response) => {
    const answer = async (): Promise<void> => {
      if (request.method !== 'GET') return void response.writeHead(405).end();
      const path = request.url?.split('?')[0];
      if (path === '/health') {
        const found = await health();
        const body = { ...found, version: PROGRAM_VERSION };
        response.writeHead(found.ok ? 200 : 503, { 'content-type': 'application/json; charset=utf-8' });
        response.end(JSON.stringify(body));
      } else if (path === '/metrics')
        response.writeHead(200, { 'content-type': metrics.contentType }).end(await metrics.text());
      else response.writeHead(404).end();
    };
    answer().catch(() => response.destroy());
  });
  await new Promise<void>((resolve, reject) => {
    server.once('error', reject).listen(port, LOOPBACK, resolve);
  });
  const address = server.address();
  return {
    port: typeof address === 'object' && address !== null ? address.port : port,
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}
