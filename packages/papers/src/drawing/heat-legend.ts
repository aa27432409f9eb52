import type { DrawingPoint, Mark } from './drawing.ts';
import { HEAT_ROLES, type HeatLevel } from './heat-levels.ts';
import { textWidth } from './text-width.ts';

/** Where the legend stands [drawing unit]. */
export interface HeatLegendPlace {
  readonly topLeft: DrawingPoint;
  readonly width: number;
  /** Size of the letters. */
  readonly size: number;
}

const WANTED = 'wanted';

/** Height of the legend, for letters of this size [drawing unit]. */
export function heatLegendHeight(size: number): number {
  return 3.8 * size;
}

/** A strip of the areas with the temperatures between them, each in the style of its line, and what the outline is. */
export function heatLegend(levels: readonly HeatLevel[], place: HeatLegendPlace): Mark[] {
  const { topLeft, width, size } = place;
  const { x, y } = topLeft;
  const small = 0.92 * size;
  const tail = textWidth(WANTED, size) + 4 * size;
  const step = Math.min(
    Math.max(3.2 * size, ...levels.map(({ text }) => textWidth(text, small) + 0.8 * size)),
    (width - tail) / (levels.length + 1),
  );
  const marks: Mark[] = [];
  for (let index = 0; index <= levels.length; index += 1) {
    const [left, right] = [x + index * step, x + (index + 1) * step];
    marks.push({
      kind: 'area',
      role: HEAT_ROLES[index - 1] ?? 'plate',
      points: [
        { x: left, y },
        { x: right, y },
        { x: right, y: y + 1.1 * size },
        { x: left, y: y + 1.1 * size },
      ],
    });
  }
  // labels that would run into each other take turns in two rows
  const free = [Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY];
  levels.forEach(({ role, text }, index) => {
    const at = x + (index + 1) * step;
    const half = textWidth(text, small) / 2;
    const row = at - half >= (free[0] ?? 0) ? 0 : 1;
    free[row] = at + half + 0.3 * size;
    marks.push(
      { kind: 'line', role, from: { x: at, y }, to: { x: at, y: y + (1.3 + 1.1 * row) * size } },
      {
        kind: 'text',
        role,
        at: { x: at, y: y + (2.3 + 1.1 * row) * size },
        text,
        anchor: 'middle',
        size: small,
      },
    );
  });
  const sample = { x: x + (levels.length + 1) * step + size, y: y + 0.6 * size };
  marks.push(
    { kind: 'line', role: 'target', from: sample, to: { x: sample.x + 2.2 * size, y: sample.y } },
    {
      kind: 'text',
      role: 'label',
      at: { x: sample.x + 2.7 * size, y: sample.y + 0.34 * size },
      text: WANTED,
      anchor: 'start',
      size,
    },
  );
  return marks;
}
