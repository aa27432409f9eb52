import { randomUUID } from 'node:crypto';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { openWork, startServer, tokenOf } from '@furrow/server';
import { openOriginals, openStore } from '@furrow/store';

const APP = fileURLToPath(new URL('../packages/app/dist', import.meta.url));
const EXAMPLES = fileURLToPath(new URL('../examples', import.meta.url));

/** One for all benches of a worker: its threads need not start anew, and an answer to the same question is kept. */
const WORK = openWork();

/** A running bench with a data folder of its own. */
export interface BenchServer {
  readonly url: string;
  /** Address that lets a browser in. */
  readonly entry: string;
  /** Bugs the server told of. */
  readonly faults: readonly string[];
  readonly stop: () => Promise<void>;
}

/** Serves the built app over a fresh, empty store. */
export async function startBench(): Promise<BenchServer> {
  const folder = await mkdtemp(join(tmpdir(), 'furrow-e2e-'));
  const faults: string[] = [];
  const store = await openStore({ folder }, { now: () => new Date(), newId: randomUUID });
  const originals = openOriginals(join(folder, 'runs'), () => new Date());
  const parts = {
    store,
    work: WORK,
    background: WORK,
    originals,
    token: tokenOf(folder),
    appFolder: APP,
    exampleFolder: EXAMPLES,
    log: (message: string) => void faults.push(message),
  };
  const started = await startServer(parts, 0);
  if (!started.ok) throw new Error(started.issues[0]?.message);
  const { url, entry, close } = started.value;
  return {
    url,
    entry,
    faults,
    async stop() {
      await close();
      await store.close();
      await rm(folder, { recursive: true, force: true });
    },
  };
}
