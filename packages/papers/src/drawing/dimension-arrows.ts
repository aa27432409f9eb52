import type { DimensionMark, DrawingPoint } from './drawing.ts';

/** The two slim arrow heads of a dimension line; on a line too short for them they shrink. */
export function dimensionArrows({ from, to, arrow }: DimensionMark): readonly (readonly DrawingPoint[])[] {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  if (length === 0) return [];
  const size = Math.min(arrow, length / 2.5);
  const along = { x: (to.x - from.x) / length, y: (to.y - from.y) / length };
  const head = (tip: DrawingPoint, sign: number): DrawingPoint[] => {
    const base = { x: tip.x + sign * size * along.x, y: tip.y + sign * size * along.y };
    const side = 0.28 * size;
    return [
      tip,
      { x: base.x - side * along.y, y: base.y + side * along.x },
      { x: base.x + side * along.y, y: base.y - side * along.x },
    ];
  };
  return [head(from, 1), head(to, -1)];
}
