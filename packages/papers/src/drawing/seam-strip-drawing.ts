import { formatAmount, formatStated, fromUnit, type Job, type Plan, type UnitSystem } from '@furrow/engine';
import type { Drawing, DrawingPoint, Mark, MarkRole } from './drawing.ts';
import { hatch } from './hatch.ts';
import { drawLegend, type LegendEntry, legendRowHeight, legendRows } from './legend.ts';
import { axisPlaceText } from './length-axis.ts';
import { axisMarks, type SeamStripAxis, seamStripAxis, seamStripX } from './seam-strip-axis.ts';
import { type SeamStripRow, seamStripRows } from './seam-strip-rows.ts';
import { textWidth } from './text-width.ts';

/** What the seam strip is drawn of, and how large. */
export interface SeamStripDrawingInput {
  readonly job: Job;
  readonly plan?: Plan | undefined;
  readonly units: UnitSystem;
  /** Width [drawing unit], at least 260. */
  readonly width: number;
  /** Height [drawing unit], at least 90. */
  readonly height: number;
}

interface Layout {
  readonly size: number;
  readonly axis: SeamStripAxis;
  /** Top of the first lane, and the line of the axis [drawing unit]. */
  readonly top: number;
  readonly axisY: number;
  /** Right ends of the columns beside the lanes [drawing unit]. */
  readonly columns: readonly number[];
  readonly legend: readonly (readonly LegendEntry[])[];
}

const HEADERS = ['pass', 'layer', 'track', 'travel', 'dwell'];

/** Where places along the seam lie on the seam strip of this input, for a cursor laid over it. */
export function seamStripScale(input: SeamStripDrawingInput): SeamStripAxis {
  return layoutOf(input).axis;
}

/** Draws the seam unrolled: one lane per pass, with starts, electrode changes, gauge stations and run-outs. */
export function seamStripDrawing(input: SeamStripDrawingInput): Drawing {
  const { job, plan, units } = input;
  const { width, height } = sheet(input);
  const layout = layoutOf(input);
  const { size, axis, axisY, legend } = layout;
  const legendTop = axisY + 2 * size;
  const ends = [0, job.seam.length].map((place): Mark => {
    const x = seamStripX(axis, place);
    return { kind: 'line', role: 'lane', from: { x, y: layout.top }, to: { x, y: axisY } };
  });
  return {
    width,
    height,
    title: 'Seam strip',
    description: describe(input),
    marks: [
      ...ends,
      ...(plan === undefined ? [] : headerMarks(layout)),
      ...(plan === undefined ? seamMarks(layout) : laneMarks(input, plan, layout)),
      ...axisMarks(axis, units, size),
      ...drawLegend(legend, { x: 0.4 * size, y: legendTop }, size),
    ],
  };
}

function sheet({ width, height }: SeamStripDrawingInput): { width: number; height: number } {
  return { width: Math.max(260, width), height: Math.max(90, height) };
}

function layoutOf(input: SeamStripDrawingInput): Layout {
  const { job, plan, units } = input;
  const { width, height } = sheet(input);
  const size = Math.min(13, Math.max(6.5, Math.min(width / 62, height / 9)));
  const columns = columnEnds(plan, units, size);
  const left = (columns.at(-1) ?? 0) + 1.4 * size;
  const ends = { left, right: width - 3.6 * size, foot: 0 };
  const entries = legendEntries(input, seamStripAxis(job, plan, ends), size);
  const legend = legendRows(entries, width - 0.8 * size, size);
  const axisY = height - legend.length * legendRowHeight(size) - 2.3 * size;
  const top = 1.8 * size;
  // few passes do not need the whole height: the axis follows right under the lanes
  const lanes = plan === undefined ? 1 : seamStripRows(plan).length;
  const low = Math.min(axisY, top + (3 * lanes + 0.4) * size);
  const axis = { ...seamStripAxis(job, plan, ends), foot: low };
  return { size, axis, top, axisY: low, columns, legend };
}

/** What stands beside a lane, column by column. */
function rowTexts(row: SeamStripRow, units: UnitSystem): string[] {
  if (row.kind === 'gauge') return ['gauge'];
  const { pass } = row;
  const travel = pass.set_by_gauge ? 'by gauge' : formatStated(pass.travel_mm_per_min, 'mm/min', units);
  const dwell = formatAmount(pass.dwell_s, 'time', units);
  return [String(pass.number), String(pass.layer), String(pass.track), travel, dwell];
}

