import { type Job, judgeStation, type Station, type UnitSystem } from '@furrow/engine';
import { fineNumber, fineUnit } from '../words/index.ts';
import type { Drawing, DrawingPoint, Mark } from './drawing.ts';
import { drawLegend, type LegendEntry, legendRowHeight, legendRows } from './legend.ts';
import { axisText, lengthAxis } from './length-axis.ts';
import { textWidth } from './text-width.ts';
import { axisShare, tickText, type ValueAxis, valueAxis } from './value-axis.ts';

/** What the depths are drawn of, and how large. */
export interface DepthDrawingInput {
  readonly job: Job;
  readonly stations: readonly Station[];
  /** Standard uncertainty of one reading [m]. */
  readonly u: number;
  readonly units: UnitSystem;
  /** Width [drawing unit], at least 260. */
  readonly width: number;
  /** Height [drawing unit], at least 110. */
  readonly height: number;
}

interface Frame {
  readonly size: number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  /** Length of the seam [m]. */
  readonly length: number;
  /** Depths in the shown unit. */
  readonly down: ValueAxis;
  /** Shown units per metre. */
  readonly perMetre: number;
}

/** Draws the depths that were gauged along the seam, against what is accepted; each verdict has a mark of its own. */
export function depthDrawing(input: DepthDrawingInput): Drawing {
  const width = Math.max(260, input.width);
  const height = Math.max(110, input.height);
  const frame = frameOf(input, width, height);
  const { size } = frame;
  const rows = legendRows(legendEntries(size), width - size, size);
  return {
    width,
    height,
    title: 'Depths along the seam',
    description: describe(input),
    marks: [
      ...acceptedMarks(input.job, frame),
      ...axes(input, frame),
      ...input.stations.flatMap((station) => stationMarks(station, input, frame)),
      ...drawLegend(rows, { x: 0.4 * size, y: frame.bottom + 1.9 * size }, size),
    ],
  };
}

function frameOf({ job, stations, units }: DepthDrawingInput, width: number, height: number): Frame {
  const size = 9;
  const perMetre = units === 'inch' ? 1 / 0.0254 : 1000;
  const { wanted, plus, minus } = job.groove.depth;
  const depths = [wanted - minus, wanted + plus, ...stations.map(({ depth }) => depth)];
  const down = valueAxis(
    depths.map((depth) => depth * perMetre),
    4,
  );
  const labels = down.ticks.map((tick) => textWidth(tickText(down, tick), size));
  const legend = legendRows(legendEntries(size), width - size, size).length * legendRowHeight(size);
  return {
    size,
    left: Math.max(...labels) + 1.4 * size,
    right: width - 3.4 * size,
    top: 1.9 * size,
    bottom: height - legend - 2.3 * size,
    length: job.seam.length,
    down,
    perMetre,
  };
}

function place(frame: Frame, along: number, depth: number): DrawingPoint {
  const share = Math.min(1, Math.max(0, along / frame.length));
  return {
    x: frame.left + share * (frame.right - frame.left),
    y: frame.top + axisShare(frame.down, depth * frame.perMetre) * (frame.bottom - frame.top),
  };
}

function acceptedMarks({ groove }: Job, frame: Frame): Mark[] {
  const { wanted, plus, minus } = groove.depth;
  const across = (depth: number): [DrawingPoint, DrawingPoint] => [
    place(frame, 0, depth),
    place(frame, frame.length, depth),
  ];
  const [a, b] = across(wanted - minus);
  const [d, c] = across(wanted + plus);
  const [from, to] = across(wanted);
  return [
    { kind: 'area', role: 'tolerance', points: [a, b, c, d] },
    { kind: 'line', role: 'tolerance-limit', from: a, to: b },
    { kind: 'line', role: 'tolerance-limit', from: d, to: c },
    { kind: 'line', role: 'target', from, to },
  ];
}

