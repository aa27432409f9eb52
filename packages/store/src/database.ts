import type { Kysely } from 'kysely';
import type { Tables } from './tables.ts';

/** An open database of either kind. */
export interface Database {
  readonly kind: 'sqlite' | 'postgresql';
  /** Where it is, as shown to a person; never with a password. */
  readonly place: string;
  readonly kysely: Kysely<Tables>;
  /** Does a piece of work, waiting for its turn where another program holds the database. */
  patiently<T>(work: () => Promise<T>): Promise<T>;
  /** Copies the database aside before a migration, `step` being the last one it has been through. */
  backup(step: number): Promise<void>;
}
