import type { Work } from '../database/work.ts';
import type { FaultCaseStore } from './fault-case-store.ts';

/** The faults found in their table. */
export function sqlFaultCaseStore(
  { kysely, run, transact }: Work,
  shop: string,
  now: () => Date,
): FaultCaseStore {
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
      transact(async (transaction) => {
        const values = { cause, symptoms: JSON.stringify(symptoms), counted_at: now().toISOString() };
        await transaction
          .insertInto('fault_case')
          .values({ shop, id, ...values })
          .onConflict((conflict) => conflict.columns(['shop', 'id']).doUpdateSet(values))
          .execute();
      }),
    remove: (id) => {
      let removed = false;
      return transact(async (transaction) => {
        const { numDeletedRows } = await transaction
          .deleteFrom('fault_case')
          .where('shop', '=', shop)
          .where('id', '=', id)
          .executeTakeFirst();
        removed ||= numDeletedRows > 0n;
        return removed;
      });
    },
  };
}
