import type { Kysely } from 'kysely';
import { sql } from 'kysely';
import type { Database } from '../database/database.ts';
import { StoreFailure } from '../database/store-failure.ts';
import type { MigrationRow, Tables } from '../database/tables.ts';
import type { Migration } from './migrations.ts';

/** Any number serves, as long as it stays: PostgreSQL's lock against two programs migrating at once. */
const MIGRATION_LOCK = 6_174_083;

/**
 * Brings a database up to date: checks that its history is the beginning of the list, backs an existing
 * database up, and runs what is missing in one transaction, so that a half-migrated database cannot exist.
 */
export async function migrate(
  database: Database,
  migrations: readonly Migration[],
  now: () => Date,
): Promise<void> {
  const history = await database.patiently(() => readHistory(database.kysely, database.kind));
  checkHistory(history, migrations, database.place);
  if (history.length === migrations.length) return;
  if (history.length > 0) await database.backup(history.length);
  const unhurried = database.forMigration();
  try {
    await unhurried.patiently(() =>
      unhurried.kysely.transaction().execute(async (transaction) => {
        if (database.kind === 'postgresql') {
          await sql`select pg_advisory_xact_lock(${MIGRATION_LOCK})`.execute(transaction);
        }
        await runMissing(transaction, database, migrations, now);
      }),
    );
  } finally {
    await unhurried.kysely.destroy();
  }
}

/** Reads the history again, now under the lock: another program may have been quicker. */
async function runMissing(
  connection: Kysely<Tables>,
  database: Database,
  migrations: readonly Migration[],
  now: () => Date,
): Promise<void> {
  await connection.schema
    .createTable('furrow_migration')
    .ifNotExists()
    .addColumn('number', 'integer', (column) => column.primaryKey())
    .addColumn('name', 'text', (column) => column.notNull())
    .addColumn('applied_at', 'text', (column) => column.notNull())
    .execute();
  const history = await readHistory(connection, database.kind);
  checkHistory(history, migrations, database.place);
  for (const [index, migration] of migrations.entries()) {
    if (index < history.length) continue;
    await migration.up(connection as unknown as Kysely<unknown>, database.kind);
    await connection
      .insertInto('furrow_migration')
      .values({ number: index + 1, name: migration.name, applied_at: now().toISOString() })
      .execute();
  }
}

async function readHistory(kysely: Kysely<Tables>, kind: Database['kind']): Promise<MigrationRow[]> {
  const exists =
    kind === 'sqlite'
      ? await sql`select 1 from sqlite_master where type = 'table' and name = 'furrow_migration'`.execute(
          kysely,
        )
      : await sql`select 1 where to_regclass('furrow_migration') is not null`.execute(kysely);
  if (exists.rows.length === 0) return [];
  return kysely.selectFrom('furrow_migration').selectAll().orderBy('number').execute();
}

function checkHistory(
  history: readonly MigrationRow[],
  migrations: readonly Migration[],
  place: string,
): void {
  for (const [index, step] of history.entries()) {
    const known = migrations[index];
    if (known?.name === step.name && step.number === index + 1) continue;
    const why =
      known === undefined
        ? `it has the step “${step.name}”, which this version does not know; start the newer version that made it`
        : `its step ${index + 1} is “${step.name}” where this version has “${known.name}”`;
    throw new StoreFailure(
      'STORE_HISTORY',
      `The database in ${place} was made by another version of Furrow: ${why}. Nothing was changed.`,
    );
  }
}
