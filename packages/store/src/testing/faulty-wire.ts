import { createConnection, createServer, type Socket } from 'node:net';
import { join } from 'node:path';

/** What happens to a commit on its way: the request or its answer is lost, and the connection breaks. */
export type CommitFault = 'request lost' | 'answer lost';

/** A line to a test's PostgreSQL server that can be cut, and that can lose what it carries. */
export interface FaultyWire {
  /** URL of the same database, by this line. */
  readonly url: string;
  /** What becomes of the next commits, in order; those after them pass. */
  readonly loseCommits: (...faults: readonly CommitFault[]) => void;
  /** From now on nothing gets through in either direction, and nothing is cut. */
  readonly silence: (silent: boolean) => void;
  /** Breaks every connection. */
  readonly cut: () => void;
  readonly close: () => Promise<void>;
}

/** Lays a line to the database of a URL that names the folder of the server's socket. */
export async function faultyWire(url: string): Promise<FaultyWire> {
  const { pathname, searchParams } = new URL(url);
  const socketFile = join(searchParams.get('host') ?? '', '.s.PGSQL.5432');
  const ends = new Set<Socket>();
  let faults: CommitFault[] = [];
  let silent = false;

  const cutAll = (): void => {
    for (const end of ends) end.destroy();
  };

  const server = createServer((near) => {
    const far = createConnection(socketFile);
    let deaf = false;
    const cut = (): void => {
      near.destroy();
      far.destroy();
    };
    for (const end of [near, far]) {
      ends.add(end);
      end.on('error', cut).on('close', () => {
        ends.delete(end);
        cut();
      });
    }
    near.on('data', (bytes) => {
      if (silent) return;
      const fault = bytes.includes('commit') ? faults.shift() : undefined;
      if (fault === 'request lost') return cut();
      deaf ||= fault === 'answer lost';
      far.write(bytes);
    });
    far.on('data', (bytes) => {
      if (deaf) return cut();
      if (!silent) near.write(bytes);
    });
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const address = server.address();
  if (address === null || typeof address === 'string') throw new Error('the line listens on no port');
  return {
    url: `postgresql://furrow@127.0.0.1:${address.port}${pathname}`,
    loseCommits: (...next) => {
      faults = [...next];
    },
    silence: (next) => {
      silent = next;
    },
    cut: cutAll,
    close: () => {
      cutAll();
      return new Promise((resolve) => server.close(() => resolve()));
    },
  };
}
