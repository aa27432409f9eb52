import type { Figure, FiguresBlock } from '../document/index.ts';
import { ACCENT, SOFT_INK } from '../style/index.ts';
import type { Box, Paint } from './paint.ts';
import { textBox } from './text-box.ts';
import { textLines } from './text-layout.ts';

const SIZES = {
  big: { label: 8.5, value: 29, note: 8 },
  plain: { label: 7.5, value: 14, note: 7.5 },
} as const;

/** Size of a unit, and its distance, relative to the value's size [-]. */
const UNIT_SHARE = 0.5;
const UNIT_GAP = 0.14;

/** Values side by side, each under its label. */
export function figuresBox(figures: FiguresBlock, width: number, paint: Paint): Box {
  const { pdf, scale } = paint;
  const gap = 10 * scale;
  const column = (width - gap * (figures.items.length - 1)) / figures.items.length;
  const sizes = SIZES[figures.size];
  const valueSize = fittingSize(figures, sizes.value, column, paint);
  const cells = figures.items.map((item) => [
    textBox(item.label, column, { size: sizes.label, colour: SOFT_INK, tag: 'Span' }, paint),
    valueBox(item, valueSize, column, paint),
    textBox(
      item.note ?? '',
      column,
      { size: sizes.note, colour: SOFT_INK, leading: 1.2, tag: 'Span' },
      paint,
    ),
  ]);
  const rule = figures.size === 'big' ? 5 * scale : 0;
  const height = Math.max(0, ...cells.map((cell) => cell.reduce((sum, box) => sum + box.height, 0)));
  return {
    height: height + rule,
    paint(x, y, parent) {
      cells.forEach((cell, index) => {
        const left = x + index * (column + gap);
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

/** One size for all values of a row, so small that none of them has to wrap. */
function fittingSize(figures: FiguresBlock, size: number, column: number, paint: Paint): number {
  const widest = Math.max(
    ...figures.items.map(
      (item) =>
        lineWidth(item.value, size, paint) +
        (item.unit === undefined
          ? 0
          : lineWidth(item.unit, size * UNIT_SHARE, paint) + UNIT_GAP * size * paint.scale),
    ),
  );
  return widest <= column ? size : size * Math.max(0.5, (column / widest) * 0.995);
}
