import { createHash, randomUUID } from 'node:crypto';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { API_PATHS } from '@furrow/contract';
import { openWork, startServer, tokenOf } from '@furrow/server';
import { type Company, openCompany, openOriginals, openStore, THE_SHOP } from '@furrow/store';

/** Folder of the app as it was built last. */
export const APP = fileURLToPath(new URL('../packages/app/dist', import.meta.url));
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

/** What a bench serves, and where. */
export interface BenchPlace {
  /** Folder of the built app. */
  readonly app?: string;
  /** Any free one where left out. */
  readonly port?: number;
  /** People who sign in, each with the password `the password of NAME`, as engineers of the one shop; nobody signs in where left out. */
  readonly people?: readonly string[];
}

/** Serves the built app over a fresh, empty store. */
export async function startBench({ app = APP, port = 0, people }: BenchPlace = {}): Promise<BenchServer> {
  const folder = await mkdtemp(join(tmpdir(), 'furrow-e2e-'));
  const faults: string[] = [];
  const tools = { now: () => new Date(), newId: randomUUID };
  const company = people === undefined ? undefined : await openCompany({ folder }, tools);
  const store = company?.shop(THE_SHOP) ?? (await openStore({ folder }, tools));
  const originals = openOriginals(join(folder, 'runs'), () => new Date());
  const parts = {
    store,
    work: WORK,
    background: WORK,
    originals,
    token: tokenOf(folder),
    ...(company !== undefined && {
      accounts: { company, ...tools, cost: { power: 4 }, originalsOf: () => originals },
    }),
    appFolder: app,
    exampleFolder: EXAMPLES,
    log: (message: string) => void faults.push(message),
  };
  const started = await startServer(parts, port);
  if (!started.ok) throw new Error(started.issues[0]?.message);
  const { url, entry, close } = started.value;
  if (company !== undefined) {
    await company.people.putShop({ id: THE_SHOP, name: 'The shop' });
    // whoever lets people in comes first: a company has an administrator at all times
    await letIn(company, url, 'keeper', true);
    for (const name of people ?? []) await letIn(company, url, name, false);
  }
  return {
    url,
    entry,
    faults,
    async stop() {
      await close();
      await (company ?? store).close();
      await rm(folder, { recursive: true, force: true });
    },
  };
}

/** Lets a person in by a one-time link, as an administrator would. */
async function letIn({ people }: Company, url: string, name: string, administrator: boolean): Promise<void> {
  const id = randomUUID();
  const link = randomUUID();
  await people.addAccount({ id, name, administrator });
  await people.setRights(id, { administrator, shut: false, shops: { [THE_SHOP]: 'engineer' } });
  const hash = createHash('sha256').update(link).digest('hex');
  await people.addLink(hash, id, new Date(Date.now() + 60_000).toISOString());
  const reply = await fetch(`${url}${API_PATHS.sessionLink}`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ link, password: passwordOf(name) }),
  });
  if (!reply.ok) throw new Error(await reply.text());
}

/** The password of a person who was let in. */
export function passwordOf(name: string): string {
  return `the password of ${name}`;
}
