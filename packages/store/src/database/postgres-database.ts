import { Kysely, PostgresDialect, sql } from 'kysely';
import pg from 'pg';
import type { Database } from './database.ts';
import { ConnectionLost, guardedPool, type PostgresPatience } from './postgres-connection.ts';
import { StoreFailure } from './store-failure.ts';
import type { Tables } from './tables.ts';

/** While somebody waits for an answer. */
const AT_WORK: PostgresPatience = { connect: 4000, answer: 8000, statement: 6000, lock: 4000, idle: 8000 };

/** While the database is brought up to date, which may rewrite large tables or wait for another program doing so. */
const WHILE_MIGRATING: PostgresPatience = {
  connect: 4000,
  answer: 3_600_000,
  statement: 3_600_000,
  lock: 600_000,
  idle: 60_000,
};

/** States after which the same work, done again, can well succeed: serialisation failure, deadlock. */
const WORTH_ANOTHER_TRY = new Set(['40001', '40P01']);

/** Opens a PostgreSQL database by its URL. */
export function openPostgres(url: string, patience: PostgresPatience = AT_WORK): Database {
  const pool = guardedPool(url, patience);
  const place = placeOf(pool.options);
  const kysely = new Kysely<Tables>({ dialect: new PostgresDialect({ pool }) });
  return {
    kind: 'postgresql',
    place,
    kysely,
    patiently: (work) => again(work, place),
    check: () => checkEncoding(kysely, place),
    forMigration: () => openPostgres(url, { ...WHILE_MIGRATING, connect: patience.connect }),
    snapshot: async () => {
      const unhurried = openPostgres(url, { ...WHILE_MIGRATING, connect: patience.connect });
      try {
        const on = await unhurried.kysely
          .startTransaction()
          .setIsolationLevel('repeatable read')
          .setAccessMode('read only')
          .execute();
        const close = async (): Promise<void> => {
          await on.rollback().execute();
          await unhurried.kysely.destroy();
        };
        return { on, close };
      } catch (error) {
        await unhurried.kysely.destroy();
        throw error;
      }
    },
    // The backup of a PostgreSQL server belongs to whoever runs it; the migration itself is one transaction.
    backup: async () => undefined,
  };
}

/**
 * Does work once more on another connection where that can help: after a restart of the database every connection is
 * found broken, and after a lost answer to a commit only asking again tells what became of it. All work of the store
 * comes to the same when it is done twice.
 */
async function again<T>(work: () => Promise<T>, place: string): Promise<T> {
  let first: unknown;
  try {
    return await work();
  } catch (error) {
    if (!isWorthAnotherTry(error)) throw error;
    first = error;
  }
  try {
    return await work();
  } catch (second) {
    if (isInDoubt(first) || isInDoubt(second)) throw inDoubt(place, second);
    throw second;
  }
}

function isWorthAnotherTry(error: unknown): boolean {
  if (error instanceof ConnectionLost) return !error.silent || isInDoubt(error);
  return error instanceof pg.DatabaseError && WORTH_ANOTHER_TRY.has(error.code ?? '');
}

function isInDoubt(error: unknown): boolean {
  return error instanceof ConnectionLost && error.during === 'commit';
}

function inDoubt(place: string, cause: unknown): StoreFailure {
  const why = cause instanceof Error ? cause.message : String(cause);
  return new StoreFailure(
    'STORE_IN_DOUBT',
    `The ${place} was lost while it was storing this, so it is not known whether it is stored: ${why}. ` +
      'Save again once it answers: what is stored already is not stored twice.',
    cause,
  );
}

/** In another encoding a text could not be given back as it was written. */
async function checkEncoding(kysely: Kysely<Tables>, place: string): Promise<void> {
  const { rows } = await sql<{ server_encoding: string }>`show server_encoding`.execute(kysely);
  const encoding = rows[0]?.server_encoding;
  if (encoding === 'UTF8') return;
  throw new StoreFailure(
    'STORE_UNAVAILABLE',
    `The ${place} keeps text as ${encoding}; Furrow needs one that keeps it as UTF8, as made by ` +
      '“createdb --encoding=UTF8 --template=template0 furrow”. Nothing was changed.',
  );
}

function placeOf(options: pg.PoolOptions): string {
  const client = new pg.Client(options);
  return `PostgreSQL database ${client.database ?? ''} at ${client.host}`;
}
