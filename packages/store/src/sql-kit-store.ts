import type { Kysely, Transaction } from 'kysely';
import type { KitContent, KitSaveOutcome, KitStore, StoredKit } from './kit-store.ts';
import type { Tables } from './tables.ts';
import type { Work } from './work.ts';

/** The kit in its table. */
export function sqlKitStore({ kysely, run, transact }: Work, now: () => Date): KitStore {
  return {
    get: () => run(() => newest(kysely)),
    save: (content, basedOn) =>
      transact((transaction) => saveKit(transaction, content, basedOn, now().toISOString())),
    revisions: () =>
      run(() =>
        kysely
          .selectFrom('kit_revision')
          .select(['number as revision_number', 'revision', 'title', 'saved_at'])
          .orderBy('number', 'desc')
          .execute(),
      ),
    revision: (number) => run(() => revisions(kysely).where('number', '=', number).executeTakeFirst()),
  };
}

function revisions(kysely: Kysely<Tables>) {
  return kysely
    .selectFrom('kit_revision')
    .select(['number as revision_number', 'revision', 'title', 'saved_at', 'text']);
}

function newest(kysely: Kysely<Tables>): Promise<StoredKit | undefined> {
  return revisions(kysely).orderBy('number', 'desc').limit(1).executeTakeFirst();
}

/**
 * The number is the key of the row: of two saves based on the same revision exactly one gets to insert it, the
 * other waits and then finds it taken. If it is taken by the very same text, that save is this one, sent again.
 */
async function saveKit(
  transaction: Transaction<Tables>,
  { text, title, revision }: KitContent,
  basedOn: number,
  at: string,
): Promise<KitSaveOutcome> {
  const before = await newest(transaction);
  const revision_number = basedOn + 1;
  if ((before?.revision_number ?? 0) === basedOn) {
    const { numInsertedOrUpdatedRows: inserted } = await transaction
      .insertInto('kit_revision')
      .values({ number: revision_number, text, title, revision, saved_at: at })
      .onConflict((conflict) => conflict.doNothing())
      .executeTakeFirst();
    if (inserted === 1n) return { ok: true, kit: { text, title, revision, revision_number, saved_at: at } };
  }
  const newer = await newest(transaction);
  return newer?.revision_number === revision_number && newer.text === text
    ? { ok: true, kit: newer }
    : { ok: false, code: 'KIT_CHANGED_MEANWHILE', newer };
}
