import type { Kysely } from 'kysely';
import type { PrintedStore } from './printed-store.ts';
import type { Tables } from './tables.ts';
import type { Work } from './work.ts';

/** What a store is given from outside to write down what was printed. */
interface PrintedSources {
  readonly now: () => Date;
  readonly newId: () => string;
}

/** The papers that were handed out, in their table. */
export function sqlPrintedStore(
  { kysely, run, transact }: Work,
  { now, newId }: PrintedSources,
): PrintedStore {
  return {
    list: (jobId) =>
      run(async () => {
        if (!(await isKept(kysely, jobId))) return undefined;
        return kysely
          .selectFrom('printed')
          .select(['paper', 'revision_number', 'revision', 'kit_revision', 'printed_at'])
          .where('job_id', '=', jobId)
          .orderBy('printed_at', 'desc')
          .orderBy('id')
          .execute();
      }),
    add: (jobId, { paper, revision_number, revision, kit_revision }) => {
      const id = newId();
      return transact(async (transaction) => {
        if (!(await isKept(transaction, jobId))) return false;
        const printed_at = now().toISOString();
        const values = { paper, revision_number, revision, kit_revision, printed_at };
        await transaction
          .insertInto('printed')
          .values({ id, job_id: jobId, ...values })
          .onConflict((conflict) => conflict.doNothing())
          .execute();
        return true;
      });
    },
  };
}

/** Whether there is such a job outside the bin. */
async function isKept(kysely: Kysely<Tables>, jobId: string): Promise<boolean> {
  const row = await kysely
    .selectFrom('job')
    .select('id')
    .where('id', '=', jobId)
    .where('deleted_at', 'is', null)
    .executeTakeFirst();
  return row !== undefined;
}
