import { faultHash } from '../history/held.ts';
import type { Work } from '../history/work.ts';
import type { FaultCaseStore } from './fault-case-store.ts';

/** The faults found in their table. */
export function sqlFaultCaseStore(work: Work, now: () => Date): FaultCaseStore {
  const { kysely, run, transact } = work;
  const { shop } = work.desk;
  return {
    list: () =>
      run(async () => {
        const rows = await kysely
          .selectFrom('fault_case')
          .select(['id', 'cause', 'symptoms'])
          .where('shop', '=', shop)
          .orderBy('counted_at')
          .orderBy('id')
          .execute();
        return rows.map((row) => ({
          ...row,
          symptoms: JSON.parse(row.symptoms) as Readonly<Record<string, string>>,
        }));
      }),
    put: ({ id, cause, symptoms }) =>
      transact(async (transaction, note) => {
        const values = { cause, symptoms: JSON.stringify(symptoms), counted_at: now().toISOString() };
        const before = await transaction
          .selectFrom('fault_case')
          .select(['cause', 'symptoms'])
          .where('shop', '=', shop)
          .where('id', '=', id)
          .executeTakeFirst();
        if (before?.cause === cause && before.symptoms === values.symptoms) return;
        await transaction
          .insertInto('fault_case')
          .values({ shop, id, ...values })
          .onConflict((conflict) => conflict.columns(['shop', 'id']).doUpdateSet(values))
          .execute();
        const act = before === undefined ? 'add' : 'set';
        note({ act, kind: 'fault', thing: id, content: faultHash(values) });
      }),
    remove: (id) => {
      let removed = false;
      return transact(async (transaction, note) => {
        const { numDeletedRows } = await transaction
          .deleteFrom('fault_case')
          .where('shop', '=', shop)
          .where('id', '=', id)
          .executeTakeFirst();
        if (numDeletedRows > 0n) {
          removed = true;
          note({ act: 'erase', kind: 'fault', thing: id });
        }
        return removed;
      });
    },
  };
}
