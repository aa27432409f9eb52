import { formatAmount, fromUnit, type SurveySeam, type UnitSystem } from '@furrow/engine';
import { fineNumber } from '../words/index.ts';
import type { Drawing, DrawingPoint, Mark, MarkRole } from './drawing.ts';
import { hatch } from './hatch.ts';
import { drawLegend, type LegendEntry, legendRowHeight, legendRows } from './legend.ts';
import { acceptedMarks, chartAxes, chartAxis, chartPoint, chartX, type SeamChart } from './seam-chart.ts';
import { textWidth } from './text-width.ts';
import { tickText } from './value-axis.ts';

/** What is drawn along the seam. */
export type SeamCurve = 'depth' | 'width' | 'remaining';

/** What a curve along the seam is drawn of, and how large. */
export interface SeamCurveDrawingInput {
  readonly seam: SurveySeam;
  /** Depth below the plate, width at the surface, or plate left under the groove; left out: the depth. */
  readonly of?: SeamCurve;
  readonly units: UnitSystem;
  /** Width [drawing unit], at least 260. */
  readonly width: number;
  /** Height [drawing unit], at least 150. */
  readonly height: number;
}

interface Interval {
  readonly p05: number;
  readonly p50: number;
  readonly p95: number;
}

interface ReadValue {
  readonly at: number;
  readonly value: number;
  readonly u95: number;
  readonly used: boolean;
}

/** A stretch of the seam with its verdict. */
interface Judged {
  readonly from: number;
  readonly to: number;
  readonly verdict: SurveySeam['verdict'];
}

/** One curve along the seam, in SI. */
interface Track {
  readonly title: string;
  /** What its axis is called. */
  readonly label: string;
  /** Depths grow downwards as the groove does; widths and plate left grow upwards. */
  readonly grows: 'down' | 'up';
  readonly least: number;
  /** Undefined where more is always accepted. */
  readonly most: number | undefined;
  readonly course: readonly (Interval & { readonly at: number })[];
  readonly stretches: readonly Judged[];
  readonly readings: readonly ReadValue[];
  /** Places to measure next. */
  readonly next: readonly number[];
  /** Ends of what was cut again. */
  readonly cutAgain: readonly number[];
}

const metres = (millimetres: number): number => fromUnit(millimetres, 'mm');

/** The track that a survey has of a quantity: what it states in millimetres comes into SI here and nowhere else. */
function trackOf(seam: SurveySeam, of: SeamCurve): Track {
  const course = (from: (place: SurveySeam['curve'][number]) => Interval): Track['course'] =>
    seam.curve.map((place) => {
      const { p05, p50, p95 } = from(place);
      return { at: metres(place.at_mm), p05: metres(p05), p50: metres(p50), p95: metres(p95) };
    });
  const judged = (stretches: SurveySeam['stretches']): readonly Judged[] =>
    stretches.map(({ from_mm, to_mm, verdict }) => ({ from: metres(from_mm), to: metres(to_mm), verdict }));
  const read = (
    { at_mm, used }: SurveySeam['readings'][number],
    { value, u95 }: { readonly value: number; readonly u95: number },
  ): ReadValue => ({ at: metres(at_mm), value: metres(value), u95: metres(u95), used });
  const depths = seam.readings.map((reading) => read(reading, reading.depth_mm));
  const cutAgain = seam.cut_again.flatMap(({ from_mm, to_mm }) => [metres(from_mm), metres(to_mm)]);
  switch (of) {
    case 'depth':
      return {
        title: 'Depth along the seam',
        label: 'depth',
        grows: 'down',
        least: metres(seam.limits.least_mm),
        most: metres(seam.limits.most_mm),
        course: course(({ depth_mm }) => depth_mm),
        stretches: judged(seam.stretches),
        readings: depths,
        next: seam.measure_next.map(({ at_mm }) => metres(at_mm)),
        cutAgain,
      };
    case 'width':
      return {
        title: 'Width along the seam',
        label: 'width',
        grows: 'up',
        least: metres(seam.width.limits.least_mm),
        most: metres(seam.width.limits.most_mm),
        course: course(({ width_mm }) => width_mm),
        stretches: judged(seam.width.stretches),
        readings: seam.readings.flatMap((reading) =>
          reading.width_mm === null ? [] : [read(reading, reading.width_mm)],
        ),
        next: [],
        cutAgain,
      };
    case 'remaining': {
      const [first] = seam.curve;
      const plate = metres((first?.depth_mm.p50 ?? 0) + (first?.remaining_mm.p50 ?? 0));
      return {
        title: 'Plate left along the seam',
        label: 'plate left',
        grows: 'up',
        least: metres(seam.remaining.least_mm),
        most: undefined,
        course: course(({ remaining_mm }) => remaining_mm),
        stretches: judged(seam.remaining.stretches),
        readings: depths.map((reading) => ({ ...reading, value: plate - reading.value })),
        next: [],
        cutAgain,
      };
    }
  }
}

/** The chart with the lane of verdicts below it. */
interface Frame extends SeamChart {
  /** Middle of the lane [drawing unit]. */
  readonly lane: number;
}

/**
 * Draws depth, width or plate left along the seam as prediction and readings have it: the curve with its band over what is
 * accepted, each reading with its interval, the verdict of each stretch in a lane below, and where to measure next.
 * Verdicts differ by shape, readings that do not count are open.
 */
