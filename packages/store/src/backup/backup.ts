import { createHash } from 'node:crypto';
import { createReadStream, statSync } from 'node:fs';
import { join } from 'node:path';
import type { Kysely } from 'kysely';
import type { Database } from '../database/database.ts';
import { KEPT_TABLES, type KeptTable, pages } from '../database/pages.ts';
import type { Tables } from '../database/tables.ts';
import { OriginalDamaged, type Originals } from '../original/index.ts';
import type { BackupFile, BackupLine } from './backup-line.ts';

/** What a backup holds, and what it could not. */
export interface BackupReport {
  /** Rows by table [-]. */
  readonly rows: Readonly<Record<string, number>>;
  /** Files of runs and of what was measured [-]. */
  readonly files: number;
  /** Files that are named, but are gone or damaged, a sentence each. */
  readonly missing: readonly string[];
  /** SHA-256 of its lines. */
  readonly sha256: string;
}

/** What a backup is made of. */
export interface BackupParts {
  readonly database: Database;
  readonly originalsOf: (shop: string) => Originals;
  readonly version: string;
  readonly now: () => Date;
}

const SHA256 = /\b[0-9a-f]{64}\b/gu;
const PIECE = 1 << 19;

/** The lines of a backup of everything as it was at one moment, while others work; how it went is the value returned. */
export async function* backupLines(parts: BackupParts): AsyncGenerator<string, BackupReport> {
  const hash = createHash('sha256');
  let lines = 0;
  const line = (value: BackupLine): string => {
    const text = `${JSON.stringify(value)}\n`;
    if (!('end' in value)) {
      hash.update(text);
      lines += 1;
    }
    return text;
  };
  const rows: Record<string, number> = {};
  const named = new Map<string, Named>();
  const { on, close } = await parts.database.snapshot();
  try {
    for await (const value of rowLines(on, parts, rows, named)) yield line(value);
  } finally {
    await close();
  }
  const missing: string[] = [];
  let files = 0;
  for (const file of named.values()) {
    const pieces = await piecesOf(file, parts.originalsOf(file.shop));
    if (pieces === undefined) {
      if (file.file === 'original')
        missing.push(`The file ${file.name} of the shop “${file.shop}” is gone; whatever names it is kept.`);
      continue;
    }
    const { bytes, read: readPieces } = pieces;
    const { file: kind, shop, name } = file;
    yield line({ file: kind, shop, name, bytes });
    files += 1;
    try {
      for await (const piece of readPieces()) yield line({ piece: Buffer.from(piece).toString('base64') });
    } catch (error) {
      if (!(error instanceof OriginalDamaged)) throw error;
      missing.push(`${error.message} (${name}, shop “${shop}”)`);
    }
  }
  const sha256 = hash.digest('hex');
  yield line({ end: { lines, sha256 } });
  return { rows, files, missing, sha256 };
}

type Named = Omit<BackupFile, 'bytes'>;

async function* rowLines(
  on: Kysely<Tables>,
  { version, now }: BackupParts,
  rows: Record<string, number>,
  named: Map<string, Named>,
): AsyncGenerator<BackupLine> {
  const name = (file: Named): void => void named.set(`${file.file} ${file.shop} ${file.name}`, file);
  const original = (shop: string, sha256: string): void => {
    name({ file: 'original', shop, name: sha256 });
    name({ file: 'parquet', shop, name: sha256 });
  };
  const steps = await on.selectFrom('furrow_migration').select('name').orderBy('number').execute();
  yield {
    furrow_backup: 1,
    program_version: version,
    made_at: now().toISOString(),
    steps: steps.map((step) => step.name),
  };
  for (const table of Object.keys(KEPT_TABLES) as KeptTable[])
    for await (const page of pages(on, table)) {
      rows[table] = (rows[table] ?? 0) + page.length;
      for (const row of page as readonly Partial<Tables['run'] & Tables['document_revision']>[]) {
        const { shop = '', id = '', sha256 = null, kind, content } = row;
        if (table === 'run' && sha256 === null) name({ file: 'live', shop, name: id });
        else if (table === 'run' && sha256 !== null) original(shop, sha256);
        else if (table === 'document_revision' && kind === 'readings')
          for (const found of content?.match(SHA256) ?? []) original(shop, found);
      }
      yield { table, rows: page as readonly object[] as readonly Record<string, unknown>[] };
    }
}

/** A file that there is, and its bytes; undefined where there is none. */
async function piecesOf(
  { file, name }: Named,
  originals: Originals,
): Promise<{ bytes: number; read: () => AsyncIterable<Uint8Array> } | undefined> {
  if (file === 'original') {
    const bytes = await originals.bytes(name);
    return bytes === undefined ? undefined : { bytes, read: () => originals.read(name) };
  }
  const path = file === 'parquet' ? originals.parquetPath(name) : livePath(originals, name);
  const bytes = statSync(path, { throwIfNoEntry: false })?.size;
  if (bytes === undefined) return undefined;
  if (bytes === 0) return { bytes, read: async function* () {} };
  // what comes in while it is read belongs to a later moment
  return { bytes, read: () => createReadStream(path, { end: bytes - 1, highWaterMark: PIECE }) };
}

/** Where the readings of a live run come in. */
export function livePath(originals: Pick<Originals, 'folder'>, id: string): string {
  return join(originals.folder, 'live', `${id}.jsonl`);
}
