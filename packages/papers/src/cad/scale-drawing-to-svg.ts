import { escapeMarkup, textWidth } from '../drawing/index.ts';
import { LAYER_STYLES } from './layer-style.ts';
import type { ScaleDrawing, ScaleItem, ScaleLine, ScalePoint } from './scale-drawing.ts';

/** Height of capital letters as a share of the size of a font [-]. */
const CAPITALS = 0.72;

/** Writes a drawing as an SVG file of its own: full size in millimetres, its user unit one millimetre. */
export function scaleDrawingToSvg(drawing: ScaleDrawing): string {
  const { title, description, items, textHeight } = drawing;
  const size = extent(items, textHeight);
  const thin = 60 * textHeight;
  const attributes = [
    'xmlns="http://www.w3.org/2000/svg"',
    `width="${number(size.width)}mm"`,
    `height="${number(size.height)}mm"`,
    `viewBox="${number(size.left)} ${number(size.top)} ${number(size.width)} ${number(size.height)}"`,
    'fill="none"',
    'stroke="#000000"',
    `stroke-width="${number(thin)}"`,
    'stroke-linejoin="round"',
    'font-family="sans-serif"',
  ];
  return (
    `<?xml version="1.0" encoding="UTF-8"?>\n<svg ${attributes.join(' ')}>\n` +
    `<title>${escapeMarkup(title)}</title>\n<desc>${escapeMarkup(description)}</desc>\n` +
    `${layersOf(items)
      .map(
        (layer) =>
          `<g id="${layer}"${lineStyle(layer, textHeight)}>\n` +
          items
            .filter((item) => item.layer === layer)
            .map((item) => `${itemToSvg(item)}\n`)
            .join('') +
          '</g>\n',
      )
      .join('')}</svg>\n`
  );
}

function layersOf(items: readonly ScaleItem[]): readonly ScaleItem['layer'][] {
  return [...new Set(items.map(({ layer }) => layer))];
}

function lineStyle(layer: ScaleItem['layer'], textHeight: number): string {
  const { dashes, thick = false } = LAYER_STYLES[layer];
  const width = thick ? ` stroke-width="${number(140 * textHeight)}"` : '';
  const dash =
    dashes === undefined
      ? ''
      : ` stroke-dasharray="${dashes.map((part) => number(1000 * part * textHeight)).join(' ')}"`;
  return `${width}${dash}`;
}

function itemToSvg(item: ScaleItem): string {
  if (item.kind === 'line') {
    const points = item.points
      .map((point) => `${number(1000 * point.x)},${number(-1000 * point.y)}`)
      .join(' ');
    return `<${item.closed ? 'polygon' : 'polyline'} points="${points}"/>`;
  }
  const { at, anchor, height, text } = item;
  return (
    `<text x="${number(1000 * at.x)}" y="${number(-1000 * at.y)}" text-anchor="${anchor}" ` +
    `font-size="${number((1000 * height) / CAPITALS)}" fill="#000000" stroke="none">${escapeMarkup(text)}</text>`
  );
}

interface Extent {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** What the drawing covers, with a margin [mm]; y down. */
function extent(items: readonly ScaleItem[], textHeight: number): Extent {
  const corners = items.flatMap((item) => (item.kind === 'line' ? cornersOf(item) : textCorners(item)));
  const xs = corners.map(({ x }) => 1000 * x);
  const ys = corners.map(({ y }) => -1000 * y);
  const margin = 2000 * textHeight;
  const least = (values: readonly number[]): number => values.reduce((a, b) => Math.min(a, b), Infinity);
  const most = (values: readonly number[]): number => values.reduce((a, b) => Math.max(a, b), -Infinity);
  const left = least(xs) - margin;
  const top = least(ys) - margin;
  return { left, top, width: most(xs) + margin - left, height: most(ys) + margin - top };
}

function cornersOf({ points }: ScaleLine): readonly ScalePoint[] {
  return points;
}

function textCorners({ at, anchor, text, height }: Extract<ScaleItem, { kind: 'text' }>): ScalePoint[] {
  const width = textWidth(text, height / CAPITALS);
  const left = at.x - { start: 0, middle: width / 2, end: width }[anchor];
  return [
    { x: left, y: at.y - 0.3 * height },
    { x: left + width, y: at.y + height },
  ];
}

/** Millionths of a millimetre: the value itself, without the noise of binary fractions. */
function number(value: number): string {
  return String(Math.round(value * 1e6) / 1e6 + 0);
}
