import fc from 'fast-check';
import { expect, test } from 'vitest';
import { columnWidths } from './column-widths.ts';

test('gives each column its text where there is room, and what is left by weight', () => {
  const needs = [
    { word: 10, whole: 40, weight: 1 },
    { word: 10, whole: 20, weight: 3 },
  ];
  expect(columnWidths(needs, 100)).toEqual([50, 50]);
});

test('breaks texts before words, and words only where nothing else helps', () => {
  const needs = [
    { word: 20, whole: 30, weight: 1 },
    { word: 20, whole: 400, weight: 1 },
  ];
  expect(columnWidths(needs, 100)).toEqual([30, 70]);
  expect(columnWidths(needs, 30)).toEqual([15, 15]);
});

test('fills the width, and keeps words whole wherever they all fit', () => {
  const need = fc.record({
    word: fc.double({ min: 1, max: 60, noNaN: true }),
    extra: fc.double({ min: 0, max: 400, noNaN: true }),
    weight: fc.double({ min: 0.2, max: 3, noNaN: true }),
  });
  fc.assert(
    fc.property(fc.array(need, { minLength: 1, maxLength: 8 }), (raw) => {
      const needs = raw.map(({ word, extra, weight }) => ({ word, whole: word + extra, weight }));
      const widths = columnWidths(needs, 300);
      const total = widths.reduce((sum, one) => sum + one, 0);
      expect(total).toBeLessThanOrEqual(300.1);
      expect(total).toBeGreaterThan(299);
      const words = needs.reduce((sum, one) => sum + one.word, 0);
      if (words <= 300)
        widths.forEach((width, index) => {
          expect(width).toBeGreaterThanOrEqual(needs[index]!.word - 1e-6);
        });
    }),
    { seed: 5, numRuns: 200 },
  );
});
