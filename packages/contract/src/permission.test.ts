import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { API_PATHS } from './api-path.ts';
import { CALLERS, mayDo, PERMISSIONS, RIGHTS, type Right } from './permission.ts';

const PAGE = readFileSync(new URL('../../../docs/running.md', import.meta.url), 'utf8');

/** The table of the page, cells without the room around them. */
function tableOf(page: string): string[][] {
  const text = page.split('<!-- rights -->')[1]?.split('<!-- /rights -->')[0] ?? '';
  const rows = text
    .trim()
    .split('\n')
    .filter((line) => line.startsWith('|'));
  return rows
    .filter((_, index) => index !== 1)
    .map((line) =>
      line
        .split('|')
        .slice(1, -1)
        .map((cell) => cell.trim()),
    );
}

describe('the table of permissions', () => {
  it('is the one that the page for whoever runs the program shows', () => {
    const rights = Object.keys(RIGHTS) as Right[];
    expect(tableOf(PAGE)).toEqual([
      ['to', ...CALLERS],
      ...rights.map((right) => [
        RIGHTS[right].meaning,
        ...CALLERS.map((caller) => (mayDo(right, caller) ? 'yes' : '')),
      ]),
    ]);
  });

  it('names addresses of the contract only, and each of the API', () => {
    const known: readonly string[] = Object.values(API_PATHS);
    const named = Object.keys(PERMISSIONS).map((route) => route.split(' ')[1] ?? '');
    for (const path of named) expect(known).toContain(path);
    for (const path of known.filter((each) => each.startsWith('/api/'))) expect(named).toContain(path);
  });

  it('lets nobody change anything who may only look', () => {
    for (const [route, right] of Object.entries(PERMISSIONS)) {
      const changes =
        /^(?:PUT|DELETE) /u.test(route) ||
        (route.startsWith('POST ') && !/plan|card|papers|session/u.test(route));
      if (changes && right !== 'own') expect([route, mayDo(right, 'viewer')]).toEqual([route, false]);
    }
  });
});
