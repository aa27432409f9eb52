import { closeSync, fsyncSync, mkdirSync, openSync, renameSync, rmSync, writeSync } from 'node:fs';

/** What Furrow does to a disk: every change goes through here, so that a test can cut it short at any of them. */
export interface Disk {
  /** Makes a folder; fails where one of that name exists. */
  readonly makeFolder: (path: string) => void;
  /** Writes a new file down to the disk itself; fails, and leaves nothing, where one of that name exists or it cannot be whole. */
  readonly writeNew: (path: string, content: Uint8Array | string) => void;
  readonly move: (from: string, to: string) => void;
  readonly remove: (path: string) => void;
  /** Removes a folder with what it holds. */
  readonly removeFolder: (path: string) => void;
}

/** The disk of this computer. */
export const DISK: Disk = {
  makeFolder: (path) => mkdirSync(path),
  writeNew(path, content) {
    const bytes = typeof content === 'string' ? new TextEncoder().encode(content) : content;
    const file = openSync(path, 'wx');
    try {
      for (let written = 0; written < bytes.length; ) written += writeSync(file, bytes, written);
      fsyncSync(file);
    } catch (error) {
      rmSync(path, { force: true });
      throw error;
    } finally {
      closeSync(file);
    }
  },
  move: renameSync,
  remove: (path) => rmSync(path),
  removeFolder: (path) => rmSync(path, { recursive: true, force: true }),
};

/** Puts new content in place of a file: the file is the old one or the new one, whole, whatever comes between. */
export function replaceFile(path: string, content: string, disk: Disk = DISK): void {
  const beside = `${path}.new-${process.pid}`;
  disk.writeNew(beside, content);
  try {
    disk.move(beside, path);
  } catch (error) {
    disk.remove(beside);
    throw error;
  }
}

/** Why something could not be written, in words; undefined for an error that is not the disk’s. */
export function whyUnwritable(error: unknown): string | undefined {
  const { code, message } = error as NodeJS.ErrnoException;
  switch (code) {
    case undefined:
      return undefined;
    case 'ENOSPC':
      return 'the disk is full; make room and try again.';
    case 'EDQUOT':
      return 'this user’s share of the disk is full; make room and try again.';
    case 'EACCES':
    case 'EPERM':
      return 'this user may not write there.';
    case 'EROFS':
      return 'the disk can only be read.';
    case 'ENOENT':
      return 'there is no such folder.';
    case 'ENOTDIR':
    case 'EEXIST':
      return 'a file stands where a folder should be.';
    case 'EISDIR':
      return 'this is a folder; name a file.';
    case 'ENAMETOOLONG':
      return 'the name is too long.';
    default:
      return message;
  }
}
