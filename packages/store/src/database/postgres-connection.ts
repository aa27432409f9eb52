import { Socket } from 'node:net';
import { setTimeout as wait } from 'node:timers/promises';
import type { PostgresPool, PostgresPoolClient } from 'kysely';
import pg from 'pg';

/** The connection to PostgreSQL was lost, or the database answered nothing for so long that it was given up. */
export class ConnectionLost extends Error {
  override readonly name = 'ConnectionLost';
  /** What was asked when it was lost; after a commit nobody but the database knows whether it was done. */
  readonly during: 'connecting' | 'statement' | 'commit';
  /** It was given up after a time limit, rather than broken off. */
  readonly silent: boolean;

  constructor(during: ConnectionLost['during'], silent: boolean, message: string, cause?: unknown) {
    super(message, { cause });
    this.during = during;
    this.silent = silent;
  }
}

/** How long is waited for PostgreSQL [ms]. */
export interface PostgresPatience {
  /** For a connection, be it a new one or one that others use. */
  readonly connect: number;
  /** For the answer to one statement, counted on this side. */
  readonly answer: number;
  /** For one statement, counted by the database. */
  readonly statement: number;
  /** For a lock, counted by the database. */
  readonly lock: number;
  /** For the next statement of a transaction, counted by the database, which then takes everything back. */
  readonly idle: number;
}

/** Connections whose every step ends within a time limit, and of which a lost one is never used again. */
export interface GuardedPool extends PostgresPool {
  readonly options: pg.PoolOptions;
}

const CONNECTIONS_MOST = 5;
/** How long connections may take to say goodbye [ms]. */
const GOODBYE_MILLISECONDS = 500;

/** Makes the pool of connections to the database of a URL; nothing is connected yet. */
export function guardedPool(url: string, patience: PostgresPatience): GuardedPool {
  const sockets = new Set<Socket>();
  const pool = new pg.Pool({
    connectionString: url,
    max: CONNECTIONS_MOST,
    connectionTimeoutMillis: patience.connect,
    keepAlive: true,
    application_name: 'furrow',
    stream: () => {
      const socket = new Socket();
      sockets.add(socket);
      return socket.once('close', () => sockets.delete(socket));
    },
  });
  // A connection that breaks says so by an event, which would end the program if nobody heard it: an idle one to
  // the pool, one in use to itself. What was asked of it fails anyway.
  pool.on('error', () => undefined);
  pool.on('connect', (client) => client.on('error', () => undefined));
  const prepared = new WeakSet<pg.PoolClient>();
  return {
    options: pool.options,
    connect: async () => {
      const client = await connected(pool);
      const guarded = guardedClient(client, patience.answer);
      if (!prepared.has(client)) {
        try {
          await prepare(guarded, patience);
        } catch (error) {
          guarded.release(true);
          throw error;
        }
        prepared.add(client);
      }
      return guarded;
    },
    end: async () => {
      await Promise.race([pool.end(), wait(GOODBYE_MILLISECONDS)]);
      // What a silent database never said goodbye to would keep the program from ending.
      for (const socket of sockets) socket.destroy();
    },
  };
}

async function connected(pool: pg.Pool): Promise<pg.PoolClient> {
  try {
    return await pool.connect();
  } catch (error) {
    if (isRefusal(error)) throw error;
    const silent = /timeout/i.test(messageOf(error));
    throw new ConnectionLost('connecting', silent, `it cannot be reached (${messageOf(error)})`, error);
  }
}

/**
 * What Furrow relies on, whatever the server, the database or the role is set to: a commit is on the disk when it is
 * acknowledged, and nothing waits for ever.
 */
async function prepare(
  client: PostgresPoolClient,
  { statement, lock, idle }: PostgresPatience,
): Promise<void> {
  await client.query(
    `select set_config('synchronous_commit', 'on', false)
     where current_setting('synchronous_commit') not in ('on', 'remote_apply')`,
    [],
  );
  await client.query(
    `select set_config('statement_timeout', $1, false), set_config('lock_timeout', $2, false),
            set_config('idle_in_transaction_session_timeout', $3, false)`,
    [statement, lock, idle].map((milliseconds) => `${milliseconds}ms`),
  );
}

/** A connection whose statements are given up after a time, and which is thrown away once it was lost. */
function guardedClient(client: pg.PoolClient, answerMilliseconds: number): PostgresPoolClient {
  let lost: ConnectionLost | undefined;
  const query = async (text: string, values: readonly unknown[]): Promise<unknown> => {
    if (lost !== undefined) throw lost;
    const during = text === 'commit' ? 'commit' : 'statement';
    const stop = new AbortController();
    const late = wait(answerMilliseconds, undefined, { signal: stop.signal }).then(
      () => new ConnectionLost(during, true, `it did not answer for ${answerMilliseconds / 1000} s`),
      () => undefined,
    );
    const asked = client.query(text, [...values]);
    asked.catch(() => undefined);
    try {
      const first = await Promise.race([asked, late]);
      if (!(first instanceof ConnectionLost)) return first;
      lost = first;
    } catch (error) {
      if (isRefusal(error)) throw error;
      lost = new ConnectionLost(during, false, `its connection broke (${messageOf(error)})`, error);
    } finally {
      stop.abort();
    }
    throw lost;
  };
  return {
    query: query as PostgresPoolClient['query'],
    release: (discard) => client.release(discard === true || lost !== undefined),
  };
}

/** Whether the database itself refused, over a connection that goes on. */
function isRefusal(error: unknown): boolean {
  return error instanceof pg.DatabaseError && error.severity !== 'FATAL' && error.severity !== 'PANIC';
}

function messageOf(error: unknown): string {
  // Where a name stands for several addresses, the failure of each is told within.
  if (error instanceof AggregateError) return error.errors.map(messageOf).join(', ');
  return error instanceof Error ? error.message : String(error);
}
