import { createHash } from 'node:crypto';
import { createReadStream, mkdirSync } from 'node:fs';
import { open } from 'node:fs/promises';
import { dirname } from 'node:path';
import { pipeline } from 'node:stream';
import { createGunzip } from 'node:zlib';
import type { Kysely, Transaction } from 'kysely';
import type { Database } from '../database/database.ts';
import { KEPT_TABLES, type KeptTable } from '../database/pages.ts';
import { StoreFailure } from '../database/store-failure.ts';
import type { Tables } from '../database/tables.ts';
import { lockHistory, unlockHistory } from '../migration/create-history.ts';
import { migrate } from '../migration/migrate.ts';
import { MIGRATIONS } from '../migration/migrations.ts';
import type { Originals } from '../original/index.ts';
import { livePath } from './backup.ts';
import type { BackupHead, BackupLine } from './backup-line.ts';

/** What was restored. */
export interface RestoreReport {
  readonly program_version: string;
  /** When the backup was made (ISO 8601, UTC). */
  readonly made_at: string;
  /** Rows by table [-]. */
  readonly rows: Readonly<Record<string, number>>;
  readonly files: number;
}

/** Where a backup is restored to. */
export interface RestorePlace {
  readonly database: Database;
  readonly originalsOf: (shop: string) => Originals;
  readonly now: () => Date;
}

/** Rows that are written at a time [-]. */
const AT_A_TIME = 50;

/**
 * Restores a backup into a place that keeps nothing yet. The whole file is held to its end first; files come next, which
 * do no harm, then all rows at once, and then the database is brought up to date. What breaks off before leaves the place
 * as empty as it was.
 */
export async function restoreBackup(path: string, place: RestorePlace): Promise<RestoreReport> {
  const head = await checkBackup(path);
  const { database, now } = place;
  await migrate(database, MIGRATIONS.slice(0, head.steps.length), now);
  await refuseUnlessEmpty(database.kysely, database.place);
  const files = await restoreFiles(path, place);
  const rows = await database.kysely
    .transaction()
    .execute((on) => restoreRows(path, on, head.steps, database.kind));
  await migrate(database, MIGRATIONS, now);
  return { program_version: head.program_version, made_at: head.made_at, rows, files };
}

/** Reads a backup through: it must be whole, as it was written, and of a version that this one knows. */
async function checkBackup(path: string): Promise<BackupHead> {
  const hash = createHash('sha256');
  let lines = 0;
  let head: BackupHead | undefined;
  let whole = false;
  for await (const { text, value } of linesOf(path)) {
    if (whole) throw unfit(path, 'something stands behind its end');
    if (lines === 0) {
      if (!('furrow_backup' in value)) throw unfit(path, 'it is no backup that Furrow wrote');
      head = value;
    }
    if ('end' in value) {
      if (value.end.lines !== lines || value.end.sha256 !== hash.digest('hex'))
        throw unfit(path, 'it is not what was written: it was damaged or changed');
      whole = true;
    } else {
      hash.update(`${text}\n`);
      lines += 1;
    }
  }
  if (head === undefined) throw unfit(path, 'it is empty');
  if (!whole) throw unfit(path, 'its end is missing');
  const unknown = head.steps.find((step, index) => MIGRATIONS[index]?.name !== step);
  if (unknown !== undefined || !head.steps.includes('history'))
    throw unfit(
      path,
      `it was made by Furrow ${head.program_version}, whose database (step “${unknown ?? head.steps.at(-1)}”) is not known here`,
    );
  return head;
}

async function refuseUnlessEmpty(kysely: Kysely<Tables>, place: string): Promise<void> {
  for (const table of ['document', 'account', 'run', 'fault_case', 'machine'] as const)
    if ((await kysely.selectFrom(table).select('id').limit(1).execute()).length > 0)
      throw new StoreFailure(
        'STORE_UNAVAILABLE',
        `Something is kept in ${place} already; a backup is restored into a new place only. Nothing was changed.`,
      );
}

/** Tables that came after the first version that made backups, by the step that made them. */
const MADE_BY: { readonly [Table in KeptTable]?: string } = { identity: 'identities' };

