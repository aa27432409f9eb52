/**
 * A program to be killed in the middle of a migration: brings a database, given as JSON, one step further than this
 * version goes, prints a line once the step has changed everything it is to change, and never ends it.
 */
import { writeSync } from 'node:fs';
import { sql } from 'kysely';
import { openPostgres } from '../database/postgres-database.ts';
import { openSqlite } from '../database/sqlite-database.ts';
import { migrate } from '../migration/migrate.ts';
import { MIGRATIONS, type Migration } from '../migration/migrations.ts';
import type { StorePlace } from '../open-store.ts';

const neverEnds: Migration = {
  name: 'never-ends',
  why: 'Stands for a long step of a later version.',
  up: async (database) => {
    await database.schema.createTable('later').addColumn('id', 'text').execute();
    await sql`update document_revision set content = 'overwritten'`.execute(database);
    writeSync(1, 'changed\n');
    await new Promise((resolve) => setTimeout(resolve, 2 ** 31 - 1));
  },
};

const place = JSON.parse(process.argv[2] ?? '') as StorePlace;
const database = 'url' in place ? openPostgres(place.url) : openSqlite(place.folder);
await migrate(database, [...MIGRATIONS, neverEnds], () => new Date());
