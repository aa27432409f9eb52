import type { Transaction } from 'kysely';
import type { Tables } from '../database/tables.ts';
import type { Work } from '../database/work.ts';
import { documentTable } from '../document/document-table.ts';
import type { PrintedStore } from './printed-store.ts';

/** What a store is given from outside to write down what was printed. */
interface PrintedSources {
  readonly now: () => Date;
  readonly newId: () => string;
}

/** The papers that were handed out, in their table. */
export function sqlPrintedStore(
  { kysely, run, transact }: Work,
  shop: string,
  { now, newId }: PrintedSources,
): PrintedStore {
  const jobs = documentTable(shop, 'job');
  return {
    list: (jobId) =>
      run(async () => {
        if ((await jobs.find(kysely, jobId)) === undefined) return undefined;
        return kysely
          .selectFrom('printed')
          .select(['paper', 'revision_number', 'revision', 'kit_revision', 'knowledge_id', 'printed_at'])
          .where('shop', '=', shop)
          .where('job_id', '=', jobId)
          .orderBy('printed_at', 'desc')
          .orderBy('id')
          .execute();
      }),
    add: (jobId, { paper, revision_number, revision, kit_revision, knowledge_id }) => {
      const id = newId();
      return transact(async (transaction) => {
        if ((await jobs.find(transaction, jobId)) === undefined) return false;
        const printed_at = now().toISOString();
        const values = { paper, revision_number, revision, kit_revision, knowledge_id, printed_at };
        await transaction
          .insertInto('printed')
          .values({ shop, id, job_id: jobId, ...values })
          .onConflict((conflict) => conflict.doNothing())
          .execute();
        return true;
      });
    },
  };
}

/** Erases for good which papers of a job were handed out. */
export async function erasePrinted(
  transaction: Transaction<Tables>,
  shop: string,
  jobId: string,
): Promise<void> {
  await transaction.deleteFrom('printed').where('shop', '=', shop).where('job_id', '=', jobId).execute();
}
