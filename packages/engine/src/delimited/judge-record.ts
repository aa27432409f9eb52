import type { TableColumn } from './guess-columns.ts';
import { type PlannedColumn, readCell } from './planned-column.ts';
import type { Cell, CutRecord } from './record-cutter.ts';
import type { TableReading } from './table-reading.ts';

/** What a record is that is not as the quick walk expects it. */
export type JudgedRecord =
  | { readonly is: 'blank' }
  /** The header stands again. */
  | { readonly is: 'header' }
  /** It gives no row; `numbered` where it is one of the data all the same, which are counted. */
  | { readonly is: 'rejected'; readonly why: string; readonly numbered: boolean }
  | {
      readonly is: 'row';
      readonly cells: readonly Cell[];
      /** What each planned column holds. */
      readonly read: readonly ReturnType<typeof readCell>[];
    };

/** Judges a record cell by cell; `isCut`: the file ends in it without a line end. */
export function judgeRecord(
  { cells: all }: CutRecord,
  reading: TableReading,
  planned: readonly PlannedColumn[],
  isCut: boolean,
): JudgedRecord {
  const width = reading.columns.length;
  const cells = all.length === width + 1 && all[width]!.text.trim() === '' ? all.slice(0, width) : all;
  if (cells.every(({ text, quoted }) => !quoted && text.trim() === ''))
    return cells.length <= 1 ? { is: 'blank' } : rejected('every cell is empty');
  if (reading.comment !== '' && cells[0]!.text.trimStart().startsWith(reading.comment))
    return rejected('a remark');
  if (isHeader(cells, reading.columns)) return { is: 'header' };
  const read = planned.map((column) => {
    const cell = cells[column.index];
    return cell === undefined ? undefined : readCell(column, cell.text, reading.marks);
  });
  const numbers = read.filter((value) => typeof value === 'number').length;
  if (cells.length !== width) {
    const count = `${cells.length} cell${cells.length === 1 ? '' : 's'} where ${width} stand`;
    const cutOff = isCut && cells.length < width;
    return rejected(cutOff ? `the last line is cut: ${count}` : count, numbers > 0);
  }
  const unreadable = read.filter((value) => value === undefined).length;
  if (numbers === 0 && (unreadable > 0 || planned.length === 0)) {
    const words = cells.map(({ text }) => text).join(' ');
    return rejected(`no number where numbers stand: "${words.slice(0, 40)}"`);
  }
  return { is: 'row', cells, read };
}

function rejected(why: string, numbered = false): JudgedRecord {
  return { is: 'rejected', why, numbered };
}

/** Whether most of the cells are the names of their columns. */
function isHeader(cells: readonly Cell[], columns: readonly TableColumn[]): boolean {
  if (cells.length < columns.length) return false;
  const same = columns.filter(({ name }, index) => name !== '' && cells[index]!.text.trim() === name);
  return same.length > columns.length / 2;
}
