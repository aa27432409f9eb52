import { INK } from '../style/index.ts';
import type { Box, Paint } from './paint.ts';
import { directionOf } from './text-items.ts';
import { type TextLine, textLines } from './text-layout.ts';
import { MISSING_SIGN, type Weight } from './typefaces.ts';

/** How a text is set. */
export interface TextStyle {
  /** Size before the page's factor [pt]. */
  readonly size: number;
  readonly weight?: Weight;
  readonly colour?: string;
  readonly align?: 'start' | 'end';
  /** Distance of baselines as a multiple of the size [-]. */
  readonly leading?: number;
  /** Tag of the text in the PDF's structure. */
  readonly tag: string;
}

/** A paragraph laid out for a width. */
export function textBox(text: string, width: number, style: TextStyle, paint: Paint): Box {
  const { weight = 'regular', leading = 1.28 } = style;
  const size = style.size * paint.scale;
  const lines = textLines(text, weight, size, width, paint.faces);
  return {
    height: lines.length * size * leading,
    paint(x, y, parent) {
      const { pdf } = paint;
      parent.add(
        pdf.struct(style.tag, spoken(text, lines), () => {
          lines.forEach((line, index) => {
            const left = style.align === 'end' ? x + width - line.width : x;
            const baseline = y + (index + 0.5) * size * leading + 0.35 * size;
            paintLine(line, left, baseline, size, style.colour ?? INK, pdf);
          });
        }),
      );
    },
  };
}

/** The text as written, for readers aloud and for search, where the page shows it otherwise. */
function spoken(text: string, lines: readonly TextLine[]): { actual?: string } {
  const boxed = lines.some((line) => line.pieces.some((piece) => piece.text.includes(MISSING_SIGN)));
  return boxed || directionOf(text) === 'rtl' ? { actual: text } : {};
}

/** Paints a line of text with its baseline at a height. */
export function paintLine(
  line: TextLine,
  x: number,
  baseline: number,
  size: number,
  colour: string,
  pdf: PDFKit.PDFDocument,
): void {
  for (const piece of line.pieces) {
    if (piece.text.trim() === '') continue;
    pdf.font(piece.face).fontSize(size).fillColor(colour);
    pdf.text(piece.text, x + piece.x, baseline, { lineBreak: false, baseline: 'alphabetic' });
  }
}
