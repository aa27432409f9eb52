import { type HeatField, type HeatFrame, inUnit, ZERO_CELSIUS } from '@furrow/engine';
import type { ValueGrid } from './contour-rings.ts';

/** Part of the section that is shown [m]. */
export interface HeatWindow {
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
}

/**
 * Temperatures of a frame from edge to edge of a window, in degrees Celsius and metres. The outermost cells reach to
 * the faces of the plate; where metal is cut out the temperature under it stands in, so that lines of equal
 * temperature end at the floor and not beside it.
 */
export function heatViewGrid(field: HeatField, frame: HeatFrame, window: HeatWindow): ValueGrid {
  const x = axisIn(field.across, window.left, window.right);
  const y = axisIn(field.below, 0, window.bottom);
  const columns = field.across.length;
  const filled = withoutHoles(frame.temperature, columns, field.below.length);
  const values = new Float64Array(x.length * y.length);
  const spotsX = x.map((place) => spotOn(field.across, place));
  y.forEach((depth, row) => {
    const { index: above, share: down } = spotOn(field.below, depth);
    const below = Math.min(above + 1, field.below.length - 1);
    spotsX.forEach(({ index: left, share: aside }, column) => {
      const right = Math.min(left + 1, columns - 1);
      const at = (cell: number, line: number): number => filled[line * columns + cell] ?? ZERO_CELSIUS;
      const upper = at(left, above) * (1 - aside) + at(right, above) * aside;
      const lower = at(left, below) * (1 - aside) + at(right, below) * aside;
      values[row * x.length + column] = inUnit(upper * (1 - down) + lower * down, 'degC');
    });
  });
  return { x, y, values };
}

/** Places of the cells inside a stretch, and its ends. */
function axisIn(centres: Float64Array, from: number, to: number): number[] {
  return [from, ...[...centres].filter((place) => place > from && place < to), to];
}

/** The cells between which a place lies, and how far it is from the first; beyond the ends the outermost cell counts. */
function spotOn(centres: Float64Array, place: number): { readonly index: number; readonly share: number } {
  const next = centres.findIndex((centre) => centre > place);
  if (next < 0) return { index: Math.max(0, centres.length - 1), share: 0 };
  if (next === 0) return { index: 0, share: 0 };
  const [before, after] = [centres[next - 1] ?? 0, centres[next] ?? 0];
  return { index: next - 1, share: (place - before) / (after - before) };
}

/** The temperatures with each empty cell taken from the metal under it. */
function withoutHoles(temperature: Float32Array, columns: number, rows: number): Float32Array {
  const filled = Float32Array.from(temperature);
  for (let cell = columns * (rows - 1) - 1; cell >= 0; cell -= 1) {
    if (Number.isNaN(filled[cell])) filled[cell] = filled[cell + columns] ?? ZERO_CELSIUS;
  }
  for (let cell = 0; cell < filled.length; cell += 1) {
    if (Number.isNaN(filled[cell])) filled[cell] = ZERO_CELSIUS;
  }
  return filled;
}
