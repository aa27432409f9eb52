import type { Kysely, Transaction } from 'kysely';
import type { Database } from '../database/database.ts';
import { attempt } from '../database/store-failure.ts';
import type { Tables } from '../database/tables.ts';
import { append, type Desk } from './append.ts';
import type { Change } from './change.ts';

/** Writes down that something is changed; it enters the history together with the change, or neither is. */
export type Note = (change: Change) => void;

/**
 * The ways of doing work on a database: each does all of it or none. Whatever writes is a transaction that notes what it
 * changes, and comes to the same when it is done twice: after an answer that was lost it is done again.
 */
export interface Work {
  readonly kysely: Kysely<Tables>;
  /** Who works where. */
  readonly desk: Desk;
  /** For reading. */
  run<T>(work: () => Promise<T>): Promise<T>;
  /** For writing. */
  transact<T>(work: (transaction: Transaction<Tables>, note: Note) => Promise<T>): Promise<T>;
}

/** Work on a database that waits its turn, and fails with a `StoreFailure` only. */
export function workOn({ kysely, place, patiently }: Database, desk: Desk): Work {
  const run = <T>(work: () => Promise<T>): Promise<T> => attempt(place, () => patiently(work));
  return {
    kysely,
    desk,
    run,
    transact: (work) =>
      run(() =>
        kysely.transaction().execute(async (transaction) => {
          const changes: Change[] = [];
          const done = await work(transaction, (change) => changes.push(change));
          await append(transaction, desk, changes);
          return done;
        }),
      ),
  };
}
