import { dimensionArrows } from './dimension-arrows.ts';
import type { Drawing, DrawingPoint, Mark } from './drawing.ts';
import { escapeMarkup } from './escape-markup.ts';

/** Writes a drawing as SVG for a page: classes only, so that the page's style sheet gives colours and line styles. */
export function drawingToSvg(drawing: Drawing): string {
  const { width, height, title, description, marks } = drawing;
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" class="drawing" role="img" ` +
    `viewBox="0 0 ${number(width)} ${number(height)}" aria-label="${escapeMarkup(`${title}. ${description}`)}">` +
    `<title>${escapeMarkup(title)}</title><desc>${escapeMarkup(description)}</desc>` +
    `${marks.map(markToSvg).join('')}</svg>`
  );
}

function markToSvg(mark: Mark): string {
  const name = `class="mark mark-${mark.kind} mark-${mark.role}"`;
  switch (mark.kind) {
    case 'polyline':
      return `<polyline ${name} points="${points(mark.points)}"/>`;
    case 'area':
      return `<polygon ${name} points="${points(mark.points)}"/>`;
    case 'line':
    case 'tick':
      return `<line ${name} ${ends(mark.from, mark.to)}/>`;
    case 'text':
      return (
        `<text ${name} x="${number(mark.at.x)}" y="${number(mark.at.y)}" text-anchor="${mark.anchor}" ` +
        `font-size="${number(mark.size)}">${escapeMarkup(mark.text)}</text>`
      );
    case 'dimension':
      return (
        `<g ${name}><line ${ends(mark.from, mark.to)}/>` +
        `${dimensionArrows(mark)
          .map((arrow) => `<polygon points="${points(arrow)}"/>`)
          .join('')}</g>`
      );
  }
}

function ends(from: DrawingPoint, to: DrawingPoint): string {
  return `x1="${number(from.x)}" y1="${number(from.y)}" x2="${number(to.x)}" y2="${number(to.y)}"`;
}

function points(list: readonly DrawingPoint[]): string {
  return list.map(({ x, y }) => `${number(x)},${number(y)}`).join(' ');
}

/** Hundredths of a drawing unit: finer than any screen or printer shows at this size. */
function number(value: number): string {
  return String(Math.round(value * 100) / 100 + 0);
}
