import { migrate } from './migrate.ts';
import { MIGRATIONS } from './migrations.ts';
import { openPostgres } from './postgres-database.ts';
import type { StoreSources } from './sql-job-store.ts';
import { sqlStore } from './sql-store.ts';
import { openSqlite } from './sqlite-database.ts';
import type { Store } from './store.ts';
import { attempt } from './store-failure.ts';

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
