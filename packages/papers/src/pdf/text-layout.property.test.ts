import fc from 'fast-check';
import PDFDocument from 'pdfkit';
import { expect, test } from 'vitest';
import { textLines } from './text-layout.ts';
import { typefacesOf } from './typefaces.ts';

const faces = typefacesOf(new PDFDocument({ autoFirstPage: false }));

test('any text breaks into lines that fit, and no word is lost', () => {
  const text = fc.oneof(
    fc.string({ unit: 'binary', maxLength: 120 }),
    fc.lorem({ maxCount: 12 }),
    fc
      .array(fc.constantFrom('שלום', 'مرحبا', '123', '(abc)', '😀', 'W'.repeat(80), '≥', '字'), {
        maxLength: 12,
      })
      .map((words) => words.join(' ')),
  );
  fc.assert(
    fc.property(text, fc.integer({ min: 40, max: 400 }), (given, width) => {
      const lines = textLines(given, 'regular', 10, width, faces);
      for (const line of lines) {
        expect(line.width).toBeLessThanOrEqual(width * 1.02 + 0.5);
        for (const piece of line.pieces) expect(Number.isFinite(piece.x)).toBe(true);
      }
      const letters = lines.flatMap((line) => line.pieces.map((piece) => piece.text)).join('');
      const latin = (value: string): string => [...value.replace(/[^A-Za-z0-9]/g, '')].sort().join('');
      expect(latin(letters)).toBe(latin(given));
    }),
    { seed: 4, numRuns: 200 },
  );
});
