import type { Outcome } from '@furrow/engine';
import { buildServer, type ServerParts, type SocketBounds } from './build-server.ts';
import { entryAddress } from './guard/access.ts';

/** The only address listened on: this computer's own. */
const LOOPBACK = '127.0.0.1';

/** A server that listens. */
export interface RunningServer {
  readonly url: string;
  /** Address to open in a browser for the first time: it lets that browser in. */
  readonly entry: string;
  readonly port: number;
  /** Answers no more requests; the store stays open. */
  readonly close: () => Promise<void>;
}

/** Starts the server on this computer's own address; port 0 takes any free port. */
export async function startServer(
  parts: ServerParts,
  port: number,
  bounds?: SocketBounds,
): Promise<Outcome<RunningServer>> {
  const server = await buildServer(parts, bounds);
  try {
    await server.listen({ host: LOOPBACK, port });
  } catch (error) {
    await server.close();
    const { code } = error as NodeJS.ErrnoException;
    if (code !== 'EADDRINUSE' && code !== 'EACCES') throw error;
    const why = code === 'EADDRINUSE' ? 'another program uses it' : 'this user may not';
    const message = `Port ${port} cannot be listened on: ${why}. Choose another port, or 0 for any free one.`;
    return { ok: false, issues: [{ code: 'PORT_UNAVAILABLE', message, path: '', read: String(port) }] };
  }
  const address = server.server.address();
  if (address === null || typeof address === 'string') throw new Error('the server listens on no port');
  const url = `http://${LOOPBACK}:${address.port}`;
  return {
    ok: true,
    value: {
      url,
      entry: entryAddress(url, parts.token),
      port: address.port,
      close: () => server.close(),
    },
  };
}
