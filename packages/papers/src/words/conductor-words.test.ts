import { expect, test } from 'vitest';
import { conductorWords } from './conductor-words.ts';

test('names a lead by wire gauge or kcmil to one reader and in square millimetres to the other', () => {
  expect(conductorWords('120 mm2', 'inch')).toBe('237 kcmil (120 mm²)');
  expect(conductorWords('4/0 AWG', 'metric')).toBe('107 mm² (4/0 AWG)');
  expect(conductorWords('4/0 AWG', 'inch')).toBe('4/0 AWG (107 mm²)');
});

test('leaves a size that is no area as it is', () => {
  expect(conductorWords('as it comes', 'inch')).toBe('as it comes');
  expect(conductorWords({ say: ['half-inch', ' bore'] }, 'inch')).toBe('half-inch bore');
});