function columnEnds(plan: Plan | undefined, units: UnitSystem, size: number): number[] {
  if (plan === undefined) return [];
  const texts = [
    HEADERS,
    ...seamStripRows(plan)
      .filter((row) => row.kind === 'pass')
      .map((row) => rowTexts(row, units)),
  ];
  let end = 0;
  return HEADERS.map((_header, column) => {
    const widest = Math.max(...texts.map((row) => textWidth(row[column] ?? '', size)));
    end += widest + (column === 0 ? 0.4 : 1) * size;
    return end;
  });
}

function headerMarks({ columns, size, top }: Layout): Mark[] {
  return columns.map((x, index) => ({
    kind: 'text',
    role: 'axis',
    at: { x, y: top - 0.6 * size },
    text: HEADERS[index] ?? '',
    anchor: 'end',
    size,
  }));
}

function seamMarks({ axis, top, axisY, size }: Layout): Mark[] {
  const middle = (top + axisY) / 2;
  const half = Math.min(0.5 * size, (axisY - top) / 4);
  return [bar('pass', axis.left, axis.right, middle, half)];
}

function bar(role: MarkRole, left: number, right: number, middle: number, half: number): Mark {
  return {
    kind: 'area',
    role,
    points: [
      { x: left, y: middle - half },
      { x: right, y: middle - half },
      { x: right, y: middle + half },
      { x: left, y: middle + half },
    ],
  };
}

function laneMarks(input: SeamStripDrawingInput, plan: Plan, layout: Layout): Mark[] {
  const { size, top, axisY, columns } = layout;
  const rows = seamStripRows(plan);
  const pitch = (axisY - top - 0.4 * size) / Math.max(1, rows.length);
  // lanes thinner than a line of text keep only every so many labels
  const every = Math.max(1, Math.ceil((1.12 * size) / pitch));
  return rows.flatMap((row, index): Mark[] => {
    const middle = top + (index + 0.5) * pitch;
    const marks: Mark[] =
      row.kind === 'gauge'
        ? stationMarks(row.stop.station_positions_mm, input.units, layout, middle, pitch)
        : passMarks(input, layout, middle, pitch, changesOf(plan, row.pass.number));
    if (index % every !== 0) return marks;
    const texts = rowTexts(row, input.units).map(
      (text, column): Mark => ({
        kind: 'text',
        role: 'label',
        at: { x: row.kind === 'gauge' ? 0.4 * size : (columns[column] ?? 0), y: middle + 0.35 * size },
        text,
        anchor: row.kind === 'gauge' ? 'start' : 'end',
        size,
      }),
    );
    return [...marks, ...texts];
  });
}

/** Places where electrodes run out in a pass [mm]. */
function changesOf(plan: Plan, pass: number): number[] {
  return plan.electrode_changes.filter((change) => change.pass === pass).map((change) => change.at_mm);
}

function passMarks(
  { job }: SeamStripDrawingInput,
  { axis, size }: Layout,
  middle: number,
  pitch: number,
  changes: readonly number[],
): Mark[] {
  const half = Math.min(0.5 * size, 0.3 * pitch);
  const start = seamStripX(axis, 0);
  const end = seamStripX(axis, job.seam.length);
  const marks: Mark[] = [bar('pass', start, end, middle, half)];
  for (const [left, right] of [
    [axis.left, start],
    [end, axis.right],
  ] as const) {
    if (right - left < 0.1) continue;
    const outline = bar('run-out', left, right, middle, half);
    marks.push(outline);
    if (outline.kind === 'area') marks.push(...hatch(outline.points, 0.5 * size, 'run-out'));
  }
  // the start first: a change soon after it must not hide under it
  marks.push(startMark({ x: axis.left, y: middle }, Math.min(0.75 * size, 0.5 * pitch)));
  const diamond = Math.min(0.55 * size, 0.48 * pitch);
  for (const place of changes)
    marks.push(...changeMarks({ x: seamStripX(axis, fromUnit(place, 'mm')), y: middle }, diamond));
  return marks;
}

function startMark({ x, y }: DrawingPoint, size: number): Mark {
  return {
    kind: 'area',
    role: 'start',
    points: [
      { x: x - 0.2 * size, y: y - size },
      { x: x + 1.1 * size, y },
      { x: x - 0.2 * size, y: y + size },
    ],
  };
}

