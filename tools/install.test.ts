import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { isInstalled, isNodeRecent, ROOT } from './install.mjs';

const folder = mkdtempSync(join(tmpdir(), 'furrow-install-'));
afterAll(() => rmSync(folder, { recursive: true }));

function lay(wanted: object, present: object): string {
  const root = mkdtempSync(join(folder, 'root-'));
  mkdirSync(join(root, 'node_modules'));
  writeFileSync(join(root, 'package-lock.json'), JSON.stringify({ packages: wanted }));
  writeFileSync(join(root, 'node_modules', '.package-lock.json'), JSON.stringify({ packages: present }));
  return root;
}

test.each([
  ['18.20.0', false],
  ['20.18.3', false],
  ['20.19.0', true],
  ['20.20.2', true],
  ['22.0.0', true],
])('Node %s is recent enough: %s', (version, recent) => {
  expect(isNodeRecent(version)).toBe(recent);
});

test('the packages this test runs with count as installed', () => {
  expect(isInstalled(ROOT)).toBe(true);
});

test('a fresh clone, without node_modules, is not installed', () => {
  const root = lay({}, {});
  rmSync(join(root, 'node_modules'), { recursive: true });
  expect(isInstalled(root)).toBe(false);
});

test('a package of another version or a missing one asks for an installation', () => {
  const wanted = { '': {}, 'node_modules/a': { version: '1.0.1' } };
  expect(isInstalled(lay(wanted, { 'node_modules/a': { version: '1.0.1' } }))).toBe(true);
  expect(isInstalled(lay(wanted, { 'node_modules/a': { version: '1.0.0' } }))).toBe(false);
  expect(isInstalled(lay(wanted, {}))).toBe(false);
});

test('binaries of other platforms do not ask for an installation', () => {
  expect(isInstalled(lay({ 'node_modules/b': { version: '1.0.0', optional: true } }, {}))).toBe(true);
});
