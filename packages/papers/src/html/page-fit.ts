import type { PaperBlock, PaperDocument } from '../blocks/index.ts';
import { textWidth } from '../drawing/index.ts';

/** Sizes in per cent that the style sheet knows, largest first. */
export const PAGE_FITS: readonly number[] = [100, 95, 90, 85, 80, 75, 70, 65, 60, 55, 50, 45, 40];

/** Room inside the margins of a sheet [pt]. */
const ROOM = { a4: { width: 533, height: 780 }, letter: { width: 550, height: 730 } } as const;
/** Line height as a multiple of the letters' size [-]. */
const LEADING = 1.28;
const GAP = 5;

/**
 * Size at which a paper of one page should be set so that a browser prints it on one page.
 *
 * The browser's fonts are not known here: widths are taken from a wide face, so that others fit too.
 */
export function pageFit(paper: PaperDocument): number {
  if (!paper.one_page) return 100;
  const { width, height } = ROOM[paper.paper];
  const fits = PAGE_FITS.find((fit) => {
    const scale = fit / 100;
    const blocks = paper.blocks.map((block) => blockHeight(block, width, scale) + GAP * scale);
    return blocks.reduce((sum, one) => sum + one, 14 * scale) <= height;
  });
  return fits ?? PAGE_FITS.at(-1)!;
}

function blockHeight(block: PaperBlock, width: number, scale: number): number {
  const text = (words: string, size: number, room = width): number =>
    Math.ceil((1.04 * textWidth(words, size * scale)) / room) * size * scale * LEADING;
  switch (block.kind) {
    case 'heading':
      if (block.level === 2) return text(block.text, 8.5) + 6 * scale;
      return Math.max(
        text(block.text, 19) +
          12 * scale +
          (block.below ?? []).reduce((sum, line) => sum + text(line, 9.5, width - 64), 0),
        block.code === undefined ? 0 : 56,
      );
    case 'paragraph':
      return text(block.text, { plain: 8.5, lead: 9.5, small: 6.5 }[block.tone]);
    case 'figures': {
      const column = width / block.items.length - 9 * scale;
      const notes = block.items.map((item) => text(item.note ?? '', 7.5, column));
      const value = block.size === 'big' ? 21 * 1.3 + 5 : 12.5 * 1.25;
      return (value + 7.5 * LEADING) * scale + Math.max(0, ...notes);
    }
    case 'table':
      return (11 + 2 * 7.5 * LEADING + block.rows.length * (9 * LEADING + 3.2)) * scale + 3;
    case 'drawing':
      return (block.drawing.height / block.drawing.width) * width * scale;
    case 'list': {
      const size = block.tone === 'caution' ? 7.6 : 8.5;
      return block.items.reduce((sum, item) => sum + text(item, size, width - 11 * scale) + 1.5 * scale, 0);
    }
    case 'signatures':
      return 24 + 12 * scale;
    case 'fields':
      return Math.ceil(block.items.length / block.across) * (15 + 12 * scale);
    case 'columns': {
      const column = (width - 16 * scale) / block.columns.length;
      const heights = block.columns.map(({ blocks }) =>
        blocks.reduce((sum, child) => sum + blockHeight(child, column, scale), 0),
      );
      return Math.max(0, ...heights);
    }
  }
}
