import type { TableBlock } from '../blocks/index.ts';
import { INK, SOFT_INK } from '../style/index.ts';
import { boundUnits } from '../words/index.ts';
import { columnWidths } from './column-widths.ts';
import type { Box, Paint } from './paint.ts';
import { type TextStyle, textBox } from './text-box.ts';
import { BREAKS } from './text-items.ts';
import { textLines } from './text-layout.ts';

const CELL_SIZE = 10.5;
const CLOSE_CELL_SIZE = 9.5;
const SMALL_CELL_SIZE = 8;
const HEADER_SIZE = 8;
const GAP = 7;

/** Height of a row that is filled in by hand [pt]; the same on a crowded page. */
const HAND_ROW = 17;

/** Rows that stand together at least on either side of a page's end: fewer under a header read badly [-]. */
const LEFT_LEAST = 3;

/** The parts of a table that is laid out, or of what a page has left of it. */
interface Laid {
  readonly table: TableBlock;
  readonly width: number;
  readonly widths: readonly number[];
  readonly caption: Box;
  readonly header: readonly Box[];
  readonly rows: readonly (readonly Box[])[];
}

/** A table with a thin line under each row; over the foot of a page it goes on with its header on the next. */
export function tableBox(table: TableBlock, width: number, paint: Paint): Box {
  const widths = widthsOf(table, width, paint);
  const titles = table.columns.map((column) => column.title);
  return laidBox(
    {
      table,
      width,
      widths,
      caption: captionBox(table.caption, width, paint),
      header: rowBoxes(table, titles, widths, true, paint),
      rows: table.rows.map((row) => rowBoxes(table, row, widths, false, paint)),
    },
    paint,
  );
}

function captionBox(text: string, width: number, paint: Paint): Box {
  return textBox(text, width, { size: 8.5, weight: 'bold', tag: 'Caption' }, paint);
}

function laidBox(laid: Laid, paint: Paint): Box {
  const { table, caption, header, rows } = laid;
  const { scale } = paint;
  const pad = 1.3 * scale;
  const headHeight = caption.height + 2 * scale + contentHeight(header) + 2 * pad;
  const heights = rows.map((row) => {
    const content = contentHeight(row) + 2 * pad;
    return table.hand === true ? Math.max(content, HAND_ROW) : content;
  });
  return {
    height: heights.reduce((sum, height) => sum + height, headHeight),
    least: heights.slice(0, LEFT_LEAST).reduce((sum, height) => sum + height, headHeight),
    cut(room) {
      let fits = 0;
      for (let used = headHeight; fits < rows.length; fits += 1) {
        used += heights[fits]!;
        if (used > room) break;
      }
      if (fits === rows.length) return undefined;
      fits = Math.min(fits, rows.length - LEFT_LEAST);
      if (fits < LEFT_LEAST) return undefined;
      const { caption: words } = table;
      const continued = words.endsWith(CONTINUED) ? words : `${words}${CONTINUED}`;
      const rest: Laid = {
        ...laid,
        table: { ...table, caption: continued },
        caption: captionBox(continued, laid.width, paint),
        rows: rows.slice(fits),
      };
      return { first: laidBox({ ...laid, rows: rows.slice(0, fits) }, paint), rest: laidBox(rest, paint) };
    },
    paint(x, y, parent) {
      const { pdf } = paint;
      const element = pdf.struct('Table');
      parent.add(element);
      caption.paint(x, y, element);
      const start = y + caption.height + 2 * scale;
      let top = start;
      [header, ...rows].forEach((row, index) => {
        const height = index === 0 ? contentHeight(header) + 2 * pad : heights[index - 1]!;
        const line = pdf.struct('TR');
        element.add(line);
        let left = x;
        row.forEach((cell, column) => {
          cell.paint(left, top + pad, line);
          left += laid.widths[column]! + GAP * scale;
        });
        line.end();
        top += height;
        pdf.markContent('Artifact', { type: 'Layout' });
        pdf.lineWidth(index === 0 ? 0.9 : 0.35).undash();
        pdf
          .moveTo(x, top)
          .lineTo(x + laid.width, top)
          .stroke(index === 0 ? INK : '#aeb8bf');
        pdf.endMarkedContent();
      });
      if (table.hand === true) uprights(laid, x, start, top, paint);
      element.end();
    },
  };
}

