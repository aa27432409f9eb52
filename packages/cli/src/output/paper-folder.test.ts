import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { hostname, tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { DISK, type Disk } from './disk.ts';
import { InTheWay, recoverFolder, replacePapers } from './paper-folder.ts';
import { PAPER_LIST } from './paper-list.ts';

const RUN = 'furrow-papers.unfinished';
const VERSION = '1.2.3';
let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'furrow-paper-folder-'));
});
afterEach(() => rmSync(folder, { recursive: true }));

const set = (texts: Readonly<Record<string, string>>): { file: string; bytes: Uint8Array }[] =>
  Object.entries(texts).map(([file, text]) => ({ file, bytes: new TextEncoder().encode(text) }));
// one file changes, one stays, one goes, one comes
const OLD = { 'card.pdf': 'old card', 'section.svg': 'same', 'bay.dxf': 'old bay' };
const NEW = { 'card.pdf': 'new card', 'section.svg': 'same', 'quote.pdf': 'new quote' };

/** Every file of the folder with its text. */
function contents(path = folder): Record<string, string> {
  const files = readdirSync(path, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile());
  return Object.fromEntries(
    files
      .map((entry) => join(entry.parentPath, entry.name))
      .toSorted()
      .map((file) => [file.slice(path.length + 1), readFileSync(file, 'utf8')]),
  );
}

/** What stops a disk, before its nth change: an error that passes, or the end of the program. */
function stopping(nth: number, how: 'full' | 'killed'): Disk {
  let count = 0;
  const step =
    <Args extends unknown[]>(change: (...args: Args) => void) =>
    (...args: Args): void => {
      count += 1;
      if (count === nth || (how === 'killed' && count > nth)) {
        throw Object.assign(new Error('stopped'), { code: 'ENOSPC' });
      }
      change(...args);
    };
  return {
    makeFolder: step(DISK.makeFolder),
    writeNew: step(DISK.writeNew),
    move: step(DISK.move),
    remove: step(DISK.remove),
    removeFolder: step(DISK.removeFolder),
  };
}

/** Runs what may be stopped; whether it was. */
function stopped(work: () => void): boolean {
  try {
    work();
    return false;
  } catch (error) {
    expect((error as Error).message).toBe('stopped');
    return true;
  }
}

test('a set replaces the one before it, and says what is gone', () => {
  const own = { 'kit.yaml': 'mine', 'job.yaml': 'mine too' };
  for (const [name, text] of Object.entries(own)) writeFileSync(join(folder, name), text);
  expect(replacePapers(folder, set(OLD), VERSION)).toEqual({ removed: [] });
  expect(replacePapers(folder, set(NEW), VERSION)).toEqual({ removed: ['bay.dxf'] });
  const { [PAPER_LIST]: list, ...rest } = contents();
  expect(rest).toEqual({ ...own, ...NEW });
  const { files } = JSON.parse(list ?? '') as { files: { file: string; sha256: string }[] };
  expect(files.map(({ file }) => file)).toEqual(Object.keys(NEW));
  // sha256sum of the bytes "same"
  expect(files[1]?.sha256).toBe('0967115f2813a3541eaef77de9d9d5773f1c0c04314b0bbfe4ff3b3b1c55b5d5');
});

