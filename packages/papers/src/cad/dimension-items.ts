import type { ScaleItem, ScalePoint } from './scale-drawing.ts';

/** A dimension between two points, its line at a distance from them. */
export interface Dimension {
  readonly from: ScalePoint;
  readonly to: ScalePoint;
  readonly text: string;
  /** Height of the letters [m]. */
  readonly height: number;
}

/** A level dimension: the line at height `y`, thin lines up or down to the points, text above its middle. */
export function levelDimension({ from, to, text, height }: Dimension, y: number): ScaleItem[] {
  const [a, b] = [
    { x: from.x, y },
    { x: to.x, y },
  ];
  return [
    ...lines([
      [from, a],
      [to, b],
      [a, b],
    ]),
    arrow(a, { x: 1, y: 0 }, height),
    arrow(b, { x: -1, y: 0 }, height),
    {
      kind: 'text',
      layer: 'DIMENSION',
      at: { x: (from.x + to.x) / 2, y: y + 0.4 * height },
      text,
      anchor: 'middle',
      height,
    },
  ];
}

/** An upright dimension: the line at place `x`, thin lines to the points, text on the side away from them. */
export function uprightDimension({ from, to, text, height }: Dimension, x: number): ScaleItem[] {
  const [a, b] = [
    { x, y: from.y },
    { x, y: to.y },
  ];
  const left = x < Math.min(from.x, to.x);
  const up = from.y < to.y ? 1 : -1;
  return [
    ...lines([
      [from, a],
      [to, b],
      [a, b],
    ]),
    arrow(a, { x: 0, y: up }, height),
    arrow(b, { x: 0, y: -up }, height),
    {
      kind: 'text',
      layer: 'DIMENSION',
      at: { x: x + (left ? -0.6 : 0.6) * height, y: (from.y + to.y) / 2 - 0.4 * height },
      text,
      anchor: left ? 'end' : 'start',
      height,
    },
  ];
}

function lines(pairs: readonly (readonly [ScalePoint, ScalePoint])[]): ScaleItem[] {
  return pairs
    .filter(([from, to]) => from.x !== to.x || from.y !== to.y)
    .map((points) => ({ kind: 'line', layer: 'DIMENSION', points, closed: false }));
}

/** A slim arrow head, its tip at a point and its body along a direction. */
function arrow(tip: ScalePoint, along: ScalePoint, height: number): ScaleItem {
  const base = { x: tip.x + 0.9 * height * along.x, y: tip.y + 0.9 * height * along.y };
  const side = 0.2 * height;
  return {
    kind: 'line',
    layer: 'DIMENSION',
    closed: true,
    points: [
      tip,
      { x: base.x - side * along.y, y: base.y + side * along.x },
      { x: base.x + side * along.y, y: base.y - side * along.x },
    ],
  };
}
