import type { ListBlock } from '../document/index.ts';
import { INK } from '../style/index.ts';
import type { Box, Paint } from './paint.ts';
import { textBox } from './text-box.ts';

/** Short statements under each other, each with a mark: a dash, or a triangle for a caution. */
export function listBox(list: ListBlock, width: number, paint: Paint): Box {
  const { pdf, scale } = paint;
  const indent = 11 * scale;
  // cautions are many and stand on every card: a little smaller leaves room for what differs
  const size = list.tone === 'caution' ? 7.6 : 8.5;
  const items = list.items.map((item) => textBox(item, width - indent, { size, tag: 'LBody' }, paint));
  const gap = 1.5 * scale;
  return {
    height: items.reduce((sum, item) => sum + item.height + gap, 0),
    paint(x, y, parent) {
      const element = pdf.struct('L');
      parent.add(element);
      let top = y;
      for (const item of items) {
        const middle = top + 0.5 * size * 1.28 * scale;
        pdf.markContent('Artifact', { type: 'Layout' });
        if (list.tone === 'caution') triangle(x, middle, 0.4 * size * scale, pdf);
        else pdf.rect(x + 0.5 * scale, middle - 0.4 * scale, 5 * scale, 0.9 * scale).fill(INK);
        pdf.endMarkedContent();
        const entry = pdf.struct('LI');
        element.add(entry);
        item.paint(x + indent, top, entry);
        entry.end();
        top += item.height + gap;
      }
      element.end();
    },
  };
}

function triangle(x: number, middle: number, size: number, pdf: PDFKit.PDFDocument): void {
  pdf.lineWidth(size * 0.28).undash();
  pdf
    .moveTo(x + size, middle - size)
    .lineTo(x + 2 * size, middle + 0.8 * size)
    .lineTo(x, middle + 0.8 * size)
    .closePath()
    .stroke(INK);
}
