import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { ROOT } from './install.mjs';

const text = (path: string): string => readFileSync(join(ROOT, path), 'utf8');

/** Rows of the table under `## One name for a thing`, cell by cell. */
const ROWS = (/## One name for a thing\n([\s\S]*?)\n## /u.exec(`${text('ARCHITECTURE.md')}\n## `)?.[1] ?? '')
  .split('\n')
  .filter((line) => line.startsWith('| ') && !line.includes('---'))
  .slice(1)
  .map((line) => {
    const [thing = '', rooms = '', command = '', page = '', paper = ''] = line
      .split('|')
      .slice(1)
      .map((cell) => cell.trim());
    return { thing, rooms, command, page, paper };
  });

/** What stands between back quotes. */
const coded = (cell: string): string[] => [...cell.matchAll(/`([^`]+)`/gu)].map(([, name = '']) => name);

const COMMANDS = [...text('packages/cli/src/commands/index.ts').matchAll(/^ {4}name: '([a-z-]+)'/gmu)].map(
  ([, name = '']) => name,
);
const TABLE = text('packages/app/src/shell/page-table.ts');
const PLACES = new Map(
  [...TABLE.matchAll(/\{ place: '([a-z-]+)', title: '([^']+)' \}/gu)].map(([, place = '', title = '']) => [
    place,
    title,
  ]),
);
const PAGES = [...TABLE.matchAll(/place: '([a-z-]+)',\n {4}title: '([^']+)'/gu)].map(
  ([, place = '', title = '']) => `${PLACES.get(place)}: ${title}`,
);
const PAPERS = [
  ...(/PAPER_KINDS = \[([^\]]+)\]/u.exec(text('packages/papers/src/kinds/paper-set.ts'))?.[1] ?? '').matchAll(
    /'([a-z-]+)'/gu,
  ),
].map(([, kind = '']) => kind);
/** The kind of a paper as the table writes it: `set-up card` for `set-up-card`. */
const kindOf = (written: string): string => written.replaceAll(' ', '-');
/** Rooms that are no thing of their own: what the others stand on, and what composes them. */
const GROUND = [
  ...['issue', 'numeric', 'quantity', 'material', 'document', 'job', 'groove', 'limit', 'removal'],
  ...['result', 'answer'],
];
/** Commands that are no thing of their own: they check, print or keep what the others work with. */
const SERVICE = ['schema', 'serve', 'erase', 'audit', 'backup', 'restore', 'export', 'compare', 'check-file'];

describe('the table of names in ARCHITECTURE', () => {
  it('is read', () => {
    expect(ROWS.length).toBeGreaterThan(10);
    expect(PAGES.length).toBeGreaterThan(15);
    expect(PAPERS.length).toBeGreaterThan(6);
    expect(COMMANDS.length).toBeGreaterThan(15);
  });

  it.each(ROWS)('names what there is of $thing', ({ rooms, command, page, paper }) => {
    for (const room of coded(rooms))
      expect(
        existsSync(join(ROOT, 'packages/engine/src', room, 'index.ts')) ||
          existsSync(join(ROOT, 'packages/engine/src', room)),
        room,
      ).toBe(true);
    for (const name of coded(command)) expect(COMMANDS).toContain(name);
    for (const title of page.split(', ').filter((each) => each !== '–')) expect(PAGES).toContain(title);
    for (const title of paper.split(', ').filter((each) => each !== '–' && !each.startsWith('(')))
      expect(PAPERS).toContain(kindOf(title));
  });

  it('has every room, command, page and paper that is a thing of its own', () => {
    const rooms = readdirSync(join(ROOT, 'packages/engine/src')).filter((name) => !name.includes('.'));
    const named = ROWS.flatMap((row) => coded(row.rooms)).map((room) => room.split('/')[0]);
    expect(rooms.filter((room) => !GROUND.includes(room) && !named.includes(room))).toEqual([]);
    const commands = ROWS.flatMap((row) => coded(row.command));
    expect(COMMANDS.filter((name) => !SERVICE.includes(name) && !commands.includes(name))).toEqual([]);
    const papers = ROWS.flatMap((row) => row.paper.split(', ').map(kindOf));
    expect(PAPERS.filter((title) => !papers.includes(title))).toEqual([]);
    const pages = ROWS.flatMap((row) => row.page.split(', '));
    const jobPages = PAGES.filter((title) => !title.startsWith('Shop: ') && !pages.includes(title));
    expect(jobPages).toEqual([]);
  });
});
