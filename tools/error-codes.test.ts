import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { ISSUE_CODES, RETIRED_CODES } from '../packages/engine/src/issue/index.ts';
import { readCodeUse, readErrorRows } from './error-codes.ts';
import { ROOT } from './install.mjs';

const TABLE = 'packages/engine/src/issue/codes.ts';

function sourceFiles(): string[] {
  const packages = join(ROOT, 'packages');
  return readdirSync(packages)
    .flatMap((name) =>
      readdirSync(join(packages, name, 'src'), { recursive: true, encoding: 'utf8' }).map((file) =>
        ['packages', name, 'src', file.replaceAll('\\', '/')].join('/'),
      ),
    )
    .filter((file) => /\.tsx?$/.test(file) && !/\.test\.tsx?$/.test(file) && file !== TABLE);
}

describe('the table of issue codes', () => {
  const codes = Object.keys(ISSUE_CODES);
  const uses = sourceFiles().map((file) => ({
    file,
    ...readCodeUse(readFileSync(join(ROOT, file), 'utf8')),
  }));
  const rows = readErrorRows(readFileSync(join(ROOT, 'docs/errors.md'), 'utf8'));

  test('is in alphabetical order', () => {
    expect(codes).toEqual([...codes].sort());
  });

  test('holds every code that the sources give', () => {
    const unknown = uses.flatMap(({ file, given }) =>
      [...given].filter((code) => !Object.hasOwn(ISSUE_CODES, code)).map((code) => `${code} in ${file}`),
    );
    expect(unknown).toEqual([]);
  });

  test('holds no code that no source uses', () => {
    expect(codes.filter((code) => !uses.some(({ mentioned }) => mentioned.has(code)))).toEqual([]);
  });

  test('is what docs/errors.md lists, in its order and with its meanings', () => {
    const meanings = Object.entries(ISSUE_CODES).map(([code, { meaning }]) => `${code}: ${meaning}`);
    expect(rows.map(({ code, meaning }) => `${code}: ${meaning}`)).toEqual(meanings);
  });

  test('says for every code what to do', () => {
    expect(rows.filter(({ remedy }) => !/\w.*\.$/.test(remedy)).map(({ code }) => code)).toEqual([]);
  });

  test('uses no retired code again, in code or page', () => {
    const retired = (code: string): boolean => RETIRED_CODES.includes(code);
    expect(codes.filter(retired)).toEqual([]);
    expect(uses.flatMap(({ mentioned }) => [...mentioned].filter(retired))).toEqual([]);
    expect(rows.filter(({ code }) => retired(code))).toEqual([]);
  });
});

describe('the reader of codes', () => {
  test('finds codes given as a member, in a choice as well, and not in comments', () => {
    const use = readCodeUse(`
      // code: 'IN_COMMENT'
      const a = { code: 'ONE_CODE', message: 'UPPER_TEXT' };
      const b = { code: bad ? 'TWO_CODE' : \`THREE_CODE\`, other: { code: 'lower' } };
      issue('FOUR_CODE');
    `);
    expect([...use.given]).toEqual(['ONE_CODE', 'TWO_CODE', 'THREE_CODE']);
    expect([...use.mentioned].sort()).toEqual([
      'FOUR_CODE',
      'ONE_CODE',
      'THREE_CODE',
      'TWO_CODE',
      'UPPER_TEXT',
    ]);
  });

  test('finds the rows of the page', () => {
    const page =
      '| code | meaning | what to do |\n| --- | --- | --- |\n| `A_B` | It is so. | Do this. |\nA_C';
    expect(readErrorRows(page)).toEqual([{ code: 'A_B', meaning: 'It is so.', remedy: 'Do this.' }]);
  });
});
