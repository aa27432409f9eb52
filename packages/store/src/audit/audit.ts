import type { Kysely } from 'kysely';
import type { Database } from '../database/database.ts';
import { pages } from '../database/pages.ts';
import type { Tables } from '../database/tables.ts';
import { entryOf } from '../history/append.ts';
import { BEGINNING, COMPANY, contentHash, entryHash } from '../history/change.ts';
import { faultHash, printedHash, rightsText } from '../history/held.ts';
import { type Expected, expect, keyOf, nothingExpected } from './expected.ts';

/** Where a history ends. Kept elsewhere, it shows whether that history was written anew. */
export interface HistoryEnd {
  /** Shop; empty for the company. */
  readonly shop: string;
  /** Number of the newest entry [-]. */
  readonly entries: number;
  /** Its hash. */
  readonly hash: string;
}

/** What an audit found. */
export interface AuditReport {
  readonly histories: readonly HistoryEnd[];
  /** Documents, papers, runs, faults, accounts, shops and machines that were held to the history [-]. */
  readonly held: number;
  /** What does not agree, a sentence each; empty where everything does. */
  readonly problems: readonly string[];
}

const AT_A_TIME = 500;

/** Holds every history to its chain and to earlier ends of it, and what is kept to the history. */
export async function auditCompany(
  database: Pick<Database, 'snapshot'>,
  earlier: readonly HistoryEnd[],
): Promise<AuditReport> {
  const { on, close } = await database.snapshot();
  try {
    return await auditSnapshot(on, earlier);
  } finally {
    await close();
  }
}

async function auditSnapshot(on: Kysely<Tables>, earlier: readonly HistoryEnd[]): Promise<AuditReport> {
  const problems: string[] = [];
  const heads = await on.selectFrom('history_head').selectAll().orderBy('shop').execute();
  const expected = new Map<string, Expected>();
  for (const head of heads) {
    const found = nothingExpected();
    expected.set(head.shop, found);
    const known = earlier.filter(({ shop }) => shop === head.shop);
    await auditChain(on, head, known, found, problems);
  }
  for (const { shop, entries } of earlier)
    if (entries > 0 && !expected.has(shop)) problems.push(`${named(shop)}: the whole history is gone.`);
  const held = await holdKept(on, expected, problems);
  const histories = heads.map(({ shop, number, hash }) => ({ shop, entries: number, hash }));
  return { histories, held, problems };
}

function named(shop: string): string {
  return shop === COMPANY ? 'History of the company' : `History of the shop “${shop}”`;
}

async function auditChain(
  on: Kysely<Tables>,
  head: { readonly shop: string; readonly number: number; readonly hash: string },
  earlier: readonly HistoryEnd[],
  expected: Expected,
  problems: string[],
): Promise<void> {
  const { shop } = head;
  let last = 0;
  let previous = BEGINNING;
  for (;;) {
    const rows = await on
      .selectFrom('history')
      .selectAll()
      .where('shop', '=', shop)
      .where('number', '>', last)
      .orderBy('number')
      .limit(AT_A_TIME)
      .execute();
    for (const row of rows) {
      const entry = entryOf(row);
      if (entry.number !== last + 1) problems.push(`${named(shop)}: ${missing(last + 1, entry.number - 1)}.`);
      else if (entry.previous !== previous)
        problems.push(`${named(shop)}: entry ${entry.number} does not follow from the one before it.`);
      if (entryHash(entry) !== entry.hash)
        problems.push(`${named(shop)}: entry ${entry.number} is not what was written.`);
      for (const end of earlier)
        if (end.entries === entry.number && end.hash !== entry.hash)
          problems.push(`${named(shop)}: entry ${entry.number} is not the one that the earlier audit found.`);
      ({ number: last, hash: previous } = entry);
      expect(expected, entry);
    }
    if (rows.length < AT_A_TIME) break;
  }
  if (last !== head.number || previous !== head.hash)
    problems.push(
      `${named(shop)} does not end where it was last written: at entry ${last} in place of ${head.number}.`,
    );
  for (const { entries } of earlier)
    if (entries > last)
      problems.push(`${named(shop)}: the earlier audit found ${entries} entries, there are ${last}.`);
}

function missing(from: number, to: number): string {
  return from === to ? `entry ${from} is missing` : `entries ${from} to ${to} are missing`;
}

/** What stands in a table, as the history would hold it. */
interface Kept {
  readonly shop: string;
  readonly kind: string;
  readonly id: string;
  readonly content?: string | null;
  readonly after?: string;
}

