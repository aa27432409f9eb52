import type { SurveySeam, UnitSystem } from '@furrow/engine';
import { formatStated } from '@furrow/engine';
import { fineStated, fineUnit } from '../words/index.ts';
import type { Drawing, DrawingPoint, Mark, MarkRole } from './drawing.ts';
import { hatch } from './hatch.ts';
import { drawLegend, type LegendEntry, legendRowHeight, legendRows } from './legend.ts';
import { axisText, lengthAxis } from './length-axis.ts';
import { textWidth } from './text-width.ts';
import { axisShare, tickText, type ValueAxis, valueAxis } from './value-axis.ts';

/** What the depth along the seam is drawn of, and how large. */
export interface SeamDepthDrawingInput {
  readonly seam: SurveySeam;
  readonly units: UnitSystem;
  /** Width [drawing unit], at least 260. */
  readonly width: number;
  /** Height [drawing unit], at least 150. */
  readonly height: number;
}

interface Frame {
  readonly size: number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  /** Lower end of the depths. */
  readonly bottom: number;
  /** Middle of the lane of verdicts. */
  readonly lane: number;
  /** Places of the ends [mm]. */
  readonly from: number;
  readonly to: number;
  /** Depths in the shown unit. */
  readonly down: ValueAxis;
}

/**
 * Draws the depth along the seam as prediction and readings have it: the curve with its band over what is accepted, each
 * reading with its interval, the verdict of each stretch in a lane below, and where to measure next. Verdicts differ by
 * shape, readings that do not count are open.
 */
export function seamDepthDrawing(input: SeamDepthDrawingInput): Drawing {
  const { seam, units } = input;
  const width = Math.max(260, input.width);
  const height = Math.max(150, input.height);
  const frame = frameOf(input, width, height);
  const { size } = frame;
  const rows = legendRows(legendEntries(seam, size), width - size, size);
  return {
    width,
    height,
    title: 'Depth along the seam',
    description: describe(input),
    marks: [
      ...acceptedMarks(seam, frame, units),
      ...curveMarks(seam, frame, units),
      ...axes(frame, units),
      ...verdictMarks(seam, frame),
      ...seam.readings.flatMap((reading) => readingMarks(reading, frame, units)),
      ...seam.measure_next.map(({ at_mm }) => nextMark(xOf(frame, at_mm), frame)),
      ...drawLegend(rows, { x: 0.4 * size, y: frame.lane + 2.9 * size }, size),
    ],
  };
}

const LETTERS = { least: 8.5, most: 12.5 } as const;

function frameOf({ seam, units }: SeamDepthDrawingInput, width: number, height: number): Frame {
  const size = Math.min(LETTERS.most, Math.max(LETTERS.least, width / 62));
  const { least_mm, most_mm } = seam.limits;
  const used = seam.readings.filter(({ used: counts }) => counts);
  const spread = most_mm - least_mm;
  // a curve that nothing is known of would flatten all that is
  const band = seam.curve.flatMap(({ depth_mm: { p05, p95 } }) => [
    Math.max(0, Math.max(p05, least_mm - 2 * spread)),
    Math.min(p95, most_mm + 2 * spread),
  ]);
  const down = valueAxis(
    [least_mm, most_mm, ...band, ...used.map(({ depth_mm }) => depth_mm.value)].map((depth) =>
      shown(depth, units),
    ),
    4,
  );
  const labels = down.ticks.map((tick) => textWidth(tickText(down, tick), size));
  const legend = legendRows(legendEntries(seam, size), width - size, size).length * legendRowHeight(size);
  const lane = height - legend - 3.3 * size;
  return {
    size,
    left: Math.max(...labels) + 1.4 * size,
    right: width - 2.4 * size,
    top: 1.9 * size,
    bottom: lane - 1.3 * size,
    lane,
    from: Math.min(0, seam.curve[0]?.at_mm ?? 0),
    to: seam.curve.at(-1)?.at_mm ?? 1,
    down,
  };
}

/** A depth in the unit of the axis. */
function shown(depth_mm: number, units: UnitSystem): number {
  return units === 'inch' ? depth_mm / 25.4 : depth_mm;
}

function xOf({ left, right, from, to }: Frame, at_mm: number): number {
  return left + Math.min(1, Math.max(0, (at_mm - from) / Math.max(1e-9, to - from))) * (right - left);
}

function place(frame: Frame, at_mm: number, depth_mm: number, units: UnitSystem): DrawingPoint {
  const share = axisShare(frame.down, shown(depth_mm, units));
  return { x: xOf(frame, at_mm), y: frame.top + share * (frame.bottom - frame.top) };
}

