import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { Journal, JournalFailure, type JournalFile, openJournal } from './journal.ts';

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'furrow-journal-'));
});
afterEach(() => {
  rmSync(folder, { recursive: true });
});

const line = (text: string): Uint8Array => Buffer.from(`${text}\n`);

/** A disk in memory with so many bytes of room, which tells what was done to it. */
function disk(room: number) {
  let held = Buffer.alloc(0);
  const steps: string[] = [];
  const file: JournalFile = {
    write: async (bytes, offset, length, position) => {
      const free = room - position;
      if (free <= 0) throw Object.assign(new Error('no space left'), { code: 'ENOSPC' });
      const count = Math.min(free, length, 7);
      held = Buffer.concat([held.subarray(0, position), bytes.subarray(offset, offset + count)]);
      steps.push('write');
      return { bytesWritten: count };
    },
    datasync: async () => {
      steps.push('sync');
    },
    truncate: async (length) => {
      held = held.subarray(0, length);
    },
    close: async () => undefined,
  };
  return { file, steps, text: () => held.toString() };
}

describe('a journal', () => {
  it('has lines on disk when they are acknowledged, in the order in which they came', async () => {
    const path = join(folder, 'run.jsonl');
    const journal = await openJournal(path);
    const adds = Array.from({ length: 50 }, (_, index) => journal.add(line(`{"n":${index}}`)));
    await adds[0];
    expect(readFileSync(path, 'utf8')).toContain('{"n":0}\n');
    await Promise.all(adds);
    await journal.close();
    const read = readFileSync(path, 'utf8')
      .trim()
      .split('\n')
      .map((each) => JSON.parse(each).n);
    expect(read).toEqual(Array.from({ length: 50 }, (_, index) => index));
  });

  it('acknowledges nothing before it is synced, and syncs what waits together', async () => {
    const { file, steps } = disk(1000);
    const journal = new Journal('run', file, 0);
    const seen: string[] = [];
    const adds = ['a', 'b', 'c'].map((text) =>
      journal.add(line(text)).then(() => seen.push([...steps].join(' '))),
    );
    await Promise.all(adds);
    expect(steps.filter((step) => step === 'sync')).toHaveLength(1);
    for (const at of seen) expect(at).toMatch(/sync$/);
  });

  it('goes on in a file begun before, behind a line that a crash has cut', async () => {
    const path = join(folder, 'run.jsonl');
    writeFileSync(path, '{"n":0}\n{"n":');
    const journal = await openJournal(path);
    await journal.add(line('{"n":1}'));
    await journal.close();
    expect(readFileSync(path, 'utf8')).toBe('{"n":0}\n{"n":\n{"n":1}\n');
  });

  it('tells of a full disk, keeps what came before whole, and goes on when there is room', async () => {
    const { file, text } = disk(20);
    const journal = new Journal('run', file, 0);
    await journal.add(line('0123456789'));
    const failure = await journal.add(line('abcdefghijklmnop')).catch((error: unknown) => error);
    expect(failure).toBeInstanceOf(JournalFailure);
    expect(failure).toMatchObject({ full: true, message: expect.stringContaining('The disk is full') });
    expect(text()).toBe('0123456789\n');
    await journal.add(line('short'));
    expect(text()).toBe('0123456789\nshort\n');
    expect(journal.length).toBe(17);
  });

  it('that cannot be opened says why', async () => {
    await expect(openJournal(join(folder, 'none', 'run.jsonl'))).rejects.toBeInstanceOf(JournalFailure);
  });
});
