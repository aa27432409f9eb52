import type { FaultCaseStore } from './fault-case-store.ts';
import type { Work } from './work.ts';

/** The faults found in their table. */
export function sqlFaultCaseStore({ kysely, run }: Work, now: () => Date): FaultCaseStore {
  return {
    list: () =>
      run(async () => {
        const rows = await kysely
          .selectFrom('fault_case')
          .select(['id', 'cause', 'symptoms'])
          .orderBy('counted_at')
          .orderBy('id')
          .execute();
        return rows.map((row) => ({
          ...row,
          symptoms: JSON.parse(row.symptoms) as Readonly<Record<string, string>>,
        }));
      }),
    put: ({ id, cause, symptoms }) =>
      run(async () => {
        const values = { cause, symptoms: JSON.stringify(symptoms), counted_at: now().toISOString() };
        await kysely
          .insertInto('fault_case')
          .values({ id, ...values })
          .onConflict((conflict) => conflict.column('id').doUpdateSet(values))
          .execute();
      }),
    remove: (id) =>
      run(async () => {
        const { numDeletedRows } = await kysely
          .deleteFrom('fault_case')
          .where('id', '=', id)
          .executeTakeFirst();
        return numDeletedRows > 0n;
      }),
  };
}
