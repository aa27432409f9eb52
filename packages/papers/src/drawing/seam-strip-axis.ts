import { fromUnit, type Job, type Plan, type UnitSystem } from '@furrow/engine';
import type { Mark } from './drawing.ts';
import { axisText, lengthAxis } from './length-axis.ts';
import { textWidth } from './text-width.ts';

/** Where places along the seam lie on the seam strip. */
export interface SeamStripAxis {
  /** Ends of the axis on the drawing [drawing unit]. */
  readonly left: number;
  readonly right: number;
  /** Height of the axis, where the lanes end [drawing unit]. */
  readonly foot: number;
  /** Places at these ends, counted from the start of the seam; below 0 in a run-out [m]. */
  readonly from: number;
  readonly to: number;
}

/** Lays the seam, and the run-outs of its passes, between two places on the drawing. */
export function seamStripAxis(
  job: Job,
  plan: Plan | undefined,
  { left, right, foot }: Pick<SeamStripAxis, 'left' | 'right' | 'foot'>,
): SeamStripAxis {
  const passLength = plan === undefined ? job.seam.length : fromUnit(plan.pass_length_mm, 'mm');
  const runOut = Math.max(0, (passLength - job.seam.length) / 2);
  return { left, right, foot, from: -runOut, to: job.seam.length + runOut };
}

/** Place on the drawing of a place along the seam, kept between the ends. */
export function seamStripX(axis: SeamStripAxis, place: number): number {
  const share = (place - axis.from) / (axis.to - axis.from);
  return axis.left + Math.min(1, Math.max(0, share)) * (axis.right - axis.left);
}

/** Draws the axis with ticks at steps a person counts in; the last label carries the unit. */
export function axisMarks(strip: SeamStripAxis, units: UnitSystem, size: number): Mark[] {
  const y = strip.foot;
  const span = strip.to - strip.from;
  const ticksMost = Math.max(2, (strip.right - strip.left) / (5 * size));
  const axis = lengthAxis(span, ticksMost, units);
  const marks: Mark[] = [
    { kind: 'line', role: 'axis', from: { x: strip.left, y }, to: { x: strip.right, y } },
  ];
  const tick = (x: number): void => {
    marks.push({ kind: 'tick', role: 'axis', from: { x, y }, to: { x, y: y + 0.4 * size } });
  };
  const label = (x: number, text: string, anchor: 'middle' | 'start'): void => {
    marks.push({ kind: 'text', role: 'axis', at: { x, y: y + 1.5 * size }, text, anchor, size });
  };
  const first = Math.ceil(strip.from / axis.step - 1e-9);
  const last = Math.floor(strip.to / axis.step + 1e-9);
  for (let index = first; index <= last; index += 1) {
    const place = index * axis.step;
    const x = seamStripX(strip, place);
    const text = axisText(axis, place);
    tick(x);
    label(x, text, 'middle');
    if (index === last) label(x + textWidth(text, size) / 2 + 0.3 * size, axis.unit, 'start');
  }
  return marks;
}