const CONTINUED = ', continued';

/** Lines between the columns, for a table that a hand fills in. */
function uprights({ widths }: Laid, x: number, from: number, to: number, { pdf, scale }: Paint): void {
  pdf.markContent('Artifact', { type: 'Layout' });
  pdf.lineWidth(0.35).undash();
  let left = x;
  for (const width of widths.slice(0, -1)) {
    left += width + GAP * scale;
    const middle = left - (GAP * scale) / 2;
    pdf.moveTo(middle, from).lineTo(middle, to).stroke('#aeb8bf');
  }
  pdf.endMarkedContent();
}

function contentHeight(row: readonly Box[]): number {
  return Math.max(0, ...row.map((cell) => cell.height));
}

function cellStyle(table: TableBlock, column: number, header: boolean): TextStyle {
  const { align, strong = false } = table.columns[column]!;
  if (header) return { size: HEADER_SIZE, colour: SOFT_INK, align, tag: 'TH' };
  const size = table.small === true ? SMALL_CELL_SIZE : table.close === true ? CLOSE_CELL_SIZE : CELL_SIZE;
  return { size, weight: strong ? 'bold' : 'regular', align, tag: 'TD' };
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

/** As wide as their longest text where that fits; else headers wrap, then cells do. */
function widthsOf(table: TableBlock, width: number, paint: Paint): number[] {
  const usable = width - (table.columns.length - 1) * GAP * paint.scale;
  const widest = (column: number, texts: readonly string[], header: boolean): number => {
    const style = cellStyle(table, column, header);
    const size = style.size * paint.scale;
    const lines = texts.map((text) => textLines(text, style.weight ?? 'regular', size, 1e6, paint.faces)[0]);
    return Math.max(0, ...lines.map((line) => line?.width ?? 0)) + 0.5;
  };
  const words = (text: string): readonly string[] => boundUnits(text).split(BREAKS);
  const columns = table.columns.map(({ title, weight, hand = false }, index) => {
    const texts = table.rows.map((row) => row[index] ?? '');
    const cell = widest(index, texts, false);
    const titleWords = words(title);
    const headerWord = widest(index, titleWords, true);
    const halves = titleWords
      .slice(1)
      .map((_, at) =>
        widest(index, [titleWords.slice(0, at + 1).join(' '), titleWords.slice(at + 1).join(' ')], true),
      );
    return {
      weight,
      keepsShare: hand,
      cell,
      headerWord,
      headerInTwo: Math.min(widest(index, [title], true), ...halves),
      header: widest(index, [title], true),
      word: () => Math.max(headerWord, widest(index, texts.flatMap(words), false)),
    };
  });
  const total = (values: readonly number[]): number => values.reduce((sum, one) => sum + one, 0);
  const whole = columns.map(({ cell, header }) => Math.max(cell, header));
  if (total(whole) <= usable)
    return columnWidths(
      columns.map(({ weight, keepsShare }, index) => ({ word: 0, whole: whole[index]!, weight, keepsShare })),
      usable,
    );
  const cellWords = columns.map(({ word }) => word());
  const inTwo = columns.map(({ headerInTwo }, index) => Math.max(headerInTwo, cellWords[index]!));
  // a head of more than two lines is a tower: there is one only where two lines do not fit
  const least = total(inTwo) <= usable ? inTwo : cellWords;
  return columnWidths(
    columns.map(({ weight, keepsShare, cell, headerWord }, index) => ({
      word: least[index]!,
      whole: Math.max(cell, headerWord, least[index]!),
      weight,
      keepsShare,
    })),
    usable,
  );
}
