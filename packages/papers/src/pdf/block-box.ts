import type { HeadingBlock, PaperBlock, ParagraphBlock } from '../blocks/index.ts';
import { codeDrawing } from '../code/index.ts';
import { ACCENT, INK, SOFT_INK } from '../style/index.ts';
import { drawingBox } from './drawing-box.ts';
import { fieldsBox } from './fields-box.ts';
import { figuresBox } from './figures-box.ts';
import { listBox } from './list-box.ts';
import type { Box, Paint } from './paint.ts';
import { signaturesBox } from './signatures-box.ts';
import { tableBox } from './table-box.ts';
import { textBox } from './text-box.ts';
import { textLines } from './text-layout.ts';

/** Space between blocks before the page's factor [pt]. */
export const BLOCK_GAP = 8;

/** Lays a block out for a width. */
export function blockBox(block: PaperBlock, width: number, paint: Paint): Box {
  switch (block.kind) {
    case 'heading':
      return headingBox(block, width, paint);
    case 'paragraph':
      return paragraphBox(block, width, paint);
    case 'figures':
      return figuresBox(block, width, paint);
    case 'table':
      return tableBox(block, width, paint);
    case 'drawing':
      return drawingBox(block.drawing, width, paint);
    case 'list':
      return listBox(block, width, paint);
    case 'signatures':
      return signaturesBox(block, width, paint);
    case 'fields':
      return fieldsBox(block, width, paint);
    case 'columns': {
      const gap = 18 * paint.scale;
      const weights = block.columns.reduce((sum, column) => sum + column.weight, 0);
      const usable = width - gap * (block.columns.length - 1);
      const columns = block.columns.map((column) => {
        const columnWidth = (column.weight / weights) * usable;
        const boxes = column.blocks.map((child) => blockBox(child, columnWidth, paint));
        return { width: columnWidth, box: stackBox(boxes, 3, paint) };
      });
      return {
        height: Math.max(0, ...columns.map(({ box }) => box.height)),
        paint(x, y, parent) {
          let left = x;
          for (const column of columns) {
            column.box.paint(left, y, parent);
            left += column.width + gap;
          }
        },
      };
    }
  }
}

/** Boxes under each other. */
function stackBox(boxes: readonly Box[], gapBefore: number, paint: Paint): Box {
  const gap = gapBefore * paint.scale;
  return {
    height: boxes.reduce((sum, box) => sum + box.height, 0) + gap * Math.max(0, boxes.length - 1),
    paint(x, y, parent) {
      let top = y;
      for (const box of boxes) {
        box.paint(x, top, parent);
        top += box.height + gap;
      }
    },
  };
}

function headingBox(heading: HeadingBlock, width: number, paint: Paint): Box {
  if (heading.level === 2) {
    const style = { size: 8.5, weight: 'bold', colour: INK, tag: 'H2' } as const;
    return {
      ...textBox(heading.text, width, style, paint),
      keepsWithNext: true,
      heads: true,
      startsPage: heading.new_page === true,
    };
  }
  const code = heading.code === undefined ? undefined : codeDrawing(heading.code.content, heading.code.words);
  if (code === undefined) return titleBox(heading, width, paint);
  // a telephone needs the same size on a crowded page
  const side = CODE_SIZE;
  const beside = drawingBox(code, side, { ...paint, scale: 1 });
  const title = titleBox(heading, width - side - 8, paint);
  return {
    height: Math.max(title.height, side),
    keepsWithNext: true,
    paint(x, y, parent) {
      title.paint(x, y, parent);
      beside.paint(x + width - side, y, parent);
    },
  };
}

function titleBox(heading: HeadingBlock, width: number, paint: Paint): Box {
  const title = textBox(
    heading.text,
    width,
    { size: titleSize(heading.text, width, paint), weight: 'bold', leading: 1.12, tag: 'H1' },
    paint,
  );
  const above =
    heading.above === undefined
      ? []
      : [textBox(heading.above, width, { size: 8.5, weight: 'bold', colour: ACCENT, tag: 'P' }, paint)];
  const below = (heading.below ?? []).map((text, index) =>
    textBox(text, width, { size: index === 0 ? 9.5 : 8.5, colour: INK, tag: 'P' }, paint),
  );
  return { ...stackBox([...above, title, ...below], 1.5, paint), keepsWithNext: true };
}

/** Side of the code beside a title, its quiet zone included [pt]. */
const CODE_SIZE = 56;

const TITLE_SIZE = 20;

/** A title a little too long for one line is set smaller rather than broken; a long one is set smaller and broken. */
function titleSize(text: string, width: number, paint: Paint): number {
  const lines = (size: number): number =>
    textLines(text, 'bold', size * paint.scale, width, paint.faces).length;
  if (lines(TITLE_SIZE) === 1) return TITLE_SIZE;
  const least = 0.72 * TITLE_SIZE;
  for (let size = TITLE_SIZE; size > least; size -= 0.5) if (lines(size) === 1) return size;
  return least;
}

function paragraphBox(paragraph: ParagraphBlock, width: number, paint: Paint): Box {
  const style = {
    plain: { size: 8.5, colour: INK },
    lead: { size: 9.5, colour: INK },
    small: { size: 8, colour: SOFT_INK },
  }[paragraph.tone];
  return textBox(paragraph.text, width, { ...style, tag: 'P' }, paint);
}