async function holdKept(
  on: Kysely<Tables>,
  expected: ReadonlyMap<string, Expected>,
  problems: string[],
): Promise<number> {
  let held = 0;
  for await (const kept of everythingKept(on)) {
    held += 1;
    const things = expected.get(kept.shop)?.things;
    const key = keyOf(kept.kind, kept.id);
    const known = things?.get(key);
    if (known === undefined) problems.push(`${where(kept)} is in no history.`);
    else if (
      (kept.content !== undefined && kept.content !== known.content) ||
      (kept.after !== undefined && kept.after !== known.after)
    )
      problems.push(`${where(kept)} is not what the history says.`);
    things?.delete(key);
  }
  held += await holdRevisions(on, expected, problems);
  held += await holdPasswords(on, expected, problems);
  for (const [shop, { things, revisions }] of expected) {
    for (const key of things.keys()) problems.push(`${inShop(key, shop)} is gone; no history says why.`);
    for (const [key, numbers] of revisions)
      for (const number of numbers.keys())
        problems.push(`Revision ${number} of ${inShop(key, shop)} is gone; no history says why.`);
  }
  return held;
}

function inShop(key: string, shop: string): string {
  return shop === COMPANY ? `${key} of the company` : `${key} of the shop “${shop}”`;
}

function where({ shop, kind, id }: Kept): string {
  return inShop(keyOf(kind, id), shop);
}

async function* everythingKept(on: Kysely<Tables>): AsyncGenerator<Kept> {
  for (const row of await on.selectFrom('fault_case').selectAll().execute())
    yield { shop: row.shop, kind: 'fault', id: row.id, content: faultHash(row) };
  for (const row of await on.selectFrom('printed').selectAll().execute())
    yield { shop: row.shop, kind: 'paper', id: row.id, content: printedHash(row) };
  for (const row of await on.selectFrom('run').select(['shop', 'id', 'job_id', 'sha256']).execute())
    yield { shop: row.shop, kind: 'run', id: row.id, content: row.sha256, after: row.job_id };
  for (const { id, name } of await on.selectFrom('shop').select(['id', 'name']).execute())
    yield { shop: COMPANY, kind: 'shop', id, after: name };
  for (const { id, shop, name } of await on.selectFrom('machine').selectAll().execute())
    yield { shop: COMPANY, kind: 'machine', id, after: `${shop} ${name}` };
  for (const { issuer, subject, account_id } of await on.selectFrom('identity').selectAll().execute())
    yield { shop: COMPANY, kind: 'identity', id: `${issuer} ${subject}`, after: account_id };
  const members = await on.selectFrom('member').selectAll().execute();
  for (const row of await on.selectFrom('account').selectAll().execute()) {
    const own = members.filter(({ account_id }) => account_id === row.id);
    const shops = Object.fromEntries(own.map(({ shop, role }) => [shop, role]));
    const rights = { administrator: row.administrator === 1, shut: row.shut === 1, shops };
    yield { shop: COMPANY, kind: 'account', id: row.id, after: rightsText(rights) };
  }
}

async function holdPasswords(
  on: Kysely<Tables>,
  expected: ReadonlyMap<string, Expected>,
  problems: string[],
): Promise<number> {
  const passwords = expected.get(COMPANY)?.passwords;
  const rows = await on.selectFrom('account').select(['id', 'password']).execute();
  for (const { id, password } of rows) {
    const kept = password === null ? undefined : contentHash(password);
    if (kept !== (passwords?.get(id) ?? undefined))
      problems.push(`The password of account ${id} is not one that the history says was set.`);
  }
  return rows.length;
}

async function holdRevisions(
  on: Kysely<Tables>,
  expected: ReadonlyMap<string, Expected>,
  problems: string[],
): Promise<number> {
  let held = 0;
  for await (const rows of pages(on, 'document_revision'))
    for (const row of rows) {
      held += 1;
      const numbers = expected.get(row.shop)?.revisions.get(keyOf(row.kind, row.id));
      const known = numbers?.get(row.number);
      const what = `Revision ${row.number} of ${inShop(keyOf(row.kind, row.id), row.shop)}`;
      if (known === undefined) problems.push(`${what} is in no history.`);
      else if (known.content !== contentHash(row.content) || known.by !== row.saved_by)
        problems.push(`${what} is not what the history says was saved.`);
      numbers?.delete(row.number);
    }
  return held;
}
