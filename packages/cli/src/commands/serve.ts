import { randomUUID } from 'node:crypto';
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import {
  Accounts,
  openBackgroundWork,
  openWork,
  type ProviderPlace,
  startServer,
  tokenOf,
} from '@furrow/server';
import { type Company, NOBODY, openCompany, StoreFailure, THE_SHOP } from '@furrow/store';
import { badInput, type Run } from '../frame/command.ts';
import { type OpenOptions, openPlaceOf } from '../frame/open-place.ts';
import { folderOf, originalsIn, type StoreOptions, storePlace } from '../frame/store-place.ts';
import { openWatcher } from '../frame/watcher.ts';

// as seen from packages/cli/dist, where this is built to
const APP_FOLDER = fileURLToPath(new URL('../../app/dist', import.meta.url));
const EXAMPLE_FOLDER = fileURLToPath(new URL('../../../examples', import.meta.url));

interface ServeOptions extends StoreOptions, OpenOptions {
  /** Port to listen on; 0 takes any free one [-]. */
  readonly port: number;
  /** Whether people sign in; they do wherever others on the network reach the program. */
  readonly accounts: boolean;
  /** Port of the monitor [-]. */
  readonly monitor?: number;
  readonly log: 'text' | 'json';
  /** Issuer of a provider, what it knows this program by, and which claim is the name of an account. */
  readonly oidc?: string;
  readonly oidcClient?: string;
  readonly oidcClaim: string;
}

/** Serves the bench until it is told to stop: on this computer, or to people who sign in. */
export const run: Run<ServeOptions> = async (_args, options, streams) => {
  const folder = folderOf(options);
  const open = openPlaceOf(options);
  if ('problem' in open) return badInput(open.problem);
  const provider = providerOf(options);
  if (typeof provider === 'string') return badInput([provider]);
  const people = options.accounts || open.place !== undefined;
  try {
    const place = storePlace(options);
    const sources = { now: () => new Date(), newId: randomUUID };
    const company = await openCompany(place, sources);
    if (open.place !== undefined && !(await company.people.hasAdministrator())) {
      await company.close();
      return badInput(NO_ADMINISTRATOR);
    }
    const appFolder = existsSync(APP_FOLDER) ? APP_FOLDER : undefined;
    const watcher = await openWatcher(options, streams, async () => void (await company.people.shops()));
    const work = openWork();
    const background = openBackgroundWork();
    const originalsOf = originalsIn(folder);
    const accounts = {
      company,
      ...sources,
      originalsOf,
      ...(open.place !== undefined && { open: open.place }),
      ...(provider !== undefined && { provider }),
    };
    const parts = {
      store: company.shop(THE_SHOP),
      work,
      background,
      originals: originalsOf(THE_SHOP),
      appFolder,
      exampleFolder: EXAMPLE_FOLDER,
      log: watcher.log,
      ...(watcher.observer !== undefined && { observer: watcher.observer }),
      ...(people ? { accounts } : { token: tokenOf(folder) }),
    };
    const started = await startServer(parts, options.port, undefined, options.listen);
    if (!started.ok) {
      await watcher.close();
      await company.close();
      return badInput(started.issues.map((issue) => issue.message));
    }
    const server = started.value;
    streams.print(`Furrow is ready: ${server.entry}`);
    if (people && !(await company.people.hasAdministrator())) {
      const path = await firstAdministrator(company, sources);
      streams.print(`The first administrator sets a password here, once, within a day: ${server.url}${path}`);
    }
    streams.print(
      'folder' in place
        ? `Saved jobs live in ${folder}`
        : 'Saved jobs live in the PostgreSQL database given.',
    );
    streams.print('Stop it with Ctrl-C.');
    await stopSignal();
    await server.close();
    await watcher.close();
    await Promise.all([work.close(), background.close()]);
    await company.close();
    return { exit: 0 };
  } catch (error) {
    if (!(error instanceof StoreFailure)) throw error;
    return badInput([error.message]);
  }
};

/** The provider that people may sign in by, or what stands in the way. */
function providerOf({
  oidc,
  oidcClient,
  oidcClaim: claim,
}: ServeOptions): ProviderPlace | string | undefined {
  if (oidc === undefined)
    return oidcClient === undefined
      ? undefined
      : '--oidc-client goes with --oidc, the address of the provider.';
  if (oidcClient === undefined)
    return '--oidc goes with --oidc-client, what the provider knows this program by.';
  const issuer = URL.canParse(oidc) ? new URL(oidc) : undefined;
  const isHere = issuer?.hostname === '127.0.0.1' || issuer?.hostname === 'localhost';
  if (issuer === undefined || (issuer.protocol !== 'https:' && !(isHere && issuer.protocol === 'http:')))
    return `--oidc takes the address of a provider, https://…; it is “${oidc}”.`;
  const secret = process.env['FURROW_OIDC_SECRET'];
  const hasSecret = secret !== undefined && secret !== '';
  return { issuer, clientId: oidcClient, claim, name: issuer.hostname, ...(hasSecret && { secret }) };
}

const NO_ADMINISTRATOR = [
  'Nothing was opened to the network: there is no administrator yet, so nobody could say who may come in.',
  'Start `furrow serve --accounts` on this computer first. It prints a link by which the first administrator sets a password.',
];

/** Makes the account of the first administrator and a link to it; after one that was lost, another. */
async function firstAdministrator(
  company: Company,
  sources: { readonly now: () => Date; readonly newId: () => string },
): Promise<string> {
  const accounts = new Accounts({ company, ...sources });
  const name = 'administrator';
  const before = await company.people.accountNamed(name);
  const id = before?.account.id ?? sources.newId();
  if (before === undefined) await company.people.addAccount({ id, name, administrator: true });
  return (await accounts.makeLink(id, NOBODY)).path;
}

function stopSignal(): Promise<void> {
  return new Promise((resolve) => {
    for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => resolve());
  });
}
