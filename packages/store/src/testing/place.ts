import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { StorePlace } from '../open-store.ts';
import { findPostgres, type PostgresServer, startPostgres } from './postgres-server.ts';

/** A kind of database that the suites are looped over. */
export interface TestedKind {
  readonly name: 'sqlite' | 'postgresql';
  /** Why it cannot be tested here; undefined if it can. */
  readonly missing: string | undefined;
  readonly start: () => void;
  /** A place for an empty database. */
  readonly newPlace: () => StorePlace;
  readonly stop: () => void;
}

/** Both kinds of database. */
export function testedKinds(): readonly TestedKind[] {
  return [sqliteKind(), postgresKind()];
}

function sqliteKind(): TestedKind {
  const folders: string[] = [];
  return {
    name: 'sqlite',
    missing: undefined,
    start: () => undefined,
    newPlace: () => {
      const folder = mkdtempSync(join(tmpdir(), 'furrow-store-'));
      folders.push(folder);
      return { folder };
    },
    stop: () => {
      for (const folder of folders) rmSync(folder, { recursive: true, force: true });
    },
  };
}

function postgresKind(): TestedKind {
  const found = findPostgres();
  let server: PostgresServer | undefined;
  return {
    name: 'postgresql',
    missing: 'missing' in found ? found.missing : undefined,
    start: () => {
      if ('binaries' in found) server = startPostgres(found.binaries);
    },
    newPlace: () => {
      if (server === undefined) throw new Error('the PostgreSQL server of the test is not running');
      return { url: server.newDatabase() };
    },
    stop: () => server?.stop(),
  };
}
