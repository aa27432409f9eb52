import type { ListBlock } from '../blocks/index.ts';
import { INK } from '../style/index.ts';
import type { Box, Paint } from './paint.ts';
import { textBox } from './text-box.ts';

/** Short statements under each other, each with a mark: a dash, or a triangle for a caution. */
export function listBox(list: ListBlock, width: number, paint: Paint): Box {
  // cautions are many and stand on every card: a little smaller leaves room for what differs
  const size = list.tone === 'caution' ? 8 : 8.5;
  const indent = 11 * paint.scale;
  const items = list.items.map((item) => textBox(item, width - indent, { size, tag: 'LBody' }, paint));
  const box = itemsBox(items, list.tone, size, paint);
  if (list.introduces !== true) return box;
  // it stays whole, with the beginning of what it belongs to
  return { height: box.height, keepsWithNext: true, paint: box.paint };
}

function itemsBox(items: readonly Box[], tone: ListBlock['tone'], size: number, paint: Paint): Box {
  const { pdf, scale } = paint;
  const indent = 11 * scale;
  const gap = 1.5 * scale;
  return {
    height: items.reduce((sum, item) => sum + item.height + gap, 0),
    ...(items.length > 1 && { least: items[0]!.height + gap }),
    cut(room) {
      let fits = 0;
      for (let used = 0; fits < items.length; fits += 1) {
        used += items[fits]!.height + gap;
        if (used > room) break;
      }
      if (fits === 0 || fits === items.length) return undefined;
      return {
        first: itemsBox(items.slice(0, fits), tone, size, paint),
        rest: itemsBox(items.slice(fits), tone, size, paint),
      };
    },
    paint(x, y, parent) {
      const element = pdf.struct('L');
      parent.add(element);
      let top = y;
      for (const item of items) {
        const middle = top + 0.5 * size * 1.28 * scale;
        pdf.markContent('Artifact', { type: 'Layout' });
        if (tone === 'caution') triangle(x, middle, 0.4 * size * scale, pdf);
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