export function seamCurveDrawing(input: SeamCurveDrawingInput): Drawing {
  const { seam, units, of = 'depth' } = input;
  const track = trackOf(seam, of);
  const width = Math.max(260, input.width);
  const height = Math.max(120, input.height);
  const frame = frameOf(track, units, width, height);
  const { size } = frame;
  const rows = legendRows(legendEntries(track, size), width - size, size);
  return {
    width,
    height,
    title: track.title,
    description: describe(track, units),
    marks: [
      ...acceptedMarks(frame, track.least, track.most),
      ...curveMarks(track, frame),
      ...chartAxes(frame, track.label),
      ...verdictMarks(track, frame),
      ...track.readings.flatMap((reading) => readingMarks(reading, frame)),
      ...track.next.map((at) => nextMark(chartX(frame, at), frame)),
      ...drawLegend(rows, { x: 0.4 * size, y: frame.lane + 2.9 * size }, size),
    ],
  };
}

const LETTERS = { least: 8.5, most: 12.5 } as const;

function frameOf(track: Track, units: UnitSystem, width: number, height: number): Frame {
  const size = Math.min(LETTERS.most, Math.max(LETTERS.least, width / 62));
  const { least, most, course, grows } = track;
  const used = track.readings.filter(({ used: counts }) => counts);
  const medians = course.map(({ p50 }) => p50);
  const highest = most ?? Math.max(least, ...medians);
  const spread = Math.max(highest - least, 0.1 * highest);
  // a curve that nothing is known of would flatten all that is
  const band = course.flatMap(({ p05, p95 }) => [
    Math.max(0, Math.max(p05, least - 2 * spread)),
    Math.min(p95, highest + 2 * spread),
  ]);
  const axis = chartAxis(
    [least, ...(most === undefined ? [] : [most]), ...band, ...used.map(({ value }) => value)],
    units,
  );
  const labels = axis.ticks.map((tick) => textWidth(tickText(axis, tick), size));
  const legend = legendRows(legendEntries(track, size), width - size, size).length * legendRowHeight(size);
  const lane = height - legend - 3.3 * size;
  return {
    size,
    left: Math.max(...labels) + 1.4 * size,
    right: width - 2.4 * size,
    top: 1.9 * size,
    bottom: lane - 1.3 * size,
    lane,
    foot: lane + 0.8 * size,
    from: Math.min(0, course[0]?.at ?? 0),
    to: course.at(-1)?.at ?? 1,
    axis,
    grows,
    units,
  };
}

function curveMarks({ course: places, cutAgain }: Track, frame: Frame): Mark[] {
  const course = (of: keyof Interval): DrawingPoint[] =>
    places.map((each) => chartPoint(frame, each.at, each[of]));
  const band = [...course('p95'), ...course('p05').reverse()];
  return [
    { kind: 'area', role: 'floor-band', points: band },
    ...hatch(band, 0.6 * frame.size, 'floor-hatch'),
    { kind: 'polyline', role: 'course', points: course('p50') },
    ...cutAgain.map((at): Mark => {
      const x = chartX(frame, at);
      return {
        kind: 'line',
        role: 'course-event',
        from: { x, y: frame.top },
        to: { x, y: frame.lane + 0.6 * frame.size },
      };
    }),
  ];
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

function verdictMarks({ stretches }: Track, frame: Frame): Mark[] {
  return stretches.flatMap(({ from, to, verdict }) =>
    barMarks(
      verdict,
      { x: chartX(frame, from), y: frame.lane },
      { x: chartX(frame, to), y: frame.lane },
      0.5 * frame.size,
    ),
  );
}

/** A reading as a dot with its interval; open where it does not count. */
function readingMarks({ at: along, value, u95, used }: ReadValue, frame: Frame): Mark[] {
  const at = chartPoint(frame, along, value);
  if (!used) return [dot(at, 0.34 * frame.size, 'break')];
  const [from, to] = [-u95, u95].map((off) => chartPoint(frame, along, value + off));
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

function legendEntries(track: Track, size: number): readonly LegendEntry[] {
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
  const has = (verdict: Verdict): boolean => track.stretches.some((each) => each.verdict === verdict);
  return [
    {
      text: `${track.label}, 90 in 100`,
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
    ...(track.readings.some(({ used }) => used)
      ? [
          {
            text: 'reading',
            width: 0.8 * size,
            sample: ({ x, y }: DrawingPoint) => [filled({ x: x + 0.4 * size, y }, 0.34 * size)],
          },
        ]
      : []),
    ...(track.readings.some(({ used }) => !used)
      ? [
          {
            text: 'does not count',
            width: 0.8 * size,
            sample: ({ x, y }: DrawingPoint) => [dot({ x: x + 0.4 * size, y }, 0.34 * size, 'break')],
          },
        ]
      : []),
    ...(track.next.length === 0
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
    ...(track.cutAgain.length === 0
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

function describe({ label, least, most, course, readings }: Track, units: UnitSystem): string {
  const medians = course.map(({ p50 }) => p50);
  const used = readings.filter(({ used: counts }) => counts).length;
  const accepted =
    most === undefined
      ? `at least ${formatAmount(least, 'depth', units)} is to be left`
      : `accepted are ${fineNumber(least, units)} to ${formatAmount(most, 'depth', units)}`;
  return (
    `Median ${label} from ${fineNumber(Math.min(...medians), units)} to ${formatAmount(Math.max(...medians), 'depth', units)}; ` +
    `${accepted}. ${used === 1 ? '1 reading counts' : `${used} readings count`}.`
  );
}
