import { randomBytes } from 'node:crypto';
import { chmodSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

const FILE_NAME = 'access-token';
const BYTES = 24;

/**
 * The token that lets a browser or a program in, kept in a file that its owner alone can read, so that a browser stays
 * let in when Furrow is started again. Deleting the file shuts everybody out.
 */
export function tokenOf(folder: string): string {
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  const path = join(folder, FILE_NAME);
  try {
    // Fails where the file is there already, so that of two programs started at once both have the same.
    writeFileSync(path, `${randomBytes(BYTES).toString('base64url')}\n`, { flag: 'wx', mode: 0o600 });
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw error;
    chmodSync(path, 0o600);
  }
  const token = readFileSync(path, 'utf8').trim();
  if (/^[\w-]{32,}$/.test(token)) return token;
  throw new Error(`The file ${path} holds no token that Furrow made; delete it and start again.`);
}
