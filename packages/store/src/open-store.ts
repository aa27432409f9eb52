import { type AuditReport, auditCompany, type HistoryEnd } from './audit/audit.ts';
import { type BackupParts, type BackupReport, backupLines } from './backup/backup.ts';
import { type RestoreReport, restoreBackup } from './backup/restore.ts';
import { openPostgres } from './database/postgres-database.ts';
import { openSqlite } from './database/sqlite-database.ts';
import { attempt } from './database/store-failure.ts';
import { type Actor, COMPANY, NOBODY } from './history/change.ts';
import { type HistoryStore, sqlHistoryStore } from './history/history-store.ts';
import { workOn } from './history/work.ts';
import type { StoreSources } from './job/sql-job-store.ts';
import { migrate } from './migration/migrate.ts';
import { MIGRATIONS } from './migration/migrations.ts';
import type { Originals } from './original/index.ts';
import type { PeopleStore } from './people/people-store.ts';
import { sqlPeopleStore } from './people/sql-people-store.ts';
import { sqlStore, THE_SHOP } from './sql-store.ts';
import type { Store } from './store.ts';

/** Where everything is to be kept: a folder for SQLite, or the URL of a PostgreSQL database. */
export type StorePlace = { readonly folder: string } | { readonly url: string };

/** The shops and people of a company, in one database. */
export interface Company {
  readonly people: PeopleStore;
  /** The same, worked on by somebody, whom the history names. */
  peopleBy(actor: Actor): PeopleStore;
  /** Who changed what of people, shops and machines. */
  readonly history: HistoryStore;
  /** Holds every history to its chain and to what an earlier audit found, and what is kept to the history. */
  audit(earlier?: readonly HistoryEnd[]): Promise<AuditReport>;
  /** The lines of a backup of everything as it is now, while others work; the generator's value tells what it holds. */
  backup(parts: Omit<BackupParts, 'database' | 'now'>): AsyncGenerator<string, BackupReport>;
  /** What is kept of a shop, whether it was opened or not. */
  shop(id: string): Store;
  close(): Promise<void>;
}

/** Opens the database of a company, bringing it up to date first; throws a `StoreFailure` if it cannot be used. */
export async function openCompany(where: StorePlace, sources: StoreSources): Promise<Company> {
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
    const workBy = (who: Actor) => workOn(database, { shop: COMPANY, who, now: sources.now });
    const peopleBy = (who: Actor): PeopleStore => sqlPeopleStore(workBy(who), sources.now);
    return {
      people: peopleBy(NOBODY),
      peopleBy,
      history: sqlHistoryStore(workBy(NOBODY)),
      audit: (earlier = []) => attempt(database.place, () => auditCompany(database, earlier)),
      backup: (parts) => backupLines({ ...parts, database, now: sources.now }),
      shop: (id) => sqlStore(database, sources, id),
      close: () => database.kysely.destroy(),
    };
  });
}

/** Restores a backup into a place that keeps nothing yet. */
export async function restoreCompany(
  path: string,
  where: StorePlace,
  originalsOf: (shop: string) => Originals,
  now: () => Date,
): Promise<RestoreReport> {
  const shown = 'url' in where ? 'the PostgreSQL database' : where.folder;
  return attempt(shown, async () => {
    const database = 'url' in where ? openPostgres(where.url) : openSqlite(where.folder);
    const unhurried = database.forMigration();
    try {
      await database.check();
      return await restoreBackup(path, { database: unhurried, originalsOf, now });
    } finally {
      await unhurried.kysely.destroy();
      await database.kysely.destroy();
    }
  });
}

/** Opens the store of the one shop that a computer of its own keeps; otherwise as a company. */
export async function openStore(where: StorePlace, sources: StoreSources): Promise<Store> {
  return (await openCompany(where, sources)).shop(THE_SHOP);
}
