import { openPostgres } from './database/postgres-database.ts';
import { openSqlite } from './database/sqlite-database.ts';
import { attempt } from './database/store-failure.ts';
import type { StoreSources } from './job/sql-job-store.ts';
import { migrate } from './migration/migrate.ts';
import { MIGRATIONS } from './migration/migrations.ts';
import { sqlStore } from './sql-store.ts';
import type { Store } from './store.ts';

/** Where everything is to be kept: a folder for SQLite, or the URL of a PostgreSQL database. */
export type StorePlace = { readonly folder: string } | { readonly url: string };

/** Opens the store, bringing its database up to date first; throws a `StoreFailure` if it cannot be used. */
export async function openStore(where: StorePlace, sources: StoreSources): Promise<Store> {
  const shown = 'url' in where ? 'the PostgreSQL database' : where.folder;
  return attempt(shown, async () => {
    const database = 'url' in where ? openPostgres(where.url) : openSqlite(where.folder);
    try {
      await database.patiently(() => database.check());
      await migrate(database, MIGRATIONS, sources.now);
    } catch (error) {
      await database.kysely.destroy();
      throw error;
    }
    return sqlStore(database, sources);
  });
}