function acceptedMarks({ limits }: SurveySeam, frame: Frame, units: UnitSystem): Mark[] {
  const across = (depth: number): [DrawingPoint, DrawingPoint] => [
    place(frame, frame.from, depth, units),
    place(frame, frame.to, depth, units),
  ];
  const [a, b] = across(limits.least_mm);
  const [d, c] = across(limits.most_mm);
  return [
    { kind: 'area', role: 'tolerance', points: [a, b, c, d] },
    { kind: 'line', role: 'tolerance-limit', from: a, to: b },
    { kind: 'line', role: 'tolerance-limit', from: d, to: c },
  ];
}

function curveMarks({ curve, cut_again }: SurveySeam, frame: Frame, units: UnitSystem): Mark[] {
  const course = (of: 'p05' | 'p50' | 'p95'): DrawingPoint[] =>
    curve.map(({ at_mm, depth_mm }) => place(frame, at_mm, depth_mm[of], units));
  const band = [...course('p95'), ...course('p05').reverse()];
  const ends = cut_again.flatMap(({ from_mm, to_mm }) => [from_mm, to_mm]);
  return [
    { kind: 'area', role: 'floor-band', points: band },
    ...hatch(band, 0.6 * frame.size, 'floor-hatch'),
    { kind: 'polyline', role: 'course', points: course('p50') },
    ...ends.map((at): Mark => {
      const x = xOf(frame, at);
      return {
        kind: 'line',
        role: 'course-event',
        from: { x, y: frame.top },
        to: { x, y: frame.lane + 0.6 * frame.size },
      };
    }),
  ];
}

function axes(frame: Frame, units: UnitSystem): Mark[] {
  const { size, left, right, top, bottom, lane, from, to, down } = frame;
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
    text({ x: 0.4 * size, y: top - 0.8 * size }, `depth, ${fineUnit(units)}`, 'start'),
  ];
  for (const tick of down.ticks) {
    const y = top + axisShare(down, tick) * (bottom - top);
    marks.push({ kind: 'tick', role: 'axis', from: { x: left - 0.4 * size, y }, to: { x: left, y } });
    marks.push(text({ x: left - 0.6 * size, y: y + 0.35 * size }, tickText(down, tick), 'end'));
  }
  const y = lane + 0.8 * size;
  marks.push({ kind: 'line', role: 'axis', from: { x: left, y }, to: { x: right, y } });
  const axis = lengthAxis((to - from) / 1000, Math.max(2, (right - left) / (6 * size)), units);
  for (let index = 0; index * axis.step <= (to / 1000) * (1 + 1e-9); index += 1) {
    const x = xOf(frame, 1000 * index * axis.step);
    marks.push({ kind: 'tick', role: 'axis', from: { x, y }, to: { x, y: y + 0.4 * size } });
    marks.push(text({ x, y: y + 1.5 * size }, axisText(axis, index * axis.step), 'middle'));
  }
  marks.push(text({ x: right + 0.9 * size, y: y + 1.5 * size }, axis.unit, 'start'));
  return marks;
}

type Verdict = SurveySeam['verdict'];

/** A bar that holds, a hatched one in doubt, one struck through that fails. */
function barMarks(verdict: Verdict, from: DrawingPoint, to: DrawingPoint, half: number): Mark[] {
  const box = [
    { x: from.x, y: from.y - half },
    { x: to.x, y: to.y - half },
    { x: to.x, y: to.y + half },
    { x: from.x, y: from.y + half },
  ];
  const outline: Mark = { kind: 'polyline', role: 'surface', points: [...box, box[0]!] };
  switch (verdict) {
    case 'holds':
      return [{ kind: 'area', role: 'floor-band', points: box }, outline];
    case 'in_doubt':
      return [...hatch(box, half, 'floor-hatch'), outline];
    case 'fails':
      return [
        { kind: 'area', role: 'gauge-station', points: box },
        outline,
        { kind: 'line', role: 'course-below', from: box[3]!, to: box[1]! },
        { kind: 'line', role: 'course-below', from: box[0]!, to: box[2]! },
      ];
  }
}

function verdictMarks({ stretches }: SurveySeam, frame: Frame): Mark[] {
  return stretches.flatMap(({ from_mm, to_mm, verdict }) =>
    barMarks(
      verdict,
      { x: xOf(frame, from_mm), y: frame.lane },
      { x: xOf(frame, to_mm), y: frame.lane },
      0.5 * frame.size,
    ),
  );
}

/** A reading as a dot with its interval; open where it does not count. */
function readingMarks(
  { at_mm, depth_mm, used }: SurveySeam['readings'][number],
  frame: Frame,
  units: UnitSystem,
): Mark[] {
  const { value, u95 } = depth_mm;
  const at = place(frame, at_mm, value, units);
  if (!used) return [dot(at, 0.34 * frame.size, 'break')];
  const [from, to] = [-u95, u95].map((off) => place(frame, at_mm, value + off, units));
  return [{ kind: 'line', role: 'surface', from: from!, to: to! }, filled(at, 0.34 * frame.size)];
}