describe('what is not Furrow’s, or no longer as it wrote it, stands in the way and is named', () => {
  test.each<[string, () => void, string]>([
    ['a file of the user', () => writeFileSync(join(folder, 'quote.pdf'), 'mine'), 'quote.pdf: Furrow did'],
    ['a paper with notes on it', () => writeFileSync(join(folder, 'card.pdf'), 'noted'), 'card.pdf: this'],
    [
      'a paper with notes that would go',
      () => writeFileSync(join(folder, 'bay.dxf'), 'noted'),
      'bay.dxf: this',
    ],
    ['a folder', () => mkdirSync(join(folder, 'quote.pdf')), 'quote.pdf: Furrow did'],
    [
      'a link to a file elsewhere',
      () => symlinkSync(join(folder, 'card.pdf'), join(folder, 'quote.pdf')),
      'quote.pdf: Furrow did',
    ],
    ['a list of somebody else', () => writeFileSync(join(folder, PAPER_LIST), '{"files": 3}'), PAPER_LIST],
    [
      'a list that leads out of the folder',
      () =>
        writeFileSync(
          join(folder, PAPER_LIST),
          JSON.stringify({ furrow_papers: 1, files: [{ file: '../kit.yaml', sha256: '0'.repeat(64) }] }),
        ),
      PAPER_LIST,
    ],
    ['somebody’s folder of the name', () => mkdirSync(join(folder, RUN, 'mine'), { recursive: true }), RUN],
  ])('%s', (_what, put, named) => {
    replacePapers(folder, set(OLD), VERSION);
    put();
    const before = contents();
    const run = (): void => {
      recoverFolder(folder);
      replacePapers(folder, set(NEW), VERSION);
    };
    expect(run).toThrow(InTheWay);
    expect(run).toThrow(named);
    expect(contents()).toEqual(before);
  });

  test('all of them at once', () => {
    for (const name of Object.keys(NEW)) writeFileSync(join(folder, name), 'mine');
    expect(() => replacePapers(folder, set(NEW), VERSION)).toThrow(
      /card\.pdf: .*\n.*section\.svg: .*\n.*quote\.pdf: /u,
    );
  });
});

test('a disk that fails at any step leaves the old set as it was, or the new one whole', () => {
  for (let nth = 1; ; nth += 1) {
    rmSync(folder, { recursive: true });
    replacePapers(folder, set(OLD), VERSION);
    const before = contents();
    const failed = stopped(() => void replacePapers(folder, set(NEW), VERSION, stopping(nth, 'full')));
    const { [PAPER_LIST]: _list, ...rest } = contents();
    if (failed) expect(contents()).toEqual(before);
    else if (existsSync(join(folder, RUN))) {
      // only clearing up failed: the next run does it
      expect(recoverFolder(folder)).toBe(true);
      expect(readFileSync(join(folder, 'quote.pdf'), 'utf8')).toBe('new quote');
    } else {
      expect(rest).toEqual(NEW);
      expect(nth).toBeGreaterThan(10);
      return;
    }
  }
});

test('killed at any step, and again while that is put right, no paper of the old set is lost and the next run has it whole', () => {
  for (let nth = 1; ; nth += 1) {
    for (let again = 1; ; again += 1) {
      rmSync(folder, { recursive: true });
      replacePapers(folder, set(OLD), VERSION);
      const before = contents();
      const killed = stopped(() => void replacePapers(folder, set(NEW), VERSION, stopping(nth, 'killed')));
      if (!killed && !existsSync(join(folder, RUN))) return;
      const lying = Object.values(contents());
      if (killed) for (const text of Object.values(OLD)) expect(lying).toContain(text);
      const twice = stopped(() => void recoverFolder(folder, stopping(again, 'killed')));
      recoverFolder(folder);
      const { [PAPER_LIST]: _list, ...rest } = contents();
      if (killed) expect(contents()).toEqual(before);
      else expect(rest).toEqual(NEW);
      if (!twice) break;
    }
  }
});

test('a folder that had to be made is taken away again when nothing could be put in it', () => {
  const output = join(folder, 'shop', 'papers');
  for (let nth = 1; nth < 8; nth += 1) {
    stopped(() => void replacePapers(output, set(NEW), VERSION, stopping(nth, 'full')));
    expect(existsSync(join(folder, 'shop'))).toBe(false);
  }
});

test('a run that is still going, here or on another computer, is not disturbed', () => {
  mkdirSync(join(folder, RUN));
  const owners = [
    { process: process.ppid, host: hostname() },
    { process: process.pid, host: `not-${hostname()}` },
  ];
  for (const owner of owners) {
    writeFileSync(join(folder, RUN, 'run.json'), JSON.stringify(owner));
    expect(() => recoverFolder(folder)).toThrow(`process ${owner.process} on ${owner.host}`);
    expect(() => replacePapers(folder, set(NEW), VERSION)).toThrow(/EEXIST/u);
    expect(readdirSync(folder)).toEqual([RUN]);
  }
});
