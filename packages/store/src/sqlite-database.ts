import { existsSync, mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { Kysely, SqliteDialect, type SqliteStatement } from 'kysely';
import Libsql from 'libsql';
import type { Database } from './database.ts';
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
const TRANSACTION_STEPS = new Map(
  [
    ['begin', 'begin immediate'],
    ['commit', 'commit'],
    ['rollback', 'rollback'],
  ].map(([asked = '', text = '']) => [asked, (file: Libsql.Database) => executed(file, text)]),
);

/**
 * Opens, or makes, the SQLite file of a folder. With synchronous=FULL a commit is on the disk before it
 * returns; in WAL mode a reader never waits for a writer.
 */
export function openSqlite(folder: string): Database {
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  const file = new Libsql(join(folder, FILE_NAME));
  try {
    file.exec(`pragma busy_timeout = ${BUSY_MILLISECONDS}`);
    file.exec('pragma journal_mode = wal');
    file.exec('pragma synchronous = full');
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
          prepare: (text) => TRANSACTION_STEPS.get(text)?.(file) ?? file.prepare(text),
          close: () => {
            // With the log written back, the one file holds everything, should somebody copy it.
            file.exec('pragma wal_checkpoint(truncate)');
            file.close();
          },
        },
      }),
    }),
    patiently,
    check: async () => undefined,
    forMigration: () => openSqlite(folder),
    backup: async (step) => {
      // Unlike a copy of the file, this takes in what still lies in the write-ahead log.
      file.prepare('vacuum into ?').run(freeName(join(folder, `before-step-${step + 1}`)));
    },
  };
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
