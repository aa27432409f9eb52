import type { Kysely } from 'kysely';
import type { HistoryRow, Tables } from '../database/tables.ts';
import { type Actor, BEGINNING, type Change, type Entry, entryHash } from './change.ts';

/** By whom, where and when changes are made. */
export interface Desk {
  readonly shop: string;
  readonly who: Actor;
  readonly now: () => Date;
}

/**
 * Adds changes to the history of a shop, within the transaction that makes them. Whoever else adds to it waits until
 * that is over, so it comes last.
 */
export async function append(
  transaction: Kysely<Tables>,
  { shop, who, now }: Desk,
  changes: readonly Change[],
): Promise<void> {
  if (changes.length === 0) return;
  await transaction
    .insertInto('history_head')
    .values({ shop, number: 0, hash: BEGINNING })
    .onConflict((conflict) => conflict.doNothing())
    .execute();
  const head = await transaction
    .updateTable('history_head')
    .set((set) => ({ number: set('number', '+', changes.length) }))
    .where('shop', '=', shop)
    .returning(['number', 'hash'])
    .executeTakeFirstOrThrow();
  const at = now().toISOString();
  let previous = head.hash;
  const rows: HistoryRow[] = [];
  for (const [index, change] of changes.entries()) {
    const number = head.number - changes.length + index + 1;
    const none = { before: null, after: null, content: null };
    const entry: Entry = { ...none, ...change, shop, number, at, who, previous };
    previous = entryHash(entry);
    rows.push(rowOf(entry, previous));
  }
  await transaction.insertInto('history').values(rows).execute();
  await transaction.updateTable('history_head').set({ hash: previous }).where('shop', '=', shop).execute();
}

function rowOf({ who, before, after, ...entry }: Entry, hash: string): HistoryRow {
  return { ...entry, who_id: who.id, who: who.name, state_before: before, state_after: after, hash };
}

/** An entry as it stands in its table. */
export function entryOf(row: HistoryRow): Entry & { readonly hash: string } {
  const { who_id, who, state_before, state_after, ...rest } = row;
  return {
    ...rest,
    act: row.act as Entry['act'],
    who: { id: who_id, name: who },
    before: state_before,
    after: state_after,
  };
}
