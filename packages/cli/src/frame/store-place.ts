import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import {
  dataFolder,
  type Originals,
  openOriginals,
  StoreFailure,
  type StorePlace,
  THE_SHOP,
} from '@furrow/store';

/** Options of a command that works on what is kept. */
export interface StoreOptions {
  /** Folder of the embedded database; the usual place if left out. */
  readonly data?: string;
  /** Address of a PostgreSQL database in place of the embedded one. */
  readonly database?: string;
}

/** Folder of the embedded database and of what belongs to this computer. */
export function folderOf({ data }: StoreOptions): string {
  return data ?? dataFolder();
}

/** The files of each shop's runs. */
export function originalsIn(folder: string): (shop: string) => Originals {
  return (shop) =>
    openOriginals(
      shop === THE_SHOP ? join(folder, 'runs') : join(folder, 'shops', shop, 'runs'),
      () => new Date(),
    );
}

/** Where everything is kept; throws a `StoreFailure` where a file that is to name it cannot be read. */
export function storePlace(options: StoreOptions): StorePlace {
  const url = options.database ?? databaseAddress(process.env);
  return url === undefined ? { folder: folderOf(options) } : { url };
}

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