async function restoreRows(
  path: string,
  on: Transaction<Tables>,
  steps: readonly string[],
  kind: Database['kind'],
): Promise<Record<string, number>> {
  const tables = (Object.keys(KEPT_TABLES) as KeptTable[]).filter((table) => {
    const step = MADE_BY[table];
    return step === undefined || steps.includes(step);
  });
  await unlockHistory(on as unknown as Kysely<unknown>, kind);
  // what the steps of a new database put there of themselves
  for (const table of [...tables].reverse()) await on.deleteFrom(table).execute();
  const count: Record<string, number> = {};
  for await (const { value } of linesOf(path)) {
    if (!('table' in value)) continue;
    const table = tables.find((each) => each === value.table);
    if (table === undefined) throw unfit(path, `it has a table “${value.table}” that is not known here`);
    for (let from = 0; from < value.rows.length; from += AT_A_TIME)
      await on
        .insertInto(table)
        .values(value.rows.slice(from, from + AT_A_TIME) as never)
        .execute();
    count[table] = (count[table] ?? 0) + value.rows.length;
  }
  await lockHistory(on as unknown as Kysely<unknown>, kind);
  return count;
}

/** Writes the files; those that were damaged when the backup was made are not. */
async function restoreFiles(path: string, { originalsOf }: RestorePlace): Promise<number> {
  const lines = linesOf(path);
  let files = 0;
  let next = await lines.next();
  async function* pieces(): AsyncGenerator<Uint8Array> {
    for (next = await lines.next(); !next.done && 'piece' in next.value.value; next = await lines.next())
      yield Buffer.from(next.value.value.piece, 'base64');
  }
  while (next.done !== true) {
    const { value } = next.value;
    if (!('file' in value)) {
      next = await lines.next();
      continue;
    }
    const { file, shop, name } = value;
    if (!SHOP.test(shop) || !(file === 'live' ? RUN : SHA256).test(name))
      throw unfit(path, `it has a file “${shop}/${name}” that cannot be`);
    const originals = originalsOf(shop);
    if (file === 'parquet') await originals.putParquet(name, pieces());
    else if (file === 'live') await putLive(livePath(originals, name), pieces());
    else {
      const { sha256 } = await originals.put(pieces());
      if (sha256 !== name) {
        await originals.erase(sha256);
        continue;
      }
    }
    files += 1;
  }
  return files;
}

/** Names that lead out of no folder. */
const SHOP = /^[a-z0-9][a-z0-9-]{0,39}$/u;
const RUN = /^[0-9a-f-]{36}$/u;
const SHA256 = /^[0-9a-f]{64}$/u;

async function putLive(path: string, pieces: AsyncIterable<Uint8Array>): Promise<void> {
  mkdirSync(dirname(path), { recursive: true, mode: 0o700 });
  const file = await open(path, 'w', 0o600);
  try {
    for await (const piece of pieces) await file.writeFile(piece);
    await file.sync();
  } finally {
    await file.close();
  }
}

async function* linesOf(path: string): AsyncGenerator<{ readonly text: string; readonly value: BackupLine }> {
  // a failure of the one ends the other, which is read to its end or its failure below
  const unpacked = pipeline(createReadStream(path), createGunzip(), () => undefined);
  try {
    for await (const text of splitLines(unpacked)) {
      const value: unknown = JSON.parse(text);
      if (typeof value !== 'object' || value === null) throw new SyntaxError('no object');
      yield { text, value: value as BackupLine };
    }
  } catch (error) {
    if (error instanceof StoreFailure) throw error;
    throw unfit(path, `it cannot be read (${error instanceof Error ? error.message : String(error)})`);
  }
}

/** A file that breaks off in a line, or in the packing, breaks off here too. */
async function* splitLines(pieces: AsyncIterable<Uint8Array>): AsyncGenerator<string> {
  let held: Uint8Array[] = [];
  for await (const piece of pieces) {
    let from = 0;
    for (let at = piece.indexOf(LINE_END); at >= 0; at = piece.indexOf(LINE_END, from)) {
      yield Buffer.concat([...held, piece.subarray(from, at)]).toString('utf8');
      held = [];
      from = at + 1;
    }
    if (from < piece.length) held.push(piece.subarray(from));
  }
  if (held.length > 0) yield Buffer.concat(held).toString('utf8');
}

const LINE_END = 10;

function unfit(path: string, why: string): StoreFailure {
  return new StoreFailure('STORE_UNAVAILABLE', `${path} cannot be restored: ${why}. Nothing was changed.`);
}
