import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { handbookIndex, handbookPage, readHandbook } from './handbook.ts';

const ROOT = join(import.meta.dirname, '..');
const rooms = readHandbook(ROOT);

describe('the handbook', () => {
  it('has a page for each room of the engine', () => {
    const engine = join(ROOT, 'packages', 'engine', 'src');
    const built = readdirSync(engine).filter((name) => existsSync(join(engine, name, 'index.ts')));
    expect(rooms.map(({ room }) => room).toSorted()).toEqual(built.toSorted());
    for (const { room } of rooms)
      expect(readFileSync(join(ROOT, 'docs', 'handbook', 'README.md'), 'utf8')).toContain(`(${room}.md)`);
  });

  it('tells of each question what it answers, inputs with unit and range, source and a worked number', () => {
    const all = rooms.flatMap(({ entries }) => entries);
    expect(all.length).toBeGreaterThan(200);
    for (const { name, summary, inputs, returns, source, worked } of all) {
      expect(summary, name).not.toBe('');
      expect(source, name).not.toBe('');
      expect(returns, name).toMatch(/\[[^\]]+\]/u);
      expect(worked.join(' '), name).toContain('// =>');
      for (const input of inputs) expect(input.text, `${name}, ${input.name}`).toMatch(/\[[^\]]+\]/u);
    }
  });

  it('sets a page and the first page in plain Markdown', () => {
    const commission = rooms.find(({ room }) => room === 'commission')!;
    const page = handbookPage(commission);
    expect(page).toContain('## roundOf');
    expect(page).toContain('- `depth`: how much is checked [name], first, daily or change');
    expect(page).toContain('Source: judgement, no source');
    expect(handbookIndex([commission])).toContain('- [commission](commission.md): ');
  });
});

it('has each question that a “why” of the app opens to', () => {
  const app = join(ROOT, 'packages', 'app', 'src');
  const files = readdirSync(app, { recursive: true, encoding: 'utf8' }).filter((name) =>
    /(-decisions\.ts|\.tsx)$/u.test(name),
  );
  const asked = files.flatMap((name) =>
    [...readFileSync(join(app, name), 'utf8').matchAll(/\bof(?::|=\{) ?\[([^\]]*)\]/gu)].flatMap(([, list]) =>
      [...list!.matchAll(/'(\w+)'/gu)].map(([, one]) => one),
    ),
  );
  expect(asked.length).toBeGreaterThan(8);
  const known = new Set(rooms.flatMap(({ entries }) => entries.map(({ name }) => name)));
  expect(asked.filter((name) => !known.has(name!))).toEqual([]);
});
