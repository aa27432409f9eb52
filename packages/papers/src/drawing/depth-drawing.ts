import { type Job, judgeStation, type Station, type UnitSystem } from '@furrow/engine';
import { fineNumber, fineUnit } from '../words/index.ts';
import type { Drawing, DrawingPoint, Mark } from './drawing.ts';
import { drawLegend, type LegendEntry, legendRowHeight, legendRows } from './legend.ts';
import { acceptedMarks, chartAxes, chartAxis, chartLevel, chartPoint, type SeamChart } from './seam-chart.ts';
import { textWidth } from './text-width.ts';
import { tickText } from './value-axis.ts';

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

/** Draws the depths that were gauged along the seam, against what is accepted; each verdict has a mark of its own. */
export function depthDrawing(input: DepthDrawingInput): Drawing {
  const width = Math.max(260, input.width);
  const height = Math.max(110, input.height);
  const chart = chartOf(input, width, height);
  const { size } = chart;
  const { wanted, plus, minus } = input.job.groove.depth;
  const [from, to] = chartLevel(chart, wanted);
  const rows = legendRows(legendEntries(size), width - size, size);
  return {
    width,
    height,
    title: 'Depths along the seam',
    description: describe(input),
    marks: [
      ...acceptedMarks(chart, wanted - minus, wanted + plus),
      { kind: 'line', role: 'target', from, to },
      ...chartAxes(chart, 'depth'),
      ...input.stations.flatMap((station) => stationMarks(station, input, chart)),
      ...drawLegend(rows, { x: 0.4 * size, y: chart.foot + 1.9 * size }, size),
    ],
  };
}

function chartOf({ job, stations, units }: DepthDrawingInput, width: number, height: number): SeamChart {
  const size = 9;
  const { wanted, plus, minus } = job.groove.depth;
  const axis = chartAxis([wanted - minus, wanted + plus, ...stations.map(({ depth }) => depth)], units);
  const labels = axis.ticks.map((tick) => textWidth(tickText(axis, tick), size));
  const legend = legendRows(legendEntries(size), width - size, size).length * legendRowHeight(size);
  const foot = height - legend - 2.3 * size;
  return {
    size,
    left: Math.max(...labels) + 1.4 * size,
    right: width - 3.4 * size,
    top: 1.9 * size,
    bottom: foot,
    foot,
    from: 0,
    to: job.seam.length,
    axis,
    grows: 'down',
    units,
  };
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

function stationMarks(station: Station, { job, units, u }: DepthDrawingInput, chart: SeamChart): Mark[] {
  const { verdict } = judgeStation(station, job, units, u);
  if (verdict === null) return [];
  return shapeMarks(verdict, chartPoint(chart, station.at, station.depth), 0.4 * chart.size);
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
