import type { UnitSystem } from '@furrow/engine';
import { type BayScale, bayPoint } from './bay-scale.ts';
import type { Mark } from './drawing.ts';
import { axisText, lengthAxis } from './length-axis.ts';
import { textWidth } from './text-width.ts';

/** Ticks along the left and the lower side of the bay, in steps a person counts in. */
export function bayAxes(scale: BayScale, units: UnitSystem, size: number): Mark[] {
  const { least, most, perMetre } = scale;
  const span = Math.max(most.x_m - least.x_m, most.y_m - least.y_m);
  const axis = lengthAxis(span, Math.max(2, (span * perMetre) / (5 * size)), units);
  const marks: Mark[] = [];
  const corner = bayPoint(scale, least);
  const steps = (from: number, to: number): number[] => {
    const first = Math.ceil(from / axis.step - 1e-9);
    const last = Math.floor(to / axis.step + 1e-9);
    return Array.from({ length: Math.max(0, last - first + 1) }, (_, index) => (first + index) * axis.step);
  };
  const across = steps(least.x_m, most.x_m);
  across.forEach((place, index) => {
    const { x } = bayPoint(scale, { x_m: place, y_m: least.y_m });
    const y = corner.y;
    const text = axisText(axis, place);
    marks.push({ kind: 'tick', role: 'axis', from: { x, y }, to: { x, y: y + 0.4 * size } });
    marks.push({ kind: 'text', role: 'axis', at: { x, y: y + 1.5 * size }, text, anchor: 'middle', size });
    if (index < across.length - 1) return;
    const after = x + textWidth(text, size) / 2 + 0.3 * size;
    marks.push({
      kind: 'text',
      role: 'axis',
      at: { x: after, y: y + 1.5 * size },
      text: axis.unit,
      anchor: 'start',
      size,
    });
  });
  for (const place of steps(least.y_m, most.y_m)) {
    const { y } = bayPoint(scale, { x_m: least.x_m, y_m: place });
    const x = corner.x;
    marks.push({ kind: 'tick', role: 'axis', from: { x: x - 0.4 * size, y }, to: { x, y } });
    marks.push({
      kind: 'text',
      role: 'axis',
      at: { x: x - 0.7 * size, y: y + 0.35 * size },
      text: axisText(axis, place),
      anchor: 'end',
      size,
    });
  }
  return marks;
}
