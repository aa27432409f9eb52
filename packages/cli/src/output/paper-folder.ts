import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { hostname } from 'node:os';
import { dirname, join } from 'node:path';
import { DISK, type Disk } from './disk.ts';
import {
  holds,
  type ListedFile,
  listText,
  PAPER_LIST,
  readList,
  sha256Of,
  stateOf,
  UnreadableList,
} from './paper-list.ts';

/**
 * Puts a set of papers into a folder that may hold other files, and an earlier set.
 *
 * Furrow touches only what its list in the folder names and nobody has changed since. The new set is written out in
 * a folder of its own first; then the old files move aside and the new ones in, the new list last. Until that list
 * is in place the old set stands: a run that fails puts it back, and one that was killed is put right by the next.
 */
const RUN = 'furrow-papers.unfinished';
const COMING = 'coming';
const ASIDE = 'aside';
const OWNER = 'run.json';

/** A file of the new set. */
export interface ComingFile {
  readonly file: string;
  readonly bytes: Uint8Array;
}

/** What was done to the folder. */
export interface Replaced {
  /** Files of the earlier set that the new one does not have. */
  readonly removed: readonly string[];
}

/** Files that are not Furrow’s to touch, or another run, stand in the way: nothing was written. */
export class InTheWay extends Error {
  readonly lines: readonly string[];
  constructor(lines: readonly string[]) {
    super(lines.join('\n'));
    this.lines = lines;
  }
}

/** Puts a folder right where an earlier run was killed in it; whether there was anything to put right. */
export function recoverFolder(folder: string, disk: Disk = DISK): boolean {
  const run = join(folder, RUN);
  if (stateOf(run) === 'nothing') return false;
  const owner = ownerOf(run);
  if (owner === undefined) throw new InTheWay([`${run}: this is not Furrow’s, and stands in its way.`]);
  if (owner.host !== hostname() || isRunning(owner.process)) {
    throw new InTheWay([
      `${folder}: process ${owner.process} on ${owner.host} is writing papers here. If it is no longer running, move what lies in ${join(run, ASIDE)} back into the folder and remove ${run}.`,
    ]);
  }
  putBack(folder, disk);
  return true;
}

/**
 * Replaces the set of papers in a folder, which is made if it is not there.
 * Throws `InTheWay`, with nothing touched, where a file is not Furrow’s or was changed.
 */
export function replacePapers(
  folder: string,
  files: readonly ComingFile[],
  programVersion: string,
  disk: Disk = DISK,
): Replaced {
  const made: string[] = [];
  try {
    makeFolders(folder, made, disk);
    const old = cleared(folder, files);
    const coming = files.map(({ file, bytes }) => ({ file, sha256: sha256Of(bytes) }));
    changeOver(folder, files, { old, coming, programVersion }, disk);
    const names = new Set(files.map(({ file }) => file));
    return { removed: old.filter((name) => !names.has(name)) };
  } catch (error) {
    for (const path of made.toReversed()) if (readdirSync(path).length === 0) disk.removeFolder(path);
    throw error;
  }
}

/** The old files that may go; throws where anything stands in the way. */
function cleared(folder: string, files: readonly ComingFile[]): readonly string[] {
  let listed: readonly ListedFile[];
  try {
    listed = readList(folder);
  } catch (error) {
    if (error instanceof UnreadableList) throw new InTheWay([error.message]);
    throw error;
  }
  const known = new Map(listed.map(({ file, sha256 }) => [file, sha256]));
  const names = [...new Set([...files.map(({ file }) => file), ...known.keys()])];
  const old: string[] = [];
  const lines: string[] = [];
  for (const name of names) {
    const path = join(folder, name);
    const state = stateOf(path);
    if (state === 'nothing') continue;
    const sha256 = known.get(name);
    if (sha256 === undefined) lines.push(`${path}: Furrow did not write this file.`);
    else if (state === 'other' || state.sha256 !== sha256) {
      lines.push(`${path}: this file was changed after Furrow wrote it.`);
    } else old.push(name);
  }
  if (lines.length > 0) throw new InTheWay(lines);
  return old;
}

