import type { ContourPoint } from './contour-rings.ts';
import type { DrawingPoint, Mark } from './drawing.ts';
import type { HeatLevel } from './heat-levels.ts';
import type { HeatSpace } from './heat-space.ts';
import { textWidth } from './text-width.ts';

interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** A label on each line where there is room for one: named temperatures first, then the outermost. */
export function heatLabels(
  rings: readonly (readonly (readonly ContourPoint[])[])[],
  levels: readonly HeatLevel[],
  cut: readonly DrawingPoint[],
  layout: HeatSpace,
): Mark[] {
  const { size, left, right, surface, bottom } = layout;
  const taken: Box[] = [];
  if (cut.length > 1) {
    const [xs, ys] = [cut.map(({ x }) => x), cut.map(({ y }) => y)];
    taken.push({ left: Math.min(...xs), right: Math.max(...xs), top: surface, bottom: Math.max(...ys) });
  }
  const free = (box: Box): boolean =>
    box.left > left &&
    box.right < right &&
    box.top > surface &&
    box.bottom < bottom &&
    taken.every(
      (other) =>
        box.right < other.left || box.left > other.right || box.bottom < other.top || box.top > other.bottom,
    );
  const order = levels.map((level, index) => ({ level, index }));
  order.sort((one, other) => Number(other.level.role !== 'isotherm') - Number(one.level.role !== 'isotherm'));
  return order.flatMap(({ level, index }): Mark[] => {
    const half = textWidth(level.text, size) / 2 + 0.15 * size;
    const places = (rings[index] ?? []).flat().filter(({ rim }) => !rim);
    // the right flank, half way down, is where most lines lie apart
    const aim = { x: right, y: (surface + bottom) / 2 };
    const away = ({ x, y }: DrawingPoint): number => Math.abs(y - aim.y) + 0.15 * Math.abs(x - aim.x);
    places.sort((one, other) => away(one) - away(other));
    const boxAt = ({ x, y }: DrawingPoint): Box => ({
      left: x - half,
      right: x + half,
      top: y - 0.6 * size,
      bottom: y + 0.6 * size,
    });
    const at = places.find((place) => free(boxAt(place)));
    if (at === undefined) return [];
    const box = boxAt(at);
    taken.push(box);
    return [
      {
        kind: 'area',
        role: 'label-ground',
        points: [
          { x: box.left, y: box.top },
          { x: box.right, y: box.top },
          { x: box.right, y: box.bottom },
          { x: box.left, y: box.bottom },
        ],
      },
      {
        kind: 'text',
        role: level.role,
        at: { x: at.x, y: at.y + 0.35 * size },
        text: level.text,
        anchor: 'middle',
        size,
      },
    ];
  });
}
