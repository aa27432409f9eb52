import { textOf } from '../../delimited/index.ts';
import type { Outcome } from '../../issue/index.ts';
import type { CloudPoints } from './read-ply.ts';

/** Bytes in which the header of a grid stands. */
const HEAD = 2048;
/** Cells of a grid at most [-]. */
const CELLS_MOST = 30_000_000;

/** Whether bytes begin as a height map in the ASCII grid format does: with its number of columns. */
export function isGrid(bytes: Uint8Array): boolean {
  return /^\s*ncols\s+\d+\s/iu.test(textOf(bytes, 0, Math.min(bytes.length, 64), 'windows-1252'));
}

/**
 * Reads a height map in the ASCII grid format: a head of names and numbers, then rows of heights from the far side to
 * the near one. Cells without a value are no points.
 */
export function readGrid(bytes: Uint8Array): Outcome<CloudPoints> {
  const head = new Map<string, number>();
  const text = textOf(bytes, 0, Math.min(bytes.length, HEAD), 'windows-1252');
  const heading = /\s*([a-z_]+)\s+(\S+)/iuy;
  let start = 0;
  for (let found = heading.exec(text); found !== null; found = heading.exec(text)) {
    head.set(found[1]!.toLowerCase(), Number(found[2]));
    start = heading.lastIndex;
  }
  const [columns, rows, cell] = ['ncols', 'nrows', 'cellsize'].map((name) => head.get(name));
  if (!isCount(columns) || !isCount(rows) || cell === undefined || !(cell > 0))
    return refused('The head of the height map does not state its columns, rows and size of a cell.');
  if (columns * rows > CELLS_MOST) return refused(`The height map has ${columns * rows} cells.`);
  const empty = head.get('nodata_value') ?? -9999;
  const corner = (axis: 'x' | 'y'): number =>
    head.get(`${axis}llcenter`) ?? (head.get(`${axis}llcorner`) ?? 0) + cell / 2;
  const [left, near] = [corner('x'), corner('y')];
  const [x, y, z] = [0, 1, 2].map(() => new Float64Array(columns * rows)) as [
    Float64Array,
    Float64Array,
    Float64Array,
  ];
  let cells = 0;
  let points = 0;
  for (let at = start; at < bytes.length; ) {
    while (at < bytes.length && bytes[at]! <= 0x20) at += 1;
    const from = at;
    while (at < bytes.length && bytes[at]! > 0x20) at += 1;
    if (at === from) break;
    const word = textOf(bytes, from, at, 'windows-1252');
    const height = Number(word);
    if (Number.isNaN(height)) return refused(`Cell ${cells + 1} of the height map reads “${word}”.`);
    if (cells >= columns * rows)
      return refused(`The height map has more than its ${columns} by ${rows} cells.`);
    if (height !== empty) {
      x[points] = left + cell * (cells % columns);
      y[points] = near + cell * (rows - 1 - Math.floor(cells / columns));
      z[points] = height;
      points += 1;
    }
    cells += 1;
  }
  if (cells < columns * rows)
    return refused(`The height map ends after ${cells} of its ${columns * rows} cells.`);
  return {
    ok: true,
    value: { x: x.subarray(0, points), y: y.subarray(0, points), z: z.subarray(0, points) },
  };
}

function isCount(value: number | undefined): value is number {
  return value !== undefined && Number.isInteger(value) && value > 0;
}

function refused(message: string): Outcome<never> {
  return {
    ok: false,
    issues: [
      {
        code: 'SURVEY_NOT_READABLE',
        message,
        path: '',
        accepted:
          'ncols, nrows and cellsize in the head, then a height for each cell, rows from the far side on',
      },
    ],
  };
}