interface ChangeOver {
  readonly old: readonly string[];
  readonly coming: readonly ListedFile[];
  readonly programVersion: string;
}

function changeOver(
  folder: string,
  files: readonly ComingFile[],
  { old, coming, programVersion }: ChangeOver,
  disk: Disk,
): void {
  const run = join(folder, RUN);
  disk.makeFolder(run);
  try {
    disk.writeNew(join(run, OWNER), JSON.stringify({ process: process.pid, host: hostname() }));
    disk.makeFolder(join(run, ASIDE));
    disk.makeFolder(join(run, COMING));
    for (const { file, bytes } of files) disk.writeNew(join(run, COMING, file), bytes);
    disk.writeNew(join(run, COMING, PAPER_LIST), listText(coming, programVersion));
    for (const name of old) disk.move(join(folder, name), join(run, ASIDE, name));
    for (const { file } of files) disk.move(join(run, COMING, file), join(folder, file));
    // from here on the new set stands
    disk.move(join(run, COMING, PAPER_LIST), join(folder, PAPER_LIST));
  } catch (error) {
    putBack(folder, disk);
    throw error;
  }
  try {
    disk.removeFolder(run);
  } catch {
    // the new set stands, and the next run takes away what is left of this one
  }
}

/** Undoes what a run began, unless its list is in place already; can itself be cut short and begun again. */
function putBack(folder: string, disk: Disk): void {
  const run = join(folder, RUN);
  const coming = comingIn(run);
  if (coming !== undefined) {
    const before = new Map(readList(folder).map(({ file, sha256 }) => [file, sha256]));
    for (const { file, sha256 } of coming) {
      const moved = stateOf(join(run, COMING, file)) === 'nothing';
      if (moved && before.get(file) !== sha256 && holds(join(folder, file), sha256)) {
        disk.remove(join(folder, file));
      }
    }
    const aside = readdirSync(join(run, ASIDE));
    const taken = aside.filter((name) => {
      const place = join(folder, name);
      return stateOf(place) !== 'nothing' && !holds(place, before.get(name) ?? '');
    });
    if (taken.length > 0) {
      throw new InTheWay(
        taken.map((name) => `${join(folder, name)}: this stands where ${join(run, ASIDE, name)} belongs.`),
      );
    }
    for (const name of aside) disk.move(join(run, ASIDE, name), join(folder, name));
  }
  disk.removeFolder(run);
}

/** The list that a run has still to put in place; undefined before it began to move files, and after it ended. */
function comingIn(run: string): readonly ListedFile[] | undefined {
  if (stateOf(join(run, COMING, PAPER_LIST)) === 'nothing') return undefined;
  try {
    return readList(join(run, COMING));
  } catch (error) {
    // cut short as it was written, and files move only after it was
    if (error instanceof UnreadableList) return undefined;
    throw error;
  }
}

interface Owner {
  readonly process: number;
  readonly host: string;
}

/** Whose run a folder is; undefined where it is not one of Furrow’s. */
function ownerOf(run: string): Owner | undefined {
  const entries = readdirSync(run);
  try {
    const owner = JSON.parse(readFileSync(join(run, OWNER), 'utf8')) as Owner;
    return typeof owner.process === 'number' && typeof owner.host === 'string' ? owner : undefined;
  } catch {
    // killed before it had said whose it is, which comes before anything else
    const bare = entries.every((name) => name === OWNER);
    return bare ? { process: process.pid, host: hostname() } : undefined;
  }
}

/** Whether another process of this number runs on this computer. */
function isRunning(id: number): boolean {
  if (id === process.pid) return false;
  try {
    return process.kill(id, 0);
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
}

/** Makes a folder with those it lies in, and adds those that were not there to `made`, the outermost first. */
function makeFolders(folder: string, made: string[], disk: Disk): void {
  if (existsSync(folder)) return;
  makeFolders(dirname(folder), made, disk);
  disk.makeFolder(folder);
  made.push(folder);
}