function axes({ units }: DepthDrawingInput, frame: Frame): Mark[] {
  const { size, left, right, top, bottom, length, down } = frame;
  const marks: Mark[] = [
    { kind: 'line', role: 'axis', from: { x: left, y: top }, to: { x: left, y: bottom } },
    { kind: 'line', role: 'axis', from: { x: left, y: bottom }, to: { x: right, y: bottom } },
  ];
  const text = (at: DrawingPoint, words: string, anchor: 'start' | 'middle' | 'end'): Mark => ({
    kind: 'text',
    role: 'axis',
    at,
    text: words,
    anchor,
    size,
  });
  for (const tick of down.ticks) {
    const y = top + axisShare(down, tick) * (bottom - top);
    marks.push({ kind: 'tick', role: 'axis', from: { x: left - 0.4 * size, y }, to: { x: left, y } });
    marks.push(text({ x: left - 0.6 * size, y: y + 0.35 * size }, tickText(down, tick), 'end'));
  }
  marks.push(text({ x: 0.4 * size, y: top - 0.9 * size }, `depth, ${fineUnit(units)}`, 'start'));
  const axis = lengthAxis(length, Math.max(2, (right - left) / (6 * size)), units);
  for (let index = 0; index * axis.step <= length * (1 + 1e-9); index += 1) {
    const { x } = place(frame, index * axis.step, 0);
    marks.push({ kind: 'tick', role: 'axis', from: { x, y: bottom }, to: { x, y: bottom + 0.4 * size } });
    marks.push(text({ x, y: bottom + 1.4 * size }, axisText(axis, index * axis.step), 'middle'));
  }
  marks.push(text({ x: right + 1.2 * size, y: bottom + 1.4 * size }, axis.unit, 'start'));
  return marks;
}

type Shape = 'holds' | 'tight' | 'fails';

/** A square that holds, a triangle that is tight, a cross that fails. */
function shapeMarks(shape: Shape, { x, y }: DrawingPoint, half: number): Mark[] {
  if (shape === 'fails') {
    const line = (sign: number): Mark => ({
      kind: 'line',
      role: 'floor-median',
      from: { x: x - half, y: y - sign * half },
      to: { x: x + half, y: y + sign * half },
    });
    return [line(1), line(-1)];
  }
  const points =
    shape === 'holds'
      ? [
          { x: x - half, y: y - half },
          { x: x + half, y: y - half },
          { x: x + half, y: y + half },
          { x: x - half, y: y + half },
        ]
      : [
          { x, y: y - 1.2 * half },
          { x: x + 1.2 * half, y: y + half },
          { x: x - 1.2 * half, y: y + half },
        ];
  return [
    { kind: 'area', role: shape === 'holds' ? 'start' : 'gauge-station', points },
    { kind: 'polyline', role: 'surface', points: [...points, points[0]!] },
  ];
}

function stationMarks(station: Station, { job, units, u }: DepthDrawingInput, frame: Frame): Mark[] {
  const { verdict } = judgeStation(station, job, units, u);
  if (verdict === null) return [];
  return shapeMarks(verdict, place(frame, station.at, station.depth), 0.4 * frame.size);
}

function legendEntries(size: number): readonly LegendEntry[] {
  const shape = (name: Shape): LegendEntry => ({
    text: name,
    width: size,
    sample: ({ x, y }) => shapeMarks(name, { x: x + 0.5 * size, y }, 0.4 * size),
  });
  return [
    shape('holds'),
    shape('tight'),
    shape('fails'),
    {
      text: 'wanted depth',
      width: 2.2 * size,
      sample: ({ x, y }) => [{ kind: 'line', role: 'target', from: { x, y }, to: { x: x + 2.2 * size, y } }],
    },
    {
      text: 'accepted',
      width: 2.2 * size,
      sample: ({ x, y }) => [
        { kind: 'line', role: 'tolerance-limit', from: { x, y }, to: { x: x + 2.2 * size, y } },
      ],
    },
  ];
}

function describe({ job, stations, units }: DepthDrawingInput): string {
  const fine = (value: number): string => `${fineNumber(value, units)} ${fineUnit(units)}`;
  const depths = stations.map(({ depth }) => depth);
  if (depths.length === 0) return 'No depth was gauged.';
  const { wanted, plus, minus } = job.groove.depth;
  return (
    `${depths.length} depths from ${fine(Math.min(...depths))} to ${fine(Math.max(...depths))}; ` +
    `accepted are ${fine(wanted - minus)} to ${fine(wanted + plus)}.`
  );
}
