import type { Kysely, Transaction } from 'kysely';
import type { Database } from './database.ts';
import { attempt } from './store-failure.ts';
import type { Tables } from './tables.ts';

/** The ways of doing work on a database: each does all of it or none. */
export interface Work {
  readonly kysely: Kysely<Tables>;
  run<T>(work: () => Promise<T>): Promise<T>;
  transact<T>(work: (transaction: Transaction<Tables>) => Promise<T>): Promise<T>;
}

/** Work on a database that waits its turn, and fails with a `StoreFailure` only. */
export function workOn({ kysely, place, patiently }: Database): Work {
  const run = <T>(work: () => Promise<T>): Promise<T> => attempt(place, () => patiently(work));
  return { kysely, run, transact: (work) => run(() => kysely.transaction().execute(work)) };
}
