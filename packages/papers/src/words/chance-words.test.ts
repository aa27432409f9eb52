import { expect, test } from 'vitest';
import { chanceWords } from './chance-words.ts';

test.each([
  [0.95, '95 in 100'],
  [0.57, '57 in 100'],
  [0.9599, '95 in 100'],
  [0.9983, '998 in 1000'],
  [0.9999, 'over 999 in 1000'],
  [1, 'over 999 in 1000'],
  [0, '0 in 100'],
])('%d reads %s: rounded down, never certain', (chance, words) => {
  expect(chanceWords(chance)).toBe(words);
});
