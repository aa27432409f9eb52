import { type Drawing, type DrawingPoint, dimensionArrows, type Mark } from '../drawing/index.ts';
import { INK, MARK_STYLES } from '../style/index.ts';
import type { Box, Paint } from './paint.ts';
import { paintLine } from './text-box.ts';
import { textLines } from './text-layout.ts';

/** The smallest letters on a paper, whatever a drawing is scaled by [pt]. */
const LETTERS_LEAST = 8;

/** A drawing as wide as the column, or narrower where the page has to be made to fit. */
export function drawingBox(drawing: Drawing, width: number, paint: Paint): Box {
  const factor = Math.min(1, paint.scale) * (width / drawing.width);
  return {
    height: drawing.height * factor,
    paint(x, y, parent) {
      const { pdf } = paint;
      const alt = `${drawing.title}. ${drawing.description}`;
      parent.add(
        pdf.struct('Figure', { alt }, () => {
          pdf.save();
          pdf.translate(x + (width - drawing.width * factor) / 2, y).scale(factor);
          for (const mark of drawing.marks) paintMark(mark, paint, LETTERS_LEAST / factor);
          pdf.restore();
        }),
      );
    },
  };
}

function paintMark(mark: Mark, paint: Paint, lettersLeast: number): void {
  const { pdf } = paint;
  const style = MARK_STYLES[mark.role];
  switch (mark.kind) {
    case 'text': {
      const size = Math.max(mark.size, lettersLeast);
      const [line] = textLines(mark.text, style.bold ? 'bold' : 'regular', size, 1e6, paint.faces);
      if (line === undefined) return;
      const shift = { start: 0, middle: line.width / 2, end: line.width }[mark.anchor];
      paintLine(line, mark.at.x - shift, mark.at.y, size, style.text, pdf);
      return;
    }
    case 'dimension':
      path([mark.from, mark.to], pdf);
      finish({ stroke: style.stroke ?? INK, width: style.width ?? 0.5 }, pdf);
      for (const arrow of dimensionArrows(mark)) {
        path(arrow, pdf);
        pdf.closePath();
        finish({ fill: style.stroke ?? INK }, pdf);
      }
      return;
    case 'area':
      path(mark.points, pdf);
      pdf.closePath();
      finish(style, pdf);
      return;
    case 'polyline':
      path(mark.points, pdf);
      finish(lineOnly(style), pdf);
      return;
    case 'line':
    case 'tick':
      path([mark.from, mark.to], pdf);
      finish(lineOnly(style), pdf);
      return;
  }
}

interface Finish {
  readonly stroke?: string;
  readonly width?: number;
  readonly dash?: readonly number[];
  readonly fill?: string;
}

function lineOnly({ stroke = INK, width = 0.6, dash }: Finish): Finish {
  return { stroke, width, ...(dash === undefined ? {} : { dash }) };
}

function path(points: readonly DrawingPoint[], pdf: PDFKit.PDFDocument): void {
  points.forEach(({ x, y }, index) => {
    if (index === 0) pdf.moveTo(x, y);
    else pdf.lineTo(x, y);
  });
}

function finish({ stroke, width = 0.6, dash, fill }: Finish, pdf: PDFKit.PDFDocument): void {
  if (stroke !== undefined) {
    pdf.lineWidth(width).lineJoin('round');
    if (dash === undefined) pdf.undash();
    else pdf.dash(dash as unknown as number, {});
  }
  if (stroke !== undefined && fill !== undefined) pdf.fillAndStroke(fill, stroke);
  else if (stroke !== undefined) pdf.stroke(stroke);
  else if (fill !== undefined) pdf.fill(fill);
  else pdf.fillColor(INK).fillOpacity(0).fill().fillOpacity(1);
}
