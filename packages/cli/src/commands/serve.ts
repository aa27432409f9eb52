import { randomUUID } from 'node:crypto';
import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { openWork, startServer, tokenOf } from '@furrow/server';
import { dataFolder, openStore, StoreFailure } from '@furrow/store';
import { badInput, type Run } from '../frame/command.ts';

// as seen from packages/cli/dist, where this is built to
const APP_FOLDER = fileURLToPath(new URL('../../app/dist', import.meta.url));
const EXAMPLE_FOLDER = fileURLToPath(new URL('../../../examples', import.meta.url));

interface ServeOptions {
  /** Port to listen on; 0 takes any free one [-]. */
  readonly port: number;
  /** Folder of the embedded database; the usual place if left out. */
  readonly data?: string;
  /** Address of a PostgreSQL database in place of the embedded one. */
  readonly database?: string;
}

/** Serves the bench on this computer until it is told to stop. */
export const run: Run<ServeOptions> = async (_args, options, streams) => {
  const folder = options.data ?? dataFolder();
  try {
    const url = options.database ?? databaseAddress(process.env);
    const place = url === undefined ? { folder } : { url };
    const store = await openStore(place, { now: () => new Date(), newId: randomUUID });
    const appFolder = existsSync(APP_FOLDER) ? APP_FOLDER : undefined;
    const work = openWork();
    const parts = {
      store,
      work,
      token: tokenOf(folder),
      appFolder,
      exampleFolder: EXAMPLE_FOLDER,
      log: (message: string) => streams.problem([message]),
    };
    const started = await startServer(parts, options.port);
    if (!started.ok) {
      await store.close();
      return badInput(started.issues.map((issue) => issue.message));
    }
    const server = started.value;
    streams.print(`Furrow is ready: ${server.entry}`);
    streams.print(
      url === undefined
        ? `Saved jobs live in ${folder}`
        : 'Saved jobs live in the PostgreSQL database given.',
    );
    streams.print('Stop it with Ctrl-C.');
    await stopSignal();
    await server.close();
    await work.close();
    await store.close();
    return { exit: 0 };
  } catch (error) {
    if (!(error instanceof StoreFailure)) throw error;
    return badInput([error.message]);
  }
};

/**
 * Address of a PostgreSQL database from the environment, or from a file that it names: on the command line every user
 * of the computer can read it, password and all.
 */
function databaseAddress(environment: NodeJS.ProcessEnv): string | undefined {
  const { FURROW_DATABASE: address, FURROW_DATABASE_FILE: file } = environment;
  if (address !== undefined && address !== '') return address;
  if (file === undefined || file === '') return undefined;
  try {
    return readFileSync(file, 'utf8').trim();
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    throw new StoreFailure(
      'STORE_UNAVAILABLE',
      `The file that FURROW_DATABASE_FILE names cannot be read: ${why}`,
    );
  }
}

function stopSignal(): Promise<void> {
  return new Promise((resolve) => {
    for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => resolve());
  });
}
