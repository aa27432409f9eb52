import { chmodSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { findBrowser, launchFlags } from './find-browser.mjs';

const folder = mkdtempSync(join(tmpdir(), 'furrow-browser-'));
const program = join(folder, 'chromium');
writeFileSync(program, '');
chmodSync(program, 0o755);
afterAll(() => rmSync(folder, { recursive: true }));

test('FURROW_CHROMIUM names the browser', () => {
  expect(findBrowser({ FURROW_CHROMIUM: program, PATH: '' }, 'linux')).toBe(program);
});

test('a FURROW_CHROMIUM that is not there is not silently replaced by another browser', () => {
  expect(findBrowser({ FURROW_CHROMIUM: join(folder, 'nothing'), PATH: folder }, 'linux')).toBeUndefined();
});

test('a browser on the path is found by name', () => {
  expect(findBrowser({ PATH: folder }, 'linux')).toBe(program);
});

test('a folder with the name of a browser is not one', () => {
  expect(findBrowser({ FURROW_CHROMIUM: folder }, 'linux')).toBeUndefined();
});

test('no browser gives undefined', () => {
  expect(findBrowser({ PATH: '' }, 'linux')).toBeUndefined();
});

test('the sandbox is off for root only', () => {
  expect(launchFlags(true)).toContain('--no-sandbox');
  expect(launchFlags(false)).not.toContain('--no-sandbox');
  expect(launchFlags(false)).toContain('--disable-background-networking');
});
