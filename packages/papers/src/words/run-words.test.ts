import { expect, test } from 'vitest';
import { elapsedWords } from './run-words.ts';

test.each([
  [0, '0:00.0'],
  [65.26, '1:05.3'],
  [599.96, '10:00.0'],
  [3725, '1:02:05.0'],
  [86_399.9, '23:59:59.9'],
])('%d s of a log are %s on a clock', (seconds, words) => {
  expect(elapsedWords(seconds)).toBe(words);
});
