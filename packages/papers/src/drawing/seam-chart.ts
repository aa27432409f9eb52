import { shownNumber, type UnitSystem } from '@furrow/engine';
import { fineUnit } from '../words/index.ts';
import type { DrawingPoint, Mark } from './drawing.ts';
import { axisText, lengthAxis } from './length-axis.ts';
import { axisShare, tickText, type ValueAxis, valueAxis } from './value-axis.ts';

/** Where lengths that belong to places along the seam lie on a drawing: the seam from left to right, the length up or down. */
export interface SeamChart {
  /** Size of the letters [drawing unit]. */
  readonly size: number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  /** Lower end of the values [drawing unit]. */
  readonly bottom: number;
  /** Height of the axis along the seam [drawing unit]. */
  readonly foot: number;
  /** Places of the ends along the seam [m]. */
  readonly from: number;
  readonly to: number;
  /** Values in the unit of the reader. */
  readonly axis: ValueAxis;
  /** Depths grow downwards as the groove does. */
  readonly grows: 'down' | 'up';
  readonly units: UnitSystem;
}

/** Ticks of the values at most [-]. */
const TICKS_MOST = 4;

/** The axis that holds all these lengths [m in]. */
export function chartAxis(lengths: readonly number[], units: UnitSystem): ValueAxis {
  return valueAxis(
    lengths.map((length) => shownNumber(length, 'depth', units)),
    TICKS_MOST,
  );
}

/** Where a place along the seam lies on the drawing, kept between the ends [m in]. */
export function chartX({ left, right, from, to }: SeamChart, at: number): number {
  return left + Math.min(1, Math.max(0, (at - from) / Math.max(1e-12, to - from))) * (right - left);
}

/** Where a length at a place along the seam lies on the drawing [m in]. */
export function chartPoint(chart: SeamChart, at: number, length: number): DrawingPoint {
  return {
    x: chartX(chart, at),
    y: heightOf(chart, axisShare(chart.axis, shownNumber(length, 'depth', chart.units))),
  };
}

/** The line through a length from end to end [m in]. */
export function chartLevel(chart: SeamChart, length: number): readonly [DrawingPoint, DrawingPoint] {
  return [chartPoint(chart, chart.from, length), chartPoint(chart, chart.to, length)];
}

/** What is accepted between two lengths, with its ends; without a greatest one everything above the least is [m in]. */
export function acceptedMarks(chart: SeamChart, least: number, most: number | undefined): Mark[] {
  const limit = (from: DrawingPoint, to: DrawingPoint): Mark => ({
    kind: 'line',
    role: 'tolerance-limit',
    from,
    to,
  });
  const [a, b] = chartLevel(chart, least);
  const end = heightOf(chart, 1);
  const [d, c] =
    most === undefined
      ? [
          { ...a, y: end },
          { ...b, y: end },
        ]
      : chartLevel(chart, most);
  return [
    { kind: 'area', role: 'tolerance', points: [a, b, c, d] },
    limit(a, b),
    ...(most === undefined ? [] : [limit(d, c)]),
  ];
}

/** Both axes with their ticks and units. */
export function chartAxes(chart: SeamChart, label: string): Mark[] {
  const { size, left, right, top, bottom, foot, from, to, axis, units } = chart;
  const text = (at: DrawingPoint, words: string, anchor: 'start' | 'middle' | 'end'): Mark => ({
    kind: 'text',
    role: 'axis',
    at,
    text: words,
    anchor,
    size,
  });
  const marks: Mark[] = [
    { kind: 'line', role: 'axis', from: { x: left, y: top }, to: { x: left, y: bottom } },
    text({ x: 0.4 * size, y: top - 0.8 * size }, `${label}, ${fineUnit(units)}`, 'start'),
  ];
  for (const tick of axis.ticks) {
    const y = heightOf(chart, axisShare(axis, tick));
    marks.push({ kind: 'tick', role: 'axis', from: { x: left - 0.4 * size, y }, to: { x: left, y } });
    marks.push(text({ x: left - 0.6 * size, y: y + 0.35 * size }, tickText(axis, tick), 'end'));
  }
  marks.push({ kind: 'line', role: 'axis', from: { x: left, y: foot }, to: { x: right, y: foot } });
  const along = lengthAxis(to - from, Math.max(2, (right - left) / (6 * size)), units);
  for (let index = 0; index * along.step <= to * (1 + 1e-9); index += 1) {
    const x = chartX(chart, index * along.step);
    marks.push({ kind: 'tick', role: 'axis', from: { x, y: foot }, to: { x, y: foot + 0.4 * size } });
    marks.push(text({ x, y: foot + 1.5 * size }, axisText(along, index * along.step), 'middle'));
  }
  marks.push(text({ x: right + 0.9 * size, y: foot + 1.5 * size }, along.unit, 'start'));
  return marks;
}

/** Height of a share of the values. */
function heightOf({ top, bottom, grows }: SeamChart, share: number): number {
  return grows === 'down' ? top + share * (bottom - top) : bottom - share * (bottom - top);
}
