import type { Outcome } from '@furrow/engine';
import { buildServer, type ServerParts, type SocketBounds } from './build-server.ts';
import { entryAddress } from './guard/access.ts';

/** What stands in the way of listening. */
const WHY_NOT: Readonly<Record<string, string>> = {
  EADDRINUSE: 'another program uses it',
  EACCES: 'this user may not',
  EADDRNOTAVAIL: 'this computer has no such address',
  ENOTFOUND: 'this computer has no such address',
};
/** The address listened on unless another is given: this computer's own. */
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

/** Starts the server on this computer's own address, or on the one given; port 0 takes any free port. */
export async function startServer(
  parts: ServerParts,
  port: number,
  bounds?: SocketBounds,
  host = LOOPBACK,
): Promise<Outcome<RunningServer>> {
  const server = await buildServer(parts, bounds);
  try {
    await server.listen({ host, port });
  } catch (error) {
    await server.close();
    const { code } = error as NodeJS.ErrnoException;
    const why = WHY_NOT[code ?? ''];
    if (why === undefined) throw error;
    const message = `Port ${port} of ${host} cannot be listened on: ${why}. Choose another port, or 0 for any free one.`;
    return { ok: false, issues: [{ code: 'PORT_UNAVAILABLE', message, path: '', read: String(port) }] };
  }
  const address = server.server.address();
  if (address === null || typeof address === 'string') throw new Error('the server listens on no port');
  const url = parts.accounts?.open?.address.origin ?? `http://${LOOPBACK}:${address.port}`;
  return {
    ok: true,
    value: {
      url,
      entry: entryAddress(url, parts.accounts === undefined ? parts.token : undefined),
      port: address.port,
      close: () => server.close(),
    },
  };
}
