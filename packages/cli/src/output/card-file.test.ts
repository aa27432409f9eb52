import {
  appendFileSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { writeCard } from './card-file.ts';
import { DISK, whyUnwritable } from './disk.ts';

const PDF = new TextEncoder().encode('%PDF-1.7 one\n%%EOF');
let folder: string;
let card: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'furrow-card-file-'));
  card = join(folder, 'card.pdf');
});
afterEach(() => rmSync(folder, { recursive: true }));

test('a card takes the place of one that nobody changed', () => {
  expect(writeCard(card, PDF)).toBe('new');
  expect(writeCard(card, new TextEncoder().encode('%PDF-1.7 two\n%%EOF'))).toBe('replaced');
  expect(readFileSync(card, 'latin1')).toMatch(/^%PDF-1\.7 two\n%%EOF\n%furrow [0-9a-f]{64}\n$/u);
  expect(readdirSync(folder)).toEqual(['card.pdf']);
});

test.each<[string, () => void]>([
  ['a file of the user', () => writeFileSync(card, 'the only copy')],
  ['an empty file', () => writeFileSync(card, '')],
  ['a card with notes at its end', () => appendFileSync(card, 'notes')],
  ['a card changed inside', () => writeFileSync(card, readFileSync(card, 'latin1').replace('one', 'own'))],
  [
    'a link',
    () => {
      rmSync(card);
      writeFileSync(join(folder, 'elsewhere'), 'x');
      symlinkSync(join(folder, 'elsewhere'), card);
    },
  ],
])('%s stays as it is', (_what, put) => {
  writeCard(card, PDF);
  put();
  const before = readFileSync(card);
  expect(writeCard(card, PDF)).toBe('in_the_way');
  expect(readFileSync(card)).toEqual(before);
});

test('a full disk leaves the card of before and nothing beside it, and is told as one', () => {
  writeCard(card, PDF);
  const before = readFileSync(card);
  const full = Object.assign(new Error('ENOSPC: no space left on device, write'), { code: 'ENOSPC' });
  const disk = {
    ...DISK,
    move: () => {
      throw full;
    },
  };
  expect(() => writeCard(card, PDF, disk)).toThrow(full);
  expect(readdirSync(folder)).toEqual(['card.pdf']);
  expect(readFileSync(card)).toEqual(before);
  expect(whyUnwritable(full)).toContain('the disk is full');
});
