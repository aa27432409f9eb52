import { cellType } from './cell-type.ts';
import { readColumnUnit } from './column-unit.ts';
import { type Dialect, splitText, type TextRow } from './dialect.ts';

/** Where the table stands in the file. */
export interface Layout {
  /** Lines before the header. */
  readonly preambleLines: number;
  /** Lines from the first of the header to the last before the data; 0 where there is no header. */
  readonly headerLines: number;
  /** Cells of a data row. */
  readonly width: number;
  readonly names: readonly string[];
  readonly units: readonly string[];
  /** Data rows of the head. */
  readonly data: readonly TextRow[];
  readonly says: readonly { readonly about: 'preamble' | 'header' | 'unit row'; readonly says: string }[];
}

/** Header rows above the data, unit row included. */
const HEADER_ROWS_MOST = 4;

/** Marks with which loggers begin a remark; each may stand before a header as well. */
export const COMMENT = /^\s*(?:#|%|\/\/|!|;|\*|')+\s?/u;

const filled = (cells: readonly string[]): number => cells.filter((cell) => cell.trim() !== '').length;
const isValue = (cell: string): boolean => {
  const type = cellType(cell);
  return type === 'number' || type === 'moment';
};

/** A row without the empty cell that a delimiter at its end makes. */
function trimmed(cells: readonly string[], width: number): readonly string[] {
  return cells.length === width + 1 && cells[width]!.trim() === '' ? cells.slice(0, width) : cells;
}

/**
 * Width of the rows that hold the most numbers and moments, rows with many of them before all: blank lines, remarks and words
 * around a short table may be any number. Of a table of words, the width of most rows.
 */
function usualWidth(rows: readonly TextRow[]): number {
  const found = new Map<number, { values: number; count: number }>();
  for (const { cells } of rows) {
    if (cells.every((cell) => cell.trim() === '')) continue;
    const own = found.get(cells.length) ?? { values: 0, count: 0 };
    own.values += cells.filter(isValue).length ** 2;
    own.count += 1;
    found.set(cells.length, own);
  }
  const widths = [...found].sort(
    ([width, one], [other, two]) => two.values - one.values || two.count - one.count || other - width,
  );
  return widths[0]?.[0] ?? 1;
}

/** Cells of a header line: cut as the data is, or by what else gives as many cells. */
function headerCells(
  row: TextRow,
  raw: string,
  dialect: Dialect,
  width: number,
): readonly string[] | undefined {
  const own = trimmed(row.cells, width);
  if (own.length === width) return own;
  const text = raw.replace(COMMENT, '');
  const ways: readonly (readonly string[])[] = [
    splitText(text, dialect, 1).rows[0]?.cells ?? [],
    ...(dialect.delimiter === ' ' ? [text.trim().split(/ {2,}|\t/u), text.trim().split(/\s+(?![[(])/u)] : []),
    ...[';', ',', '\t', '|'].map(
      (other) => splitText(text, { ...dialect, delimiter: other, repeated: false }, 1).rows[0]?.cells ?? [],
    ),
    text.trim().split(/\s{2,}/u),
  ];
  return ways.map((cells) => trimmed(cells, width)).find((cells) => cells.length === width);
}

/** Whether the cells are units: most of those that are filled, and none a number. */
function isUnitRow(cells: readonly string[]): boolean {
  const written = cells.filter((cell) => cell.trim() !== '' && cell.trim() !== '-');
  const units = written.filter(
    (cell) => readColumnUnit(cell) !== undefined || /^[[(].*[\])]$/u.test(cell.trim()),
  );
  return units.length > 0 && units.length >= written.length / 2 && !written.some(isValue);
}

/** Lines given by a person take the place of what would be found. */
export interface GivenLayout {
  readonly preambleLines?: number | undefined;
  readonly headerLines?: number | undefined;
}

/** Finds preamble, header, unit row and the first data row in the head of a file. */
export function guessLayout(
  rows: readonly TextRow[],
  lineText: (line: number) => string,
  dialect: Dialect,
  given: GivenLayout = {},
): Layout {
  const width0 = usualWidth(rows);
  // a delimiter at the end of every row makes an empty last column
  const wide = rows.filter(({ cells }) => cells.length === width0);
  const closed = width0 > 1 && wide.length > 1 && wide.every(({ cells }) => cells[width0 - 1]!.trim() === '');
  const width = closed ? width0 - 1 : width0;
  const fits = ({ cells }: TextRow): boolean => trimmed(cells, width).length === width;
  const alike = rows.filter(fits);
  // the latter half has no header in it
  const sample = alike.slice(-Math.min(200, Math.ceil(alike.length / 2)));
  const columns = Array.from({ length: width }, (_, index) => index);
  const valued = columns.filter((index) => {
    const seen = sample.map(({ cells }) => cells[index]!).filter((cell) => cell.trim() !== '');
    return seen.length > 0 && seen.filter(isValue).length >= 0.6 * seen.length;
  });
  const isData = (row: TextRow): boolean => {
    if (!fits(row)) return false;
    const values = valued.filter((index) => isValue(row.cells[index]!)).length;
    const empty = valued.filter((index) => row.cells[index]!.trim() === '').length;
    return values > 0 && values + empty >= 0.5 * valued.length;
  };
  const nextFilled = (from: number): number => {
    let at = from;
    while (at < rows.length && rows[at]!.cells.length === 0) at += 1;
    return at;
  };
  let start =
    given.preambleLines !== undefined && given.headerLines !== undefined
      ? rows.findIndex(({ line }) => line > given.preambleLines! + given.headerLines!)
      : rows.findIndex((row, index) => {
          if (!isData(row)) return false;
          const next = nextFilled(index + 1);
          return next >= rows.length || isData(rows[next]!) || !rows.slice(next).some(isData);
        });
  if (start < 0) {
    // no numbers at all: the first row of that width names the columns
    const first = rows.findIndex(fits);
    start = first < 0 ? rows.length : nextFilled(first + 1);
  }
  const dataLine = rows[start]?.line ?? (rows.at(-1)?.line ?? 0) + 1;
  let names: readonly string[] | undefined;
  let units: readonly string[] | undefined;
  let firstHeader = dataLine;
  const least = given.preambleLines ?? 0;
  for (let at = start - 1, taken = 0; at >= 0 && taken < HEADER_ROWS_MOST; at -= 1) {
    const row = rows[at]!;
    if (row.line <= least) break;
    if (row.cells.length === 0) {
      if (taken > 0) break;
      continue;
    }
    const cells = headerCells(row, lineText(row.line), dialect, width);
    if (!cells || filled(cells) === 0) {
      if (taken > 0) break;
      // a line of dashes between header and data
      if (/^[-=_+|\s]+$/u.test(lineText(row.line))) continue;
      break;
    }
    if (/^[-=_+|\s]+$/u.test(cells.join(''))) continue;
    taken += 1;
    if (!units && isUnitRow(cells) && !(at === 0 && !names)) units = cells;
    else if (!names) {
      if (cells.filter(isValue).length > cells.length / 2 && given.headerLines === undefined) break;
      names = cells;
    } else break;
    firstHeader = row.line;
    if (names && (units || at === 0)) {
      // a unit row may stand above the names too
      if (units) break;
    }
  }
  if (units && !names) {
    names = units;
    units = undefined;
  }
  const preambleLines = given.preambleLines ?? firstHeader - 1;
  const says: { about: 'preamble' | 'header' | 'unit row'; says: string }[] = [];
  if (preambleLines > 0)
    says.push({
      about: 'preamble',
      says: `${preambleLines} line${preambleLines === 1 ? '' : 's'} before the table`,
    });
  says.push({
    about: 'header',
    says: names
      ? `line ${firstHeader} names the columns; the first numbers stand on line ${dataLine}`
      : 'no line names the columns',
  });
  if (units)
    says.push({
      about: 'unit row',
      says: `units in a row of their own: ${units.filter((unit) => unit.trim() !== '').join(', ')}`,
    });
  return {
    preambleLines,
    headerLines: dataLine - 1 - preambleLines,
    width,
    names: columns.map((index) => (names?.[index] ?? '').replace(index === 0 ? COMMENT : /^$/u, '').trim()),
    units: columns.map((index) => units?.[index]?.trim() ?? ''),
    data: rows.slice(start).filter(fits),
    says,
  };
}
