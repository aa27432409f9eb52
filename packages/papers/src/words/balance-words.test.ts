import { expect, test } from 'vitest';
import { balanceWords } from './balance-words.ts';

test('a balance adds up, or tells how much of it is missing', () => {
  expect([2e-13, -9e-7, 0, 1.1e-6, -0.0034, 0.05].map(balanceWords)).toEqual([
    'it adds up',
    'it adds up',
    'it adds up',
    '0.0001 % of it is missing',
    '0.3 % of it is missing',
    '5 % of it is missing',
  ]);
});
