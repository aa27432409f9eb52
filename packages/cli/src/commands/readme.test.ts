import { existsSync, readFileSync } from 'node:fs';
import { answerJob, readJob } from '@furrow/engine';
import { describe, expect, it } from 'vitest';
import { COMMANDS } from './index.ts';

const ROOT = new URL('../../../../', import.meta.url);
const readme = readFileSync(new URL('README.md', ROOT), 'utf8');

/** What the README types into a terminal, without what it says beside it. */
const lines = [...readme.matchAll(/^ {4}npx (furrow .*?)(?: {2,}#.*)?$/gmu)].map(([, line]) => line ?? '');

describe('the README', () => {
  it('has commands to try', () => {
    expect(lines.length).toBeGreaterThan(20);
  });

  it.each(lines)('%s names a command, options and files that there are', (line) => {
    const [, name, ...words] = line.replace(/"[^"]*"/gu, 'text').split(/\s+/u);
    const command = COMMANDS.find((record) => record.name === name);
    expect(command?.name).toBe(name);
    const known = (command?.options ?? []).flatMap(({ short, long }) => [short, long]);
    for (const word of words) {
      if (word.startsWith('-')) expect(known).toContain(word);
      if (word.startsWith('examples/')) expect([word, existsSync(new URL(word, ROOT))]).toEqual([word, true]);
    }
  });

  it('shows a job file of one’s own that is planned as it stands, in twelve lines', () => {
    const file =
      /As a file it is this much:\n\n((?: {4}.*\n)+)/u.exec(readme)?.[1]?.replace(/^ {4}/gmu, '') ?? '';
    expect(file.trim().split('\n').length).toBeLessThanOrEqual(12);
    const read = readJob(file);
    if (!read.ok) throw new Error(read.issues[0]?.message);
    expect(answerJob({ job: read.value, version: '0.1.0' }).plan).toBeDefined();
  });

  it('shows pictures that there are', () => {
    const pictures = [...readme.matchAll(/\]\((docs\/pictures\/[^)]+)\)/gu)].map(([, path]) => path ?? '');
    expect(pictures.length).toBeGreaterThan(10);
    for (const path of pictures) expect([path, existsSync(new URL(path, ROOT))]).toEqual([path, true]);
  });
});
