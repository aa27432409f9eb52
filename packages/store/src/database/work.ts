import type { Kysely, Transaction } from 'kysely';
import type { Database } from './database.ts';
import { attempt } from './store-failure.ts';
import type { Tables } from './tables.ts';

/**
 * The ways of doing work on a database: each does all of it or none. Whatever writes is a transaction, and comes to the
 * same when it is done twice: after an answer that was lost it is done again.
 */
export interface Work {
  readonly kysely: Kysely<Tables>;
  /** For reading. */
  run<T>(work: () => Promise<T>): Promise<T>;
  /** For writing. */
  transact<T>(work: (transaction: Transaction<Tables>) => Promise<T>): Promise<T>;
}

/** Work on a database that waits its turn, and fails with a `StoreFailure` only. */
export function workOn({ kysely, place, patiently }: Database): Work {
  const run = <T>(work: () => Promise<T>): Promise<T> => attempt(place, () => patiently(work));
  return { kysely, run, transact: (work) => run(() => kysely.transaction().execute(work)) };
}
