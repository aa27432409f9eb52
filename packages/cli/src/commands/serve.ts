import { randomUUID } from 'node:crypto';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { openBackgroundWork, openWork, startServer, tokenOf } from '@furrow/server';
import { openOriginals, openStore, StoreFailure } from '@furrow/store';
import { badInput, type Run } from '../frame/command.ts';
import { folderOf, type StoreOptions, storePlace } from '../frame/store-place.ts';

// as seen from packages/cli/dist, where this is built to
const APP_FOLDER = fileURLToPath(new URL('../../app/dist', import.meta.url));
const EXAMPLE_FOLDER = fileURLToPath(new URL('../../../examples', import.meta.url));

interface ServeOptions extends StoreOptions {
  /** Port to listen on; 0 takes any free one [-]. */
  readonly port: number;
}

/** Serves the bench on this computer until it is told to stop. */
export const run: Run<ServeOptions> = async (_args, options, streams) => {
  const folder = folderOf(options);
  try {
    const place = storePlace(options);
    const store = await openStore(place, { now: () => new Date(), newId: randomUUID });
    const appFolder = existsSync(APP_FOLDER) ? APP_FOLDER : undefined;
    const work = openWork();
    const background = openBackgroundWork();
    const originals = openOriginals(join(folder, 'runs'), () => new Date());
    const parts = {
      store,
      work,
      background,
      originals,
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
      'folder' in place
        ? `Saved jobs live in ${folder}`
        : 'Saved jobs live in the PostgreSQL database given.',
    );
    streams.print('Stop it with Ctrl-C.');
    await stopSignal();
    await server.close();
    await Promise.all([work.close(), background.close()]);
    await store.close();
    return { exit: 0 };
  } catch (error) {
    if (!(error instanceof StoreFailure)) throw error;
    return badInput([error.message]);
  }
};

function stopSignal(): Promise<void> {
  return new Promise((resolve) => {
    for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => resolve());
  });
}
