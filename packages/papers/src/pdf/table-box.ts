import type { TableBlock } from '../document/index.ts';
import { INK, SOFT_INK } from '../style/index.ts';
import type { Box, Paint } from './paint.ts';
import { type TextStyle, textBox } from './text-box.ts';
import { textLines } from './text-layout.ts';

const CELL_SIZE = 10.5;
const HEADER_SIZE = 7.5;
const GAP = 7;

/** A table with a thin line under each row. */
export function tableBox(table: TableBlock, width: number, paint: Paint): Box {
  const { pdf, scale } = paint;
  const widths = columnWidths(table, width, paint);
  const caption = textBox(table.caption, width, { size: 8.5, weight: 'bold', tag: 'Caption' }, paint);
  const header = rowBoxes(
    table,
    table.columns.map((column) => column.title),
    widths,
    true,
    paint,
  );
  const rows = table.rows.map((row) => rowBoxes(table, row, widths, false, paint));
  const pad = 1.3 * scale;
  const all = [header, ...rows];
  return {
    height: caption.height + all.reduce((sum, row) => sum + rowHeight(row) + 2 * pad, 2 * scale),
    paint(x, y, parent) {
      const element = pdf.struct('Table');
      parent.add(element);
      caption.paint(x, y, element);
      let top = y + caption.height + 2 * scale;
      all.forEach((row, index) => {
        const line = pdf.struct('TR');
        element.add(line);
        let left = x;
        row.forEach((cell, column) => {
          cell.paint(left, top + pad, line);
          left += widths[column]! + GAP * scale;
        });
        line.end();
        top += rowHeight(row) + 2 * pad;
        pdf.markContent('Artifact', { type: 'Layout' });
        pdf.lineWidth(index === 0 ? 0.9 : 0.35).undash();
        pdf
          .moveTo(x, top)
          .lineTo(x + width, top)
          .stroke(index === 0 ? INK : '#aeb8bf');
        pdf.endMarkedContent();
      });
      element.end();
    },
  };
}

function rowHeight(row: readonly Box[]): number {
  return Math.max(0, ...row.map((cell) => cell.height));
}

function cellStyle(table: TableBlock, column: number, header: boolean): TextStyle {
  const { align, strong = false } = table.columns[column]!;
  if (header) return { size: HEADER_SIZE, colour: SOFT_INK, align, tag: 'TH' };
  return { size: CELL_SIZE, weight: strong ? 'bold' : 'regular', align, tag: 'TD' };
}

function rowBoxes(
  table: TableBlock,
  texts: readonly string[],
  widths: readonly number[],
  header: boolean,
  paint: Paint,
): Box[] {
  return table.columns.map((_column, index) =>
    textBox(texts[index] ?? '', widths[index]!, cellStyle(table, index, header), paint),
  );
}

/** As wide as their longest text where that fits; else headers wrap, and at the worst cells do too. */
function columnWidths(table: TableBlock, width: number, paint: Paint): number[] {
  const usable = width - (table.columns.length - 1) * GAP * paint.scale;
  const widest = (column: number, texts: readonly string[], header: boolean): number => {
    const style = cellStyle(table, column, header);
    const size = style.size * paint.scale;
    const lines = texts.map((text) => textLines(text, style.weight ?? 'regular', size, 1e6, paint.faces)[0]);
    return Math.max(0, ...lines.map((line) => line?.width ?? 0)) + 0.5;
  };
  const cells = table.columns.map((_column, index) =>
    widest(
      index,
      table.rows.map((row) => row[index] ?? ''),
      false,
    ),
  );
  const withHeader = (words: (title: string) => readonly string[]): number[] =>
    cells.map((cell, index) => Math.max(cell, widest(index, words(table.columns[index]!.title), true)));
  const whole = withHeader((title) => [title]);
  const wrapping = withHeader((title) => title.split(' '));
  const weights = table.columns.reduce((sum, column) => sum + column.weight, 0);
  for (const natural of [whole, wrapping]) {
    const spare = usable - natural.reduce((sum, one) => sum + one, 0);
    if (spare >= 0)
      return natural.map((one, index) => one + (table.columns[index]!.weight / weights) * spare);
  }
  return table.columns.map((column) => (column.weight / weights) * usable);
}
