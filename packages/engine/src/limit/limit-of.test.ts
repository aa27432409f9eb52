import { expect, it } from 'vitest';
import { type LimitStatement, limitOf } from './limit-of.ts';

const STATEMENT: LimitStatement = {
  id: 'x',
  title: 'X',
  demand: 0,
  capacity: 100,
  unit: 'A',
  sense: 'most',
  hard: true,
  source: { text: 'test', provenance: 'derived' },
  remedy: 'less of it',
};

it.each([
  ['most', 0, 100, 'holds'],
  ['most', 94.9, 100, 'holds'],
  ['most', 95, 100, 'tight'],
  ['most', 100, 100, 'tight'],
  ['most', 100 * (1 + 1e-12), 100, 'tight'],
  ['most', 100.001, 100, 'fails'],
  ['least', 106, 100, 'holds'],
  ['least', 105, 100, 'tight'],
  ['least', 100, 100, 'tight'],
  ['least', 99.9, 100, 'fails'],
  ['most', 0, 0, 'tight'],
  ['most', 1e-12, 0, 'fails'],
  ['least', 1e-12, 0, 'holds'],
  ['least', -1e-12, 0, 'fails'],
  ['most', Number.NaN, 100, 'fails'],
  ['least', 100, Number.NaN, 'fails'],
] as const)('%s: a demand of %d against %d %s', (sense, demand, capacity, verdict) => {
  expect(limitOf({ ...STATEMENT, sense, demand, capacity }).verdict).toBe(verdict);
});

it('keeps the statement as it was made', () => {
  expect(limitOf(STATEMENT)).toMatchObject(STATEMENT);
});

it.each([
  [42, 'holds'],
  [43.7, 'holds'],
  [43.85, 'tight'],
  [44, 'tight'],
  [44.1, 'fails'],
] as const)('in a window of 4 from 40 to 44, %d %s', (demand, verdict) => {
  expect(limitOf({ ...STATEMENT, demand, capacity: 44, window: 4 }).verdict).toBe(verdict);
});
