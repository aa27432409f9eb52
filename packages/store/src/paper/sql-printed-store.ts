import { documentTable, type Turn } from '../document/document-table.ts';
import { printedHash } from '../history/held.ts';
import type { Work } from '../history/work.ts';
import type { PrintedStore } from './printed-store.ts';

/** What a store is given from outside to write down what was printed. */
interface PrintedSources {
  readonly now: () => Date;
  readonly newId: () => string;
}

/** The papers that were handed out, in their table. */
export function sqlPrintedStore(work: Work, { now, newId }: PrintedSources): PrintedStore {
  const { kysely, run, transact, desk } = work;
  const { shop } = desk;
  const jobs = documentTable(work, 'job');
  return {
    list: (jobId) =>
      run(async () => {
        if ((await jobs.find(kysely, jobId)) === undefined) return undefined;
        return kysely
          .selectFrom('printed')
          .select([
            'paper',
            'revision_number',
            'revision',
            'kit_revision',
            'knowledge_id',
            'printed_at',
            'released_by',
          ])
          .where('shop', '=', shop)
          .where('job_id', '=', jobId)
          .orderBy('printed_at', 'desc')
          .orderBy('id')
          .execute();
      }),
    add: (jobId, { paper, revision_number, revision, kit_revision, knowledge_id }) => {
      const id = newId();
      return transact(async (transaction, note) => {
        if ((await jobs.find(transaction, jobId)) === undefined) return false;
        const printed_at = now().toISOString();
        const of = { paper, revision_number, revision, kit_revision, knowledge_id };
        const values = { ...of, printed_at, released_by: desk.who.name };
        const { numInsertedOrUpdatedRows } = await transaction
          .insertInto('printed')
          .values({ shop, id, job_id: jobId, ...values })
          .onConflict((conflict) => conflict.doNothing())
          .executeTakeFirst();
        if (numInsertedOrUpdatedRows === 1n)
          note({
            act: 'release',
            kind: 'paper',
            thing: id,
            after: `${jobId} ${paper}`,
            content: printedHash({ job_id: jobId, ...values }),
          });
        return true;
      });
    },
  };
}

/** Erases for good which papers of a job were handed out. */
export async function erasePrinted({ transaction, note }: Turn, shop: string, jobId: string): Promise<void> {
  const rows = await transaction
    .deleteFrom('printed')
    .where('shop', '=', shop)
    .where('job_id', '=', jobId)
    .returning('id')
    .execute();
  for (const { id } of rows) note({ act: 'erase', kind: 'paper', thing: id });
}
