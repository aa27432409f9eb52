import { createHash, randomUUID } from 'node:crypto';
import { createReadStream, mkdirSync, readdirSync, rmSync, statSync } from 'node:fs';
import { type FileHandle, mkdir, open, rename, rm, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { attempt } from '../database/store-failure.ts';

/** A file is gone, or is no longer what was kept. */
export class OriginalDamaged extends Error {
  override readonly name = 'OriginalDamaged';
}

/** A file among the originals. */
export interface Original {
  readonly sha256: string;
  /** Length [bytes]. */
  readonly bytes: number;
}

/** Files of runs as the logger wrote them, byte for byte, each known by its SHA-256. */
export interface Originals {
  /** Folder that they lie in. */
  readonly folder: string;
  /** Takes a file piece by piece; done when it is on disk under its hash. A `StoreFailure` leaves nothing behind. */
  put(pieces: AsyncIterable<Uint8Array>): Promise<Original>;
  /** Length of a file [bytes]; undefined where there is none of this hash. */
  bytes(sha256: string): Promise<number | undefined>;
  /** Reads a file; the last piece is given only when all of them are what was kept, else `OriginalDamaged` is thrown. */
  read(sha256: string): AsyncIterable<Uint8Array>;
  /** Writes what the rows of a file are as Parquet beside it, in place of what was there. */
  putParquet(sha256: string, pieces: AsyncIterable<Uint8Array> | Iterable<Uint8Array>): Promise<void>;
  /** Where a file lies. */
  path(sha256: string): string;
  /** Where its Parquet lies, whether it is there yet or not. */
  parquetPath(sha256: string): string;
  /** Erases a file and its Parquet for good. */
  erase(sha256: string): Promise<void>;
}

const PIECE = 1 << 20;
/** Age from which a file that never got its name is what a kill has left [ms]. */
const LEFT_OVER = 86_400_000;
const UNFINISHED = 'incoming-';

/** Opens, or makes, the folder of the originals. */
export function openOriginals(folder: string, now: () => Date): Originals {
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  for (const name of readdirSync(folder)) {
    const path = join(folder, name);
    if (name.startsWith(UNFINISHED) && now().getTime() - statSync(path).mtimeMs > LEFT_OVER) rmSync(path);
  }
  const stem = (sha256: string): string => {
    if (!/^[0-9a-f]{64}$/u.test(sha256)) throw new Error('no SHA-256');
    return join(folder, sha256.slice(0, 2), sha256);
  };
  const pathOf = (sha256: string): string => `${stem(sha256)}.log`;
  const parquetPath = (sha256: string): string => `${stem(sha256)}.parquet`;
  const settle = (from: string, to: string): Promise<void> =>
    attempt(folder, async () => {
      await mkdir(join(to, '..'), { recursive: true, mode: 0o700 });
      await rename(from, to);
      await flushFolder(join(to, '..'));
    });
  /** Writes pieces into a file without a name of its own; gives its path once it is on the disk. */
  const write = async (
    pieces: AsyncIterable<Uint8Array> | Iterable<Uint8Array>,
    see: (piece: Uint8Array) => void = () => undefined,
  ): Promise<string> => {
    const path = join(folder, `${UNFINISHED}${randomUUID()}`);
    let file: FileHandle | undefined;
    try {
      const opened = await attempt(folder, () => open(path, 'wx', 0o600));
      file = opened;
      // what breaks off where the pieces come from is no failure of the disk
      for await (const piece of pieces) {
        see(piece);
        await attempt(folder, () => opened.writeFile(piece));
      }
      await attempt(folder, async () => {
        await opened.sync();
        await opened.close();
      });
      return path;
    } catch (error) {
      await file?.close().catch(() => undefined);
      await rm(path, { force: true });
      throw error;
    }
  };
  return {
    folder,
    path: pathOf,
    parquetPath,
    put: async (pieces) => {
      const hash = createHash('sha256');
      let bytes = 0;
      const path = await write(pieces, (piece) => {
        hash.update(piece);
        bytes += piece.length;
      });
      const sha256 = hash.digest('hex');
      await settle(path, pathOf(sha256));
      return { sha256, bytes };
    },
    bytes: (sha256) =>
      attempt(folder, () =>
        stat(pathOf(sha256)).then(
          ({ size }) => size,
          (error: NodeJS.ErrnoException) => {
            if (error.code === 'ENOENT') return undefined;
            throw error;
          },
        ),
      ),
    async *read(sha256) {
      const hash = createHash('sha256');
      let held: Uint8Array | undefined;
      try {
        for await (const piece of createReadStream(pathOf(sha256), { highWaterMark: PIECE })) {
          if (held !== undefined) yield held;
          held = piece as Buffer;
          hash.update(held);
        }
      } catch (error) {
        if ((error as NodeJS.ErrnoException).code !== 'ENOENT') throw error;
        throw new OriginalDamaged(`The file of this run is gone from ${folder}.`);
      }
      if (hash.digest('hex') !== sha256)
        throw new OriginalDamaged(`The file of this run in ${folder} is no longer what was kept.`);
      if (held !== undefined) yield held;
    },
    putParquet: async (sha256, pieces) => settle(await write(pieces), parquetPath(sha256)),
    erase: (sha256) =>
      attempt(folder, async () => {
        for (const path of [parquetPath(sha256), pathOf(sha256)]) await rm(path, { force: true });
      }),
  };
}

/** A name is on the disk when its folder is; Windows has no such thing. */
async function flushFolder(folder: string): Promise<void> {
  if (process.platform === 'win32') return;
  const handle = await open(folder, 'r');
  try {
    await handle.sync();
  } finally {
    await handle.close();
  }
}
