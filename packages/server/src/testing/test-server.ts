import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { openOriginals, openStore, type Store } from '@furrow/store';
import type { ServerParts } from '../build-server.ts';
import { openWork } from '../work/open-work.ts';

/** The repository's demo jobs. */
export const EXAMPLES = fileURLToPath(new URL('../../../../examples', import.meta.url));

/** One for all servers of a test file: its threads need not start anew. */
const WORK = openWork();

/** What a test server is made of, and what becomes of it. */
export interface TestParts {
  readonly parts: ServerParts;
  readonly store: Store;
  /** Bugs the server told of; a test that expects none looks here. */
  readonly faults: string[];
  readonly cleanUp: () => Promise<void>;
}

/** Parts of a server with an empty store, and an app of two files, in a temporary folder. */
export async function testParts(): Promise<TestParts> {
  const folder = mkdtempSync(join(tmpdir(), 'furrow-server-'));
  const appFolder = join(folder, 'app');
  mkdirSync(join(appFolder, 'assets'), { recursive: true });
  writeFileSync(join(appFolder, 'index.html'), '<!doctype html><title>the app</title>');
  writeFileSync(join(appFolder, 'assets', 'main-1a2b3c.js'), 'globalThis.furrow = true;');
  let seconds = 0;
  let ids = 0;
  const store = await openStore(
    { folder: join(folder, 'data') },
    {
      now: () => new Date(Date.UTC(2026, 0, 5, 6, 0, seconds++)),
      newId: () => `00000000-0000-4000-8000-${String(++ids).padStart(12, '0')}`,
    },
  );
  const faults: string[] = [];
  return {
    parts: {
      store,
      work: WORK,
      background: WORK,
      originals: openOriginals(join(folder, 'data', 'runs'), () => new Date()),
      appFolder,
      exampleFolder: EXAMPLES,
      log: (message) => void faults.push(message),
    },
    store,
    faults,
    cleanUp: async () => {
      await store.close();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}
