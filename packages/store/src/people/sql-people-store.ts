import type { Kysely, Transaction } from 'kysely';
import type { AccountRow, Tables } from '../database/tables.ts';
import { contentHash } from '../history/change.ts';
import { rightsText } from '../history/held.ts';
import type { Note, Work } from '../history/work.ts';
import type { PeopleStore, ShopRole, StoredAccount } from './people-store.ts';

/** Shops, accounts, sessions and machines, in their tables. */
export function sqlPeopleStore({ kysely, run, transact }: Work, now: () => Date): PeopleStore {
  const at = (): string => now().toISOString();
  return {
    shops: () =>
      run(() => kysely.selectFrom('shop').select(['id', 'name']).orderBy('name').orderBy('id').execute()),
    putShop: ({ id, name }) =>
      transact(async (transaction, note) => {
        const before = await transaction
          .selectFrom('shop')
          .select('name')
          .where('id', '=', id)
          .executeTakeFirst();
        if (before?.name === name) return;
        await transaction
          .insertInto('shop')
          .values({ id, name, made_at: at() })
          .onConflict((conflict) => conflict.column('id').doUpdateSet({ name }))
          .execute();
        const act = before === undefined ? 'add' : 'set';
        note({ act, kind: 'shop', thing: id, before: before?.name ?? null, after: name });
      }),
    accounts: () =>
      run(async () => {
        const rows = await kysely.selectFrom('account').selectAll().orderBy('name_key').execute();
        const members = await kysely.selectFrom('member').selectAll().execute();
        return rows.map((row) => accountOf(row, members));
      }),
    hasAdministrator: () => run(async () => (await openAdministrators(kysely)) > 0),
    addAccount: ({ id, name, administrator }) => {
      const account = { id, name, name_key: keyOf(name), administrator: administrator ? 1 : 0 };
      return transact(async (transaction, note) => {
        const { numInsertedOrUpdatedRows } = await transaction
          .insertInto('account')
          .values({ ...account, password: null, shut: 0, made_at: at() })
          .onConflict((conflict) => conflict.doNothing())
          .executeTakeFirst();
        if (numInsertedOrUpdatedRows === 1n) {
          const rights = { administrator, shut: false, shops: {} };
          note({ act: 'add', kind: 'account', thing: id, before: name, after: rightsText(rights) });
        }
        return (await find(transaction, id)) !== undefined;
      });
    },
    setRights: (id, { administrator, shut, shops }) =>
      transact(async (transaction, note) => {
        // all rows of administrators are locked, so that two cannot shut each other out at once
        await transaction
          .updateTable('account')
          .set({ administrator: 1 })
          .where('administrator', '=', 1)
          .execute();
        const before = await find(transaction, id);
        if (before === undefined) return 'not found';
        const known = (await transaction.selectFrom('shop').select('id').execute()).map((shop) => shop.id);
        if (Object.keys(shops).some((shop) => !known.includes(shop))) return 'unknown shop';
        const staysOne = administrator && !shut;
        if (!staysOne && (await openAdministrators(transaction, id)) === 0) return 'last administrator';
        await transaction
          .updateTable('account')
          .set({ administrator: administrator ? 1 : 0, shut: shut ? 1 : 0 })
          .where('id', '=', id)
          .execute();
        await transaction.deleteFrom('member').where('account_id', '=', id).execute();
        const rows = Object.entries(shops).map(([shop, role]) => ({ account_id: id, shop, role }));
        if (rows.length > 0) await transaction.insertInto('member').values(rows).execute();
        if (shut) await forgetWays(transaction, id);
        const change = { before: rightsText(before), after: rightsText({ administrator, shut, shops }) };
        if (change.before !== change.after) note({ act: 'set', kind: 'account', thing: id, ...change });
        return 'set';
      }),
    accountNamed: (name) =>
      run(async () => {
        const row = await kysely
          .selectFrom('account')
          .selectAll()
          .where('name_key', '=', keyOf(name))
          .executeTakeFirst();
        return row && { account: accountOf(row, await membersOf(kysely, row.id)), password: row.password };
      }),
    identified: (issuer, subject) =>
      run(async () => {
        const row = await kysely
          .selectFrom('identity')
          .select('account_id')
          .where('issuer', '=', issuer)
          .where('subject', '=', subject)
          .executeTakeFirst();
        return row && find(kysely, row.account_id);
      }),
    bindIdentity: (issuer, subject, accountId) =>
      transact(async (transaction, note) => {
        const { numInsertedOrUpdatedRows } = await transaction
          .insertInto('identity')
          .values({ issuer, subject, account_id: accountId })
          .onConflict((conflict) => conflict.doNothing())
          .executeTakeFirst();
        if (numInsertedOrUpdatedRows === 1n)
          note({ act: 'add', kind: 'identity', thing: `${issuer} ${subject}`, after: accountId });
        const kept = await transaction
          .selectFrom('identity')
          .select('account_id')
          .where('issuer', '=', issuer)
          .where('subject', '=', subject)
          .executeTakeFirst();
        return kept?.account_id === accountId;
      }),
    setPassword: (id, password) =>
      transact((transaction, note) => setPassword(transaction, note, id, password)),
    addLink: (hash, accountId, endsAt) =>
      transact(async (transaction, note) => {
        const { numInsertedOrUpdatedRows } = await transaction
          .insertInto('one_time_link')
          .values({ hash, account_id: accountId, ends_at: endsAt })
          .onConflict((conflict) => conflict.doNothing())
          .executeTakeFirst();
        if (numInsertedOrUpdatedRows === 1n) note({ act: 'link', kind: 'account', thing: accountId });
      }),
    linked: (hash) => run(() => linked(kysely, hash, at())),
    useLink: (hash, password) => {
      let used: StoredAccount | undefined;
      return transact(async (transaction, note) => {
        const account = await linked(transaction, hash, at());
        const { numDeletedRows } = await transaction
          .deleteFrom('one_time_link')
          .where('hash', '=', hash)
          .executeTakeFirst();
        if (account === undefined || numDeletedRows === 0n) return used;
        await setPassword(transaction, note, account.id, password);
        used = { ...account, opened: true };
        return used;
      });
    },
    addSession: (hash, accountId, shop, endsAt) =>
      transact(async (transaction) => {
        await transaction.deleteFrom('session').where('ends_at', '<', at()).execute();
        await transaction
          .insertInto('session')
          .values({ hash, account_id: accountId, shop, made_at: at(), ends_at: endsAt, exchanged: 0 })
          .onConflict((conflict) => conflict.doNothing())
          .execute();
      }),
    session: (hash) =>
      run(async () => {
        const row = await kysely
          .selectFrom('session')
          .selectAll()
          .where('hash', '=', hash)
          .where('ends_at', '>', at())
          .executeTakeFirst();
        const account = row && (await find(kysely, row.account_id));
        if (row === undefined || account === undefined || account.shut) return undefined;
        return { account, shop: row.shop, made_at: row.made_at, ends_at: row.ends_at };
      }),
    exchangeSession: (hash, next, holdsUntil) => {
      let exchanged = false;
      return transact(async (transaction) => {
        const before = await transaction
          .selectFrom('session')
          .selectAll()
          .where('hash', '=', hash)
          .executeTakeFirst();
        if (before === undefined) return exchanged;
        const { numUpdatedRows } = await transaction
          .updateTable('session')
          .set({ exchanged: 1, ends_at: holdsUntil })
          .where('hash', '=', hash)
          .where('exchanged', '=', 0)
          .executeTakeFirst();
        if (numUpdatedRows === 0n) return exchanged;
        await transaction
          .insertInto('session')
          .values({ ...before, hash: next, made_at: at() })
          .execute();
        exchanged = true;
        return exchanged;
      });
    },
    setSessionShop: (hash, shop) =>
      transact(async (transaction) => {
        await transaction.updateTable('session').set({ shop }).where('hash', '=', hash).execute();
      }),
    endSession: (hash) =>
      transact(async (transaction) => {
        await transaction.deleteFrom('session').where('hash', '=', hash).execute();
      }),
    endSessionsOf: (accountId) =>
      transact(async (transaction, note) => {
        const { numDeletedRows } = await transaction
          .deleteFrom('session')
          .where('account_id', '=', accountId)
          .executeTakeFirst();
        if (numDeletedRows > 0n) note({ act: 'sign out', kind: 'account', thing: accountId });
      }),
    machines: () =>
      run(() =>
        kysely
          .selectFrom('machine')
          .select(['id', 'shop', 'name', 'made_at'])
          .orderBy('shop')
          .orderBy('name')
          .execute(),
      ),
    addMachine: (machine, hash) =>
      transact(async (transaction, note) => {
        const { numInsertedOrUpdatedRows } = await transaction
          .insertInto('machine')
          .values({ ...machine, hash, made_at: at() })
          .onConflict((conflict) => conflict.doNothing())
          .executeTakeFirst();
        if (numInsertedOrUpdatedRows === 1n)
          note({ act: 'add', kind: 'machine', thing: machine.id, after: `${machine.shop} ${machine.name}` });
      }),
    machine: (hash) =>
      run(() =>
        kysely
          .selectFrom('machine')
          .select(['id', 'shop', 'name', 'made_at'])
          .where('hash', '=', hash)
          .executeTakeFirst(),
      ),
    eraseMachine: (id) => {
      let erased = false;
      return transact(async (transaction, note) => {
        const { numDeletedRows } = await transaction
          .deleteFrom('machine')
          .where('id', '=', id)
          .executeTakeFirst();
        if (numDeletedRows > 0n) {
          erased = true;
          note({ act: 'erase', kind: 'machine', thing: id });
        }
        return erased;
      });
    },
    countFailures: (keys, forgetBefore) =>
      transact(async (transaction) => {
        const counts: number[] = [];
        // always in the same order, so that two who fail at once do not wait for each other
        for (const key of [...keys].sort()) {
          const row = await transaction
            .insertInto('sign_in_failure')
            .values({ key, count: 1, at: at() })
            .onConflict((conflict) =>
              conflict.column('key').doUpdateSet((set) => ({
                count: set
                  .case()
                  .when('sign_in_failure.at', '<', forgetBefore)
                  .then(1)
                  .else(set('sign_in_failure.count', '+', 1))
                  .end(),
                at: at(),
              })),
            )
            .returning('count')
            .executeTakeFirstOrThrow();
          counts.push(row.count);
        }
        await transaction.deleteFrom('sign_in_failure').where('at', '<', forgetBefore).execute();
        return counts;
      }),
    failures: (keys) =>
      run(async () => {
        const rows = await kysely
          .selectFrom('sign_in_failure')
          .selectAll()
          .where('key', 'in', [...keys])
          .execute();
        return new Map(rows.map(({ key, ...failure }) => [key, failure]));
      }),
    forgetFailures: (keys) =>
      transact(async (transaction) => {
        await transaction
          .deleteFrom('sign_in_failure')
          .where('key', 'in', [...keys])
          .execute();
      }),
  };
}

