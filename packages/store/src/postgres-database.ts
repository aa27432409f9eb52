import { Kysely, PostgresDialect } from 'kysely';
import pg from 'pg';
import type { Database } from './database.ts';
import type { Tables } from './tables.ts';

const CONNECT_MILLISECONDS = 5000;
const STATEMENT_MILLISECONDS = 15_000;

/** Opens a PostgreSQL database by its URL. */
export function openPostgres(url: string): Database {
  const pool = new pg.Pool({
    connectionString: url,
    connectionTimeoutMillis: CONNECT_MILLISECONDS,
    statement_timeout: STATEMENT_MILLISECONDS,
    max: 5,
  });
  // A connection that breaks while idle is replaced at the next query; unheard, its error would end the program.
  pool.on('error', () => undefined);
  return {
    kind: 'postgresql',
    place: placeOf(pool.options),
    kysely: new Kysely<Tables>({ dialect: new PostgresDialect({ pool }) }),
    patiently: (work) => work(),
    // The backup of a PostgreSQL server belongs to whoever runs it; the migration itself is one transaction.
    backup: async () => undefined,
  };
}

function placeOf(options: pg.PoolOptions): string {
  const client = new pg.Client(options);
  return `PostgreSQL database ${client.database ?? ''} at ${client.host}`;
}
