import { expect, test } from 'vitest';
import { readReadings } from './read-readings.ts';
import { readingsDifference } from './readings-difference.ts';

const words = (before: string, after: string): readonly string[] => {
  const [was, is] = [before, after].map((text) => readReadings(`furrow_readings: 1\n${text}`));
  if (!was?.ok || !is?.ok) throw new Error('the readings cannot be read');
  return readingsDifference(was.value, is.value, 'inch').map((difference) => difference.words);
};

test('what was gauged and set anew is told in the reader’s units', () => {
  const station = (depth: string): string => `stations:\n  - { at: 10 ft, depth: ${depth} }`;
  const [told, ...more] = words(station('1/2 in'), station('5/8 in'));
  expect(told).toMatch(/depth: 1\/2 in before, 5\/8 in now\.$/u);
  expect(more).toEqual([]);
  expect(words(station('1/2 in'), station('0.5 in'))).toEqual([]);
});