/** Names that differ in case or in how a letter is composed alone are one name. */
function keyOf(name: string): string {
  return name.normalize('NFKC').toLowerCase();
}

async function find(on: Kysely<Tables>, id: string): Promise<StoredAccount | undefined> {
  const row = await on.selectFrom('account').selectAll().where('id', '=', id).executeTakeFirst();
  return row && accountOf(row, await membersOf(on, id));
}

function membersOf(on: Kysely<Tables>, id: string) {
  return on.selectFrom('member').selectAll().where('account_id', '=', id).execute();
}

function accountOf(row: AccountRow, members: readonly Tables['member'][]): StoredAccount {
  const own = members.filter(({ account_id }) => account_id === row.id);
  return {
    id: row.id,
    name: row.name,
    administrator: row.administrator === 1,
    shut: row.shut === 1,
    opened: row.password !== null,
    shops: Object.fromEntries(own.map(({ shop, role }) => [shop, role as ShopRole])),
  };
}

/** Administrators whose accounts are not shut, one left out [-]. */
async function openAdministrators(on: Kysely<Tables>, without = ''): Promise<number> {
  const rows = await on
    .selectFrom('account')
    .select('id')
    .where('administrator', '=', 1)
    .where('shut', '=', 0)
    .where('id', '!=', without)
    .execute();
  return rows.length;
}

async function linked(on: Kysely<Tables>, hash: string, at: string): Promise<StoredAccount | undefined> {
  const row = await on
    .selectFrom('one_time_link')
    .select('account_id')
    .where('hash', '=', hash)
    .where('ends_at', '>', at)
    .executeTakeFirst();
  const account = row && (await find(on, row.account_id));
  return account?.shut === false ? account : undefined;
}

async function setPassword(
  transaction: Transaction<Tables>,
  note: Note,
  id: string,
  password: string,
): Promise<void> {
  await transaction.updateTable('account').set({ password }).where('id', '=', id).execute();
  note({ act: 'set password', kind: 'account', thing: id, content: contentHash(password) });
  await forgetWays(transaction, id);
}

/** Whoever was let in by an account is out, and its links hold no longer. */
async function forgetWays(transaction: Transaction<Tables>, id: string): Promise<void> {
  for (const table of ['session', 'one_time_link'] as const)
    await transaction.deleteFrom(table).where('account_id', '=', id).execute();
}
