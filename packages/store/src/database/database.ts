import type { Kysely } from 'kysely';
import type { Tables } from './tables.ts';

/** What a database held at one moment. */
export interface Snapshot {
  readonly on: Kysely<Tables>;
  readonly close: () => Promise<void>;
}

/** An open database of either kind. */
export interface Database {
  readonly kind: 'sqlite' | 'postgresql';
  /** Where it is, as shown to a person; never with a password. */
  readonly place: string;
  readonly kysely: Kysely<Tables>;
  /** Does a piece of work that comes to the same when done twice, again where that can help. */
  patiently<T>(work: () => Promise<T>): Promise<T>;
  /** Throws a `StoreFailure` where this database cannot keep what Furrow stores. */
  check(): Promise<void>;
  /** The same database, opened once more with time for a migration. */
  forMigration(): Database;
  /** Everything as it is now, to be read while others go on with their work, until it is closed. */
  snapshot(): Promise<Snapshot>;
  /** Copies the database aside before a migration, `step` being the last one it has been through. */
  backup(step: number): Promise<void>;
}
