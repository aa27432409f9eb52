import type { ColumnQuantity } from './column-name.ts';
import type { TableColumn } from './guess-columns.ts';
import { asciiOf, readMoment } from './moment-cell.ts';
import { mostShown, standsForNoValue } from './no-value.ts';
import { type NumberMarks, readNumberCell } from './number-cell.ts';
import type { TableReading } from './table-reading.ts';

const EXAMPLES_KEPT = 5;

/** Cells of one column that gave no number. */
export interface UnreadCells {
  readonly column: string;
  /** Cells that are empty or hold a word for no value [-]. */
  readonly missing: number;
  /** Those of them that hold a word, such as NaN [-]. */
  readonly words: number;
  /** Cells with a number that stands for no value, such as -999 [-]. */
  readonly noValue: number;
  /** Cells with an infinite number [-]. */
  readonly infinite: number;
  /** Cells that hold something else [-]. */
  readonly unreadable: number;
  /** The first that hold something else. */
  readonly examples: readonly ReadAt[];
  /** The first word for no value, and the first infinite number. */
  readonly firstWord: ReadAt | undefined;
  readonly firstInfinite: ReadAt | undefined;
}

/** What a cell held, and where. */
interface ReadAt {
  /** From 1 [-]. */
  readonly line: number;
  readonly read: string;
}

/** How numbers of a column as written become SI: ((written + offset) top) / bottom. */
export interface ColumnScale {
  readonly top: number;
  readonly bottom: number;
  readonly offset: number;
  /** Numbers as written beyond which one can stand for no value. */
  readonly least: number;
  readonly most: number;
}

/** Moments are in SI as they are read. */
const AS_READ = { top: 1, bottom: 1, offset: 0 } as const;

/** A column whose numbers are used, and the numbers of the rows at hand. */
export interface PlannedColumn {
  readonly index: number;
  readonly column: TableColumn;
  readonly quantity: ColumnQuantity;
  /** In SI. */
  readonly values: Float64Array;
  readonly scale: ColumnScale;
  missing: number;
  words: number;
  noValue: number;
  infinite: number;
  unreadable: number;
  readonly examples: ReadAt[];
  firstWord: ReadAt | undefined;
  firstInfinite: ReadAt | undefined;
}

/** The columns of a reading whose numbers can be brought to SI, with room for so many rows. */
export function planColumns(
  { columns, preview, marks }: TableReading,
  batchRows: number,
): readonly PlannedColumn[] {
  return columns.flatMap((column, index): PlannedColumn[] => {
    const { quantity, holds, unit } = column;
    if (quantity === undefined || (holds === 'number' && unit === undefined) || holds === 'text') return [];
    const seen = preview.flatMap((cells) => {
      const one = readNumberCell(cells[index]!, marks);
      return one.kind === 'number' && !standsForNoValue(one.value) ? [one.value] : [];
    });
    const most = unit
      ? (mostShown(quantity) * unit.bottom) / unit.top - unit.offset
      : Number.POSITIVE_INFINITY;
    const never = quantity === 'time';
    return [
      {
        index,
        column,
        quantity,
        values: new Float64Array(batchRows),
        scale: {
          ...(holds === 'number' ? (unit ?? AS_READ) : AS_READ),
          least: never ? Number.NEGATIVE_INFINITY : seen.every((value) => value >= 0) ? 0 : -most,
          most,
        },
        missing: 0,
        words: 0,
        noValue: 0,
        infinite: 0,
        unreadable: 0,
        examples: [],
        firstWord: undefined,
        firstInfinite: undefined,
      },
    ];
  });
}

/** What a cell of such a column holds: its number as written, or why there is none. */
export function readCell(
  { column }: PlannedColumn,
  text: string,
  marks: NumberMarks,
): number | 'missing' | 'infinite' | undefined {
  const reading = readNumberCell(text, marks);
  if (column.holds === 'moment') {
    if (reading.kind === 'missing') return 'missing';
    const { parts, order } = column.moment!;
    const cell = asciiOf(text.trim());
    const value = readMoment(cell, 0, cell.length, parts, order);
    return Number.isNaN(value) ? undefined : value;
  }
  return reading.kind === 'number' ? reading.value : reading.kind === 'unreadable' ? undefined : reading.kind;
}

/** Keeps what a cell held, in SI, and counts it where it held no number or one that stands for no value. */
export function storeCell(
  planned: PlannedColumn,
  at: number,
  value: ReturnType<typeof readCell>,
  line: number,
  text: string,
): void {
  planned.values[at] = Number.NaN;
  if (typeof value === 'number') {
    const { top, bottom, offset, least, most } = planned.scale;
    if (planned.column.holds === 'number' && !(value >= least && value <= most) && standsForNoValue(value))
      planned.noValue += 1;
    else planned.values[at] = ((value + offset) * top) / bottom;
    return;
  }
  const seen = { line, read: text.trim().slice(0, 40) };
  if (value === 'missing') {
    planned.missing += 1;
    if (seen.read === '') return;
    planned.words += 1;
    planned.firstWord ??= seen;
  } else if (value === 'infinite') {
    planned.infinite += 1;
    planned.firstInfinite ??= seen;
  } else {
    planned.unreadable += 1;
    if (planned.examples.length < EXAMPLES_KEPT) planned.examples.push(seen);
  }
}

/** The numbers of so many rows. */
export function siColumns(
  columns: readonly PlannedColumn[],
  count: number,
): { readonly [Q in ColumnQuantity]?: Float64Array } {
  const si: { [Q in ColumnQuantity]?: Float64Array } = {};
  for (const { quantity, values } of columns) si[quantity] = values.slice(0, count);
  return si;
}

/** What cells of each column gave no number. */
export function unreadCells(columns: readonly PlannedColumn[]): readonly UnreadCells[] {
  return columns
    .filter(({ missing, noValue, infinite, unreadable }) => missing + noValue + infinite + unreadable > 0)
    .map(unreadOf);
}

function unreadOf({ column, index, ...planned }: PlannedColumn): UnreadCells {
  const { missing, words, noValue, infinite, unreadable, examples, firstWord, firstInfinite } = planned;
  return {
    column: column.name === '' ? String(index + 1) : column.name,
    missing,
    words,
    noValue,
    infinite,
    unreadable,
    examples,
    firstWord,
    firstInfinite,
  };
}
