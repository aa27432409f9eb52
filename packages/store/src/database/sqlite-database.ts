import {
  chmodSync,
  closeSync,
  existsSync,
  fsyncSync,
  mkdirSync,
  mkdtempSync,
  openSync,
  renameSync,
  rmSync,
  type Stats,
  statSync,
} from 'node:fs';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { Kysely, SqliteDialect, type SqliteStatement } from 'kysely';
import Libsql from 'libsql';
import type { Database } from './database.ts';
import { StoreFailure } from './store-failure.ts';
import type { Tables } from './tables.ts';

const FILE_NAME = 'furrow.sqlite';
/** Each try waits this long within SQLite, where it holds up everything else in this program. */
const BUSY_MILLISECONDS = 50;
/** Between tries the program gets on with its other work. */
const PAUSE_MILLISECONDS = 20;
const TRIES = 100;

/**
 * Every transaction of the store writes: taking the write lock at once lets it wait its turn, where a reader
 * that turns writer is refused when another program wrote in between. `exec` rather than a prepared statement:
 * one that found the database busy stays in progress until it is collected, and no commit gets past it.
 */
const TRANSACTION_STEPS = new Map([
  ['begin', 'begin immediate'],
  ['commit', 'commit'],
  ['rollback', 'rollback'],
]);

/**
 * Opens, or makes, the SQLite file of a folder. A commit is on the disk before it returns. A rollback journal rather
 * than a write-ahead log: between commits the one file holds everything, and what is known to go wrong with logs that
 * several programs write at once cannot.
 */
export function openSqlite(folder: string): Database {
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  const path = join(folder, FILE_NAME);
  // Made here, so that nobody else may read it wherever the folder is; SQLite gives the files beside it the same rights.
  closeSync(openSync(path, 'a', 0o600));
  chmodSync(path, 0o600);
  const file = new Libsql(path);
  const opened = statSync(path);
  try {
    file.exec(`pragma busy_timeout = ${BUSY_MILLISECONDS}`);
    file.exec('pragma journal_mode = truncate');
    file.exec('pragma synchronous = extra');
    // What is erased is overwritten, not only forgotten.
    file.exec('pragma secure_delete = on');
    file.exec('pragma foreign_keys = on');
  } catch (error) {
    file.close();
    throw error;
  }
  return {
    kind: 'sqlite',
    place: folder,
    kysely: new Kysely<Tables>({
      dialect: new SqliteDialect({
        database: {
          prepare: (text) => {
            const step = TRANSACTION_STEPS.get(text);
            if (step === undefined) return file.prepare(text);
            if (text !== 'rollback') refuseIfGone(path, opened);
            // A full disk makes SQLite take everything back by itself; why it did must not be lost to a second error.
            return executed(file, text === 'rollback' && !file.inTransaction ? 'select 1' : step);
          },
          close: () => void file.close(),
        },
      }),
    }),
    patiently,
    check: async () => undefined,
    forMigration: () => openSqlite(folder),
    snapshot: async () => {
      const aside = mkdtempSync(join(folder, 'reading-'));
      const remove = (): void => rmSync(aside, { recursive: true, force: true });
      try {
        await patiently(async () => void file.prepare('vacuum into ?').run(join(aside, FILE_NAME)));
        const { kysely: on } = openSqlite(aside);
        return { on, close: () => on.destroy().finally(remove) };
      } catch (error) {
        remove();
        throw error;
      }
    },
    backup: async (step) => {
      // It gets its name when it is whole, so that what a kill leaves is never taken for a backup.
      const unfinished = join(folder, 'backup-unfinished.sqlite');
      rmSync(unfinished, { force: true });
      file.prepare('vacuum into ?').run(unfinished);
      chmodSync(unfinished, 0o600);
      flush(unfinished);
      renameSync(unfinished, freeName(join(folder, `before-step-${step + 1}`)));
    },
  };
}

/** A file that was deleted or moved still takes what is written to it, and nobody ever finds it again. */
function refuseIfGone(path: string, opened: Stats): void {
  const now = statSync(path, { throwIfNoEntry: false });
  if (now?.ino === opened.ino && now.dev === opened.dev) return;
  throw new StoreFailure(
    'STORE_UNAVAILABLE',
    `The file ${path} that the saved jobs were in is gone or was replaced; nothing was saved. ` +
      'Put it back, or stop Furrow and start it again.',
  );
}

function flush(path: string): void {
  const file = openSync(path, 'r+');
  try {
    fsyncSync(file);
  } finally {
    closeSync(file);
  }
}

function executed(file: Libsql.Database, text: string): SqliteStatement {
  return {
    reader: false,
    all: () => [],
    iterate: () => [][Symbol.iterator](),
    run: () => {
      file.exec(text);
      return { changes: 0, lastInsertRowid: 0 };
    },
  };
}

/** Tries again while another program writes. Safe, as whatever finds the database busy has changed nothing. */
async function patiently<T>(work: () => Promise<T>): Promise<T> {
  for (let tries = 1; ; tries++) {
    try {
      return await work();
    } catch (error) {
      if (tries === TRIES || !isBusy(error)) throw error;
    }
    await setTimeout(PAUSE_MILLISECONDS);
  }
}

function isBusy(error: unknown): boolean {
  return error instanceof Error && String((error as { code?: unknown }).code).startsWith('SQLITE_BUSY');
}

function freeName(stem: string): string {
  for (let count = 0; ; count++) {
    const name = `${stem}${count === 0 ? '' : `-${count}`}.sqlite`;
    if (!existsSync(name)) return name;
  }
}
