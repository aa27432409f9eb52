import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { differenceWords } from './difference-words.ts';

const text = readFileSync(new URL('../../../../../examples/casting-wash.yaml', import.meta.url), 'utf8');

it('tells what differs, that nothing does, or that a draft cannot be compared', () => {
  const changed = text.replace(/^title: .*$/mu, 'title: Another');
  expect(differenceWords(text, changed, 'inch').join()).toContain('“Another” now');
  expect(differenceWords(text, `# a comment\n${text}`, 'metric')).toEqual([
    'Nothing differs but the writing.',
  ]);
  expect(differenceWords(text, 'title: 5', 'metric')[0]).toContain('draft');
});
