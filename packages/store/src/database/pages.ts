import { type Kysely, sql } from 'kysely';
import type { Tables } from './tables.ts';

/** The tables whose rows are kept for good, what others lean on first, each with the columns that tell its rows apart. */
export const KEPT_TABLES = {
  shop: ['id'],
  account: ['id'],
  member: ['account_id', 'shop'],
  identity: ['issuer', 'subject'],
  machine: ['id'],
  document: ['shop', 'kind', 'id'],
  document_revision: ['shop', 'kind', 'id', 'number'],
  fault_case: ['shop', 'id'],
  printed: ['shop', 'id'],
  run: ['shop', 'id'],
  run_review: ['shop', 'run_id', 'program_version'],
  history: ['shop', 'number'],
  history_head: ['shop'],
} as const satisfies { readonly [Table in keyof Tables]?: readonly (keyof Tables[Table])[] };
export type KeptTable = keyof typeof KEPT_TABLES;

/** Rows that are read at a time [-]. */
const AT_A_TIME = 200;

/** All rows of a table, some at a time, in the order of their key. */
export async function* pages<Table extends KeptTable>(
  on: Kysely<Tables>,
  table: Table,
): AsyncGenerator<readonly Tables[Table][]> {
  const columns = sql.join(KEPT_TABLES[table].map((column) => sql.ref(column)));
  let last: Tables[Table] | undefined;
  for (;;) {
    const key = KEPT_TABLES[table].map((column) => last?.[column as keyof Tables[Table]]);
    const after = last === undefined ? sql`` : sql`where (${columns}) > (${sql.join(key)})`;
    const { rows } = await sql<Tables[Table]>`
      select * from ${sql.table(table)} ${after} order by ${columns} limit ${sql.lit(AT_A_TIME)}`.execute(on);
    if (rows.length > 0) yield rows;
    if (rows.length < AT_A_TIME) return;
    last = rows.at(-1);
  }
}
