import { type Kysely, sql } from 'kysely';
import type { Database } from '../database/database.ts';
import type { Tables } from '../database/tables.ts';
import { append } from '../history/append.ts';
import { type Change, COMPANY, contentHash, NOBODY } from '../history/change.ts';
import { faultHash, printedHash, rightsText } from '../history/held.ts';

/** Revisions that are entered at a time [-]. */
const AT_A_TIME = 200;

/** Makes the table of the history, which nothing is changed in, and enters what was kept before there was one. */
export async function createHistory(database: Kysely<unknown>, kind: Database['kind']): Promise<void> {
  await database.schema
    .createTable('history')
    .addColumn('shop', 'text', (column) => column.notNull())
    .addColumn('number', 'integer', (column) => column.notNull())
    .addColumn('at', 'text', (column) => column.notNull())
    .addColumn('who_id', 'text')
    .addColumn('who', 'text')
    .addColumn('act', 'text', (column) => column.notNull())
    .addColumn('kind', 'text', (column) => column.notNull())
    .addColumn('thing', 'text', (column) => column.notNull())
    .addColumn('state_before', 'text')
    .addColumn('state_after', 'text')
    .addColumn('content', 'text')
    .addColumn('previous', 'text', (column) => column.notNull())
    .addColumn('hash', 'text', (column) => column.notNull())
    .addPrimaryKeyConstraint('history_key', ['shop', 'number'])
    .execute();
  await database.schema
    .createIndex('history_of')
    .on('history')
    .columns(['shop', 'kind', 'thing', 'number'])
    .execute();
  await database.schema
    .createTable('history_head')
    .addColumn('shop', 'text', (column) => column.primaryKey())
    .addColumn('number', 'integer', (column) => column.notNull())
    .addColumn('hash', 'text', (column) => column.notNull())
    .execute();
  await database.schema.alterTable('document_revision').addColumn('saved_by', 'text').execute();
  await database.schema.alterTable('printed').addColumn('released_by', 'text').execute();
  await enterWhatIsKept(database as Kysely<Tables>);
  await lockHistory(database, kind);
}

/** Has the database refuse every change of the history but adding to it. */
export async function lockHistory(database: Kysely<unknown>, kind: Database['kind']): Promise<void> {
  for (const statement of ONLY_ADDED_TO[kind]) await sql.raw(statement).execute(database);
}

/** Takes that back, within a transaction that puts a whole history in place and locks it again. */
export async function unlockHistory(database: Kysely<unknown>, kind: Database['kind']): Promise<void> {
  for (const statement of UNLOCK[kind]) await sql.raw(statement).execute(database);
}

/** A mistake of the program, or a hand in the database, meets a refusal; who means harm meets the chain. */
const ONLY_ADDED_TO: Readonly<Record<Database['kind'], readonly string[]>> = {
  sqlite: ['update', 'delete'].map(
    (what) =>
      `create trigger history_no_${what} before ${what} on history
       begin select raise(abort, 'the history is only added to'); end`,
  ),
  postgresql: [
    `create function history_only_added_to() returns trigger language plpgsql as $$
     begin raise exception 'the history is only added to'; end $$`,
    `create trigger history_no_change before update or delete or truncate on history
     for each statement execute function history_only_added_to()`,
  ],
};

const UNLOCK: Readonly<Record<Database['kind'], readonly string[]>> = {
  sqlite: ['drop trigger history_no_update', 'drop trigger history_no_delete'],
  postgresql: ['drop trigger history_no_change on history', 'drop function history_only_added_to'],
};

/** Enters what there is already, so that it is held from now on. */
async function enterWhatIsKept(database: Kysely<Tables>): Promise<void> {
  const enter = async (rows: readonly (Change & { readonly shop: string })[]): Promise<void> => {
    const shops = new Set(rows.map(({ shop }) => shop));
    for (const shop of shops) {
      const changes = rows.filter((row) => row.shop === shop).map(({ shop: _, ...change }) => change);
      await append(database, { shop, who: NOBODY, now: () => new Date() }, changes);
    }
  };
  for (let after = 0; ; after += AT_A_TIME) {
    const rows = await database
      .selectFrom('document_revision')
      .select(['shop', 'kind', 'id', 'number', 'content'])
      .orderBy('shop')
      .orderBy('kind')
      .orderBy('id')
      .orderBy('number')
      .offset(after)
      .limit(AT_A_TIME)
      .execute();
    await enter(
      rows.map(({ shop, kind, id, number, content }) => {
        return { shop, ...kept(kind, id), after: String(number), content: contentHash(content) };
      }),
    );
    if (rows.length < AT_A_TIME) break;
  }
  const faults = await database.selectFrom('fault_case').selectAll().orderBy('id').execute();
  await enter(faults.map((row) => ({ shop: row.shop, ...kept('fault', row.id), content: faultHash(row) })));
  const printed = await database.selectFrom('printed').selectAll().orderBy('id').execute();
  await enter(
    printed.map((row) => {
      const after = `${row.job_id} ${row.paper}`;
      return { shop: row.shop, ...kept('paper', row.id), after, content: printedHash(row) };
    }),
  );
  const runs = await database
    .selectFrom('run')
    .select(['shop', 'id', 'job_id', 'sha256'])
    .orderBy('id')
    .execute();
  await enter(
    runs.map(({ shop, id, job_id, sha256 }) => {
      return { shop, ...kept('run', id), after: job_id, content: sha256 };
    }),
  );
  await enterCompany(database, async (changes) =>
    enter(changes.map((change) => ({ ...change, shop: COMPANY }))),
  );
}

async function enterCompany(
  database: Kysely<Tables>,
  enter: (changes: readonly Change[]) => Promise<void>,
): Promise<void> {
  const shops = await database.selectFrom('shop').select(['id', 'name']).orderBy('id').execute();
  await enter(shops.map(({ id, name }) => ({ ...kept('shop', id), after: name })));
  const accounts = await database.selectFrom('account').selectAll().orderBy('id').execute();
  const members = await database.selectFrom('member').selectAll().execute();
  await enter(
    accounts.map((row) => {
      const own = members.filter(({ account_id }) => account_id === row.id);
      const rights = {
        administrator: row.administrator === 1,
        shut: row.shut === 1,
        shops: Object.fromEntries(own.map(({ shop, role }) => [shop, role])),
      };
      const content = row.password === null ? null : contentHash(row.password);
      return { ...kept('account', row.id), before: row.name, after: rightsText(rights), content };
    }),
  );
  const machines = await database.selectFrom('machine').selectAll().orderBy('id').execute();
  await enter(machines.map(({ id, shop, name }) => ({ ...kept('machine', id), after: `${shop} ${name}` })));
}

function kept(kind: string, thing: string): Pick<Change, 'act' | 'kind' | 'thing'> {
  return { act: 'kept before', kind, thing };
}