function changeMarks({ x, y }: DrawingPoint, size: number): Mark[] {
  return [
    {
      kind: 'area',
      role: 'electrode-change',
      points: [
        { x, y: y - size },
        { x: x + size, y },
        { x, y: y + size },
        { x: x - size, y },
      ],
    },
  ];
}

function stationMark({ x, y }: DrawingPoint, size: number): Mark {
  return {
    kind: 'area',
    role: 'gauge-station',
    points: [
      { x: x - size, y: y - 0.8 * size },
      { x: x + size, y: y - 0.8 * size },
      { x, y: y + 0.9 * size },
    ],
  };
}

function stationMarks(
  positions: readonly number[],
  units: UnitSystem,
  { axis, size }: Layout,
  middle: number,
  pitch: number,
): Mark[] {
  const mark = Math.min(0.55 * size, 0.45 * pitch);
  let free = Number.NEGATIVE_INFINITY;
  return positions.flatMap((position): Mark[] => {
    const x = seamStripX(axis, fromUnit(position, 'mm'));
    const marks: Mark[] = [stationMark({ x, y: middle }, mark)];
    const text = axisPlaceText(axis.to - axis.from, fromUnit(position, 'mm'), units);
    const width = textWidth(text, size);
    // the last label goes to the left of its mark where it would run over the end
    const fits = x + mark + 0.35 * size + width < axis.right - 0.3 * size;
    const left = fits ? x + mark + 0.35 * size : x - mark - 0.35 * size - width;
    if (pitch >= 1.1 * size && Math.min(left, x - mark) > free) {
      marks.push({
        kind: 'text',
        role: 'gauge-station',
        at: { x: left, y: middle + 0.33 * size },
        text,
        anchor: 'start',
        size,
      });
      free = left + width + 0.4 * size;
    }
    return marks;
  });
}

function legendEntries(
  { job, plan, units }: SeamStripDrawingInput,
  axis: Pick<SeamStripAxis, 'left' | 'right' | 'from' | 'to'>,
  size: number,
): LegendEntry[] {
  if (plan === undefined) return [];
  const width = 1.4 * size;
  const entries: LegendEntry[] = [
    {
      text: 'start, wait the dwell',
      width: size,
      sample: ({ x, y }) => [startMark({ x: x + 0.2 * size, y }, 0.55 * size)],
    },
  ];
  if (plan.electrode_changes.length > 0) {
    entries.push({
      text: 'electrode runs out',
      width,
      sample: ({ x, y }) => changeMarks({ x: x + 0.7 * size, y }, 0.5 * size),
    });
  }
  if (plan.gauge_stops.length > 0) {
    entries.push({
      text: 'gauge here',
      width,
      sample: ({ x, y }) => [stationMark({ x: x + 0.7 * size, y }, 0.5 * size)],
    });
  }
  if (fromUnit(plan.pass_length_mm, 'mm') > job.seam.length * (1 + 1e-9)) {
    entries.push({
      text: 'run-out',
      width: 2 * width,
      sample: ({ x, y }) => {
        const outline = bar('run-out', x, x + 2 * width, y, 0.4 * size);
        return outline.kind === 'area' ? [outline, ...hatch(outline.points, 0.5 * size, 'run-out')] : [];
      },
    });
  }
  // to the scale of the seam, away from the lanes: whatever is laid over them crosses no words
  const loss = (fromUnit(plan.loss_length_mm, 'mm') * (axis.right - axis.left)) / (axis.to - axis.from);
  entries.push({
    text: `if the arc goes out, ${formatStated(plan.loss_length_mm, 'mm', units)} stays ungouged (to scale)`,
    width: loss,
    sample: ({ x, y }) => [bar('loss', x, x + loss, y, 0.35 * size)],
  });
  return entries;
}

function describe({ job, plan, units }: SeamStripDrawingInput): string {
  const seam = `Seam of ${formatAmount(job.seam.length, 'length', units)}, start at the left.`;
  if (plan === undefined) return seam;
  const count = (amount: number, name: string): string => `${amount} ${name}${amount === 1 ? '' : 's'}`;
  const stops = plan.gauge_stops
    .map(
      (stop) =>
        ` Gauge at ${count(stop.station_positions_mm.length, 'station')} after layer ${stop.after_layer}.`,
    )
    .join('');
  return (
    `${seam} ${count(plan.passes.length, 'pass').replace('passs', 'passes')}, ` +
    `${count(plan.electrode_changes.length, 'electrode change')}.${stops}`
  );
}
