import PDFDocument from 'pdfkit';
import { expect, test } from 'vitest';
import { tableBox } from './table-box.ts';
import { typefacesOf } from './typefaces.ts';

const pdf = new PDFDocument();
const paint = { pdf, faces: typefacesOf(pdf), scale: 1 };

const table = (rows: number): ReturnType<typeof tableBox> =>
  tableBox(
    {
      kind: 'table',
      caption: 'Readings',
      columns: [{ title: 'Reading', align: 'start', weight: 1 }],
      rows: Array.from({ length: rows }, (_, index) => [`reading ${index + 1}`]),
    },
    300,
    paint,
  );

const row = table(2).height - table(1).height;
const head = table(1).height - row;

test('goes on over a page’s end with three rows at least on either side', () => {
  const cuts = Array.from({ length: 12 }, (_, fit) => {
    const cut = table(8).cut!(head + (fit + 0.5) * row);
    return cut === undefined
      ? undefined
      : [cut.first, cut.rest].map(({ height }) => Math.round((height - head) / row));
  });
  expect(cuts).toEqual([
    ...Array.from({ length: 3 }, () => undefined),
    [3, 5],
    [4, 4],
    ...Array.from({ length: 3 }, () => [5, 3]),
    ...Array.from({ length: 4 }, () => undefined),
  ]);
});

test('stays whole where it is too short to be cut, and says how much of it must stand under its heading', () => {
  expect(table(5).cut!(head + 4.5 * row)).toBeUndefined();
  expect(table(8).least).toBeCloseTo(head + 3 * row, 6);
  expect(table(2).least).toBeCloseTo(head + 2 * row, 6);
});
