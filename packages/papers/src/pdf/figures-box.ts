import type { FiguresBlock } from '../document/index.ts';
import { ACCENT, SOFT_INK } from '../style/index.ts';
import type { Box, Paint } from './paint.ts';
import { textBox } from './text-box.ts';
import { textLines } from './text-layout.ts';

const SIZES = {
  big: { label: 8, value: 21, note: 7.5 },
  plain: { label: 7.5, value: 12.5, note: 7 },
} as const;

/** Values side by side, each under its label. */
export function figuresBox(figures: FiguresBlock, width: number, paint: Paint): Box {
  const { pdf, scale } = paint;
  const gap = 10 * scale;
  const column = (width - gap * (figures.items.length - 1)) / figures.items.length;
  const sizes = SIZES[figures.size];
  const valueSize = fittingSize(figures, sizes.value, column, paint);
  const cells = figures.items.map((item) => [
    textBox(item.label, column, { size: sizes.label, colour: SOFT_INK, tag: 'Span' }, paint),
    textBox(item.value, column, { size: valueSize, weight: 'bold', leading: 1.15, tag: 'Span' }, paint),
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

/** One size for all values of a row, so small that none of them has to wrap. */
function fittingSize(figures: FiguresBlock, size: number, column: number, paint: Paint): number {
  const widest = Math.max(
    ...figures.items.map(
      (item) => textLines(item.value, 'bold', size * paint.scale, 1e6, paint.faces)[0]?.width ?? 0,
    ),
  );
  return widest <= column ? size : size * Math.max(0.5, (column / widest) * 0.995);
}
