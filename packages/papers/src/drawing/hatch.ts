import type { DrawingPoint, LineMark, MarkRole } from './drawing.ts';

/**
 * Hatches a shape with parallel lines rising to the right, so that it can be told apart without colour.
 *
 * Lines are the intersections of x + y = constant with the shape, taken in pairs (even-odd rule).
 */
export function hatch(points: readonly DrawingPoint[], spacing: number, role: MarkRole): LineMark[] {
  if (points.length < 3 || !(spacing > 0)) return [];
  let least = Number.POSITIVE_INFINITY;
  let most = Number.NEGATIVE_INFINITY;
  for (const { x, y } of points) {
    least = Math.min(least, x + y);
    most = Math.max(most, x + y);
  }
  const marks: LineMark[] = [];
  for (let level = Math.ceil(least / spacing) * spacing; level < most; level += spacing) {
    const crossings = crossingsAt(points, level);
    for (let index = 0; index + 1 < crossings.length; index += 2) {
      marks.push({ kind: 'line', role, from: crossings[index]!, to: crossings[index + 1]! });
    }
  }
  return marks;
}

function crossingsAt(points: readonly DrawingPoint[], level: number): DrawingPoint[] {
  const found: DrawingPoint[] = [];
  let previous = points[points.length - 1]!;
  for (const point of points) {
    const before = previous.x + previous.y - level;
    const after = point.x + point.y - level;
    if (before < 0 !== after < 0) {
      const share = before / (before - after);
      found.push({
        x: previous.x + share * (point.x - previous.x),
        y: previous.y + share * (point.y - previous.y),
      });
    }
    previous = point;
  }
  return found.sort((a, b) => a.x - b.x);
}
