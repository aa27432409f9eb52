import { createHash } from 'node:crypto';
import { lstatSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/** Name of the list that says which files of a folder Furrow wrote. */
export const PAPER_LIST = 'furrow-papers.json';

/** A file that Furrow wrote, with the SHA-256 of its bytes in hex. */
export interface ListedFile {
  readonly file: string;
  readonly sha256: string;
}

/** A list could not be read, so nothing in the folder is known to be Furrow’s. */
export class UnreadableList extends Error {}

/** Names that a list may hold: plain ones, so that no list leads out of its folder. */
const PLAIN_NAME = /^[a-z0-9][a-z0-9.-]*\.(?:pdf|svg|dxf|yaml)$/u;
const SHA256 = /^[0-9a-f]{64}$/u;

/** SHA-256 in hex. */
export function sha256Of(bytes: Uint8Array | string): string {
  return createHash('sha256').update(bytes).digest('hex');
}

/** The text of a list. */
export function listText(files: readonly ListedFile[], programVersion: string): string {
  return `${JSON.stringify({ furrow_papers: 1, program_version: programVersion, files }, null, 2)}\n`;
}

/** What the list in a folder names; nothing where there is no list. Throws `UnreadableList` for one that Furrow did not write. */
export function readList(folder: string): readonly ListedFile[] {
  const path = join(folder, PAPER_LIST);
  if (stateOf(path) === 'nothing') return [];
  try {
    const list: unknown = JSON.parse(readFileSync(path, 'utf8'));
    const { furrow_papers, files } = list as { furrow_papers: unknown; files: readonly ListedFile[] };
    const sound = files.every(({ file, sha256 }) => PLAIN_NAME.test(file) && SHA256.test(sha256));
    if (furrow_papers === 1 && sound) return files.map(({ file, sha256 }) => ({ file, sha256 }));
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code !== undefined && code !== 'EISDIR') throw error;
  }
  throw new UnreadableList(`${path}: this is not a list of papers that Furrow wrote.`);
}

/** What stands at a path: nothing, a plain file with its SHA-256, or something that is no plain file. */
export function stateOf(path: string): 'nothing' | 'other' | { readonly sha256: string } {
  const found = lstatSync(path, { throwIfNoEntry: false });
  if (found === undefined) return 'nothing';
  return found.isFile() ? { sha256: sha256Of(readFileSync(path)) } : 'other';
}

/** Whether a plain file with these bytes stands at a path. */
export function holds(path: string, sha256: string): boolean {
  const state = stateOf(path);
  return typeof state === 'object' && state.sha256 === sha256;
}
