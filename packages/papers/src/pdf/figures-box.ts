import type { Figure, FiguresBlock } from '../blocks/index.ts';
import { ACCENT, SOFT_INK } from '../style/index.ts';
import type { Box, Paint } from './paint.ts';
import { textBox } from './text-box.ts';
import { textLines } from './text-layout.ts';

const SIZES = {
  big: { label: 8.5, value: 29, note: 8 },
  plain: { label: 8, value: 16, note: 8 },
} as const;

/** Size of a unit, and its distance, relative to the value's size [-]. */
const UNIT_SHARE = 0.5;
const UNIT_GAP = 0.14;

/** Values side by side, each under its label. */
export function figuresBox(figures: FiguresBlock, width: number, paint: Paint): Box {
  const { pdf, scale } = paint;
  const gap = 10 * scale;
  const usable = width - gap * (figures.items.length - 1);
  const sizes = SIZES[figures.size];
  const { columns, valueSize } = columnsOf(figures, sizes.value, usable, paint);
  const small = (text: string, size: number, column: number): Box =>
    textBox(text, column, { size, colour: SOFT_INK, leading: 1.22, tag: 'Span' }, paint);
  const cells = figures.items.map((item, index) => [
    small(item.label, sizes.label, columns[index]!),
    valueBox(item, valueSize, columns[index]!, paint),
    small(item.note ?? '', sizes.note, columns[index]!),
  ]);
  const rule = figures.size === 'big' ? 5 * scale : 0;
  const height = Math.max(0, ...cells.map((cell) => cell.reduce((sum, box) => sum + box.height, 0)));
  return {
    height: height + rule,
    paint(x, y, parent) {
      let left = x;
      cells.forEach((cell, index) => {
        const column = columns[index]!;
        if (rule > 0) {
          pdf.markContent('Artifact', { type: 'Layout' });
          pdf.rect(left, y, column, 2 * scale).fill(ACCENT);
          pdf.endMarkedContent();
        }
        const element = pdf.struct('P');
        parent.add(element);
        let top = y + rule;
        for (const box of cell) {
          if (box.height > 0) box.paint(left, top, element);
          top += box.height;
        }
        element.end();
        left += column + gap;
      });
    },
  };
}

/** A value with its unit beside it on the same baseline. */
function valueBox({ value, unit }: Figure, size: number, width: number, paint: Paint): Box {
  const style = { size, weight: 'bold', leading: 1.12, tag: 'Span' } as const;
  const number = textBox(value, width, style, paint);
  if (unit === undefined) return number;
  const left = lineWidth(value, size, paint) + UNIT_GAP * size * paint.scale;
  // the leading that puts the smaller unit on the baseline of the value
  const leading = (1.12 + 0.7 * (1 - UNIT_SHARE)) / UNIT_SHARE;
  const beside = textBox(unit, width, { ...style, size: size * UNIT_SHARE, leading }, paint);
  return {
    height: number.height,
    paint(x, y, parent) {
      number.paint(x, y, parent);
      beside.paint(x + left, y, parent);
    },
  };
}

function lineWidth(text: string, size: number, paint: Paint): number {
  return textLines(text, 'bold', size * paint.scale, 1e6, paint.faces)[0]?.width ?? 0;
}

/** Equal columns where all values fit; else each as wide as its value needs, and all values smaller if they must. */
function columnsOf(
  figures: FiguresBlock,
  size: number,
  usable: number,
  paint: Paint,
): { columns: number[]; valueSize: number } {
  const needed = figures.items.map(
    ({ value, unit }) =>
      lineWidth(value, size, paint) +
      (unit === undefined ? 0 : lineWidth(unit, size * UNIT_SHARE, paint) + UNIT_GAP * size * paint.scale) +
      0.5,
  );
  const count = figures.items.length;
  const equal = usable / count;
  if (needed.every((one) => one <= equal)) return { columns: needed.map(() => equal), valueSize: size };
  const sizes = SIZES[figures.size];
  const small = (text: string, size: number): number =>
    (textLines(text, 'regular', size * paint.scale, 1e6, paint.faces)[0]?.width ?? 0) + 0.5;
  const withLabels = figures.items.map(({ label }, index) =>
    Math.max(needed[index]!, small(label, sizes.label)),
  );
  const withNotes = figures.items.map(({ note = '' }, index) =>
    Math.max(withLabels[index]!, small(note, sizes.note)),
  );
  for (const widths of [withNotes, withLabels, needed]) {
    const spare = usable - widths.reduce((total, one) => total + one, 0);
    if (spare >= 0) return { columns: widths.map((one) => one + spare / count), valueSize: size };
  }
  const sum = needed.reduce((total, one) => total + one, 0);
  return { columns: needed.map((one) => (one / sum) * usable), valueSize: (size * usable * 0.995) / sum };
}