const CORNERS = 10;

function ring({ x, y }: DrawingPoint, radius: number): DrawingPoint[] {
  return Array.from({ length: CORNERS }, (_, index) => {
    const angle = (2 * Math.PI * index) / CORNERS;
    return { x: x + radius * Math.cos(angle), y: y + radius * Math.sin(angle) };
  });
}

function dot(at: DrawingPoint, radius: number, role: MarkRole): Mark {
  const points = ring(at, radius);
  return { kind: 'polyline', role, points: [...points, points[0]!] };
}

function filled(at: DrawingPoint, radius: number): Mark {
  return { kind: 'area', role: 'start', points: ring(at, radius) };
}

/** Where to measure next: a triangle that points down at its place. */
function nextMark(x: number, { top, size }: Frame): Mark {
  return {
    kind: 'area',
    role: 'start',
    points: [
      { x: x - 0.6 * size, y: top - 1.1 * size },
      { x: x + 0.6 * size, y: top - 1.1 * size },
      { x, y: top - 0.1 * size },
    ],
  };
}

function legendEntries(seam: SurveySeam, size: number): readonly LegendEntry[] {
  const width = 2.2 * size;
  const box = ({ x, y }: DrawingPoint): DrawingPoint[] => [
    { x, y: y - 0.45 * size },
    { x: x + width, y: y - 0.45 * size },
    { x: x + width, y: y + 0.45 * size },
    { x, y: y + 0.45 * size },
  ];
  const bar = (verdict: Verdict, text: string): LegendEntry => ({
    text,
    width,
    sample: ({ x, y }) => barMarks(verdict, { x, y }, { x: x + width, y }, 0.45 * size),
  });
  const has = (verdict: Verdict): boolean => seam.stretches.some((each) => each.verdict === verdict);
  return [
    {
      text: 'depth, 90 in 100',
      width,
      sample: (left) => [
        { kind: 'area', role: 'floor-band', points: box(left) },
        ...hatch(box(left), 0.6 * size, 'floor-hatch'),
        { kind: 'line', role: 'course', from: left, to: { x: left.x + width, y: left.y } },
      ],
    },
    {
      text: 'accepted',
      width,
      sample: (left) => {
        const [a, b, c, d] = box(left) as [DrawingPoint, DrawingPoint, DrawingPoint, DrawingPoint];
        return [
          { kind: 'area', role: 'tolerance', points: [a, b, c, d] },
          { kind: 'line', role: 'tolerance-limit', from: a, to: b },
          { kind: 'line', role: 'tolerance-limit', from: d, to: c },
        ];
      },
    },
    ...(seam.readings.some(({ used }) => used)
      ? [
          {
            text: 'reading',
            width: 0.8 * size,
            sample: ({ x, y }: DrawingPoint) => [filled({ x: x + 0.4 * size, y }, 0.34 * size)],
          },
        ]
      : []),
    ...(seam.readings.some(({ used }) => !used)
      ? [
          {
            text: 'does not count',
            width: 0.8 * size,
            sample: ({ x, y }: DrawingPoint) => [dot({ x: x + 0.4 * size, y }, 0.34 * size, 'break')],
          },
        ]
      : []),
    ...(seam.measure_next.length === 0
      ? []
      : [
          {
            text: 'measure next',
            width: 1.2 * size,
            sample: ({ x, y }: DrawingPoint): readonly Mark[] => [
              {
                kind: 'area',
                role: 'start',
                points: [
                  { x, y: y - 0.5 * size },
                  { x: x + 1.2 * size, y: y - 0.5 * size },
                  { x: x + 0.6 * size, y: y + 0.5 * size },
                ],
              },
            ],
          },
        ]),
    ...(has('holds') ? [bar('holds', 'holds')] : []),
    ...(has('in_doubt') ? [bar('in_doubt', 'in doubt')] : []),
    ...(has('fails') ? [bar('fails', 'fails')] : []),
    ...(seam.cut_again.length === 0
      ? []
      : [
          {
            text: 'cut again between',
            width,
            sample: ({ x, y }: DrawingPoint): readonly Mark[] => [
              { kind: 'line', role: 'course-event', from: { x, y }, to: { x: x + width, y } },
            ],
          },
        ]),
  ];
}

function describe({ seam, units }: SeamDepthDrawingInput): string {
  const { least_mm, most_mm } = seam.limits;
  const depths = seam.curve.map(({ depth_mm }) => depth_mm.p50);
  const used = seam.readings.filter(({ used: counts }) => counts).length;
  return (
    `Median depth from ${fineStated(Math.min(...depths), units)} to ${formatStated(Math.max(...depths), 'mm', units)}; ` +
    `accepted are ${fineStated(least_mm, units)} to ${formatStated(most_mm, 'mm', units)}. ` +
    `${used === 1 ? '1 reading counts' : `${used} readings count`}.`
  );
}
