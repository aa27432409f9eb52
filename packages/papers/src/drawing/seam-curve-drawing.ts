import type { SurveySeam, UnitSystem } from '@furrow/engine';
import { formatStated } from '@furrow/engine';
import { fineStated, fineUnit } from '../words/index.ts';
import type { Drawing, DrawingPoint, Mark, MarkRole } from './drawing.ts';
import { hatch } from './hatch.ts';
import { drawLegend, type LegendEntry, legendRowHeight, legendRows } from './legend.ts';
import { axisText, lengthAxis } from './length-axis.ts';
import { textWidth } from './text-width.ts';
import { axisShare, tickText, type ValueAxis, valueAxis } from './value-axis.ts';

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
  readonly at_mm: number;
  readonly value: number;
  readonly u95: number;
  readonly used: boolean;
}

/** One curve along the seam, in millimetres. */
interface Track {
  readonly title: string;
  /** What its axis is called. */
  readonly label: string;
  /** Depths grow downwards as the groove does; widths and plate left grow upwards. */
  readonly grows: 'down' | 'up';
  readonly least: number;
  /** Undefined where more is always accepted. */
  readonly most: number | undefined;
  readonly course: readonly (Interval & { readonly at_mm: number })[];
  readonly stretches: SurveySeam['stretches'];
  readonly readings: readonly ReadValue[];
  readonly next: SurveySeam['measure_next'];
  readonly cutAgain: SurveySeam['cut_again'];
}

function trackOf(seam: SurveySeam, of: SeamCurve): Track {
  const cutAgain = seam.cut_again;
  const course = (from: (place: SurveySeam['curve'][number]) => Interval): Track['course'] =>
    seam.curve.map((place) => ({ at_mm: place.at_mm, ...from(place) }));
  const depths = seam.readings.map(
    ({ at_mm, depth_mm, used }): ReadValue => ({ at_mm, value: depth_mm.value, u95: depth_mm.u95, used }),
  );
  switch (of) {
    case 'depth':
      return {
        title: 'Depth along the seam',
        label: 'depth',
        grows: 'down',
        least: seam.limits.least_mm,
        most: seam.limits.most_mm,
        course: course(({ depth_mm }) => depth_mm),
        stretches: seam.stretches,
        readings: depths,
        next: seam.measure_next,
        cutAgain,
      };
    case 'width':
      return {
        title: 'Width along the seam',
        label: 'width',
        grows: 'up',
        least: seam.width.limits.least_mm,
        most: seam.width.limits.most_mm,
        course: course(({ width_mm }) => width_mm),
        stretches: seam.width.stretches,
        readings: seam.readings.flatMap(({ at_mm, width_mm, used }) =>
          width_mm === null ? [] : [{ at_mm, value: width_mm.value, u95: width_mm.u95, used }],
        ),
        next: [],
        cutAgain,
      };
    case 'remaining': {
      const [first] = seam.curve;
      const plate = (first?.depth_mm.p50 ?? 0) + (first?.remaining_mm.p50 ?? 0);
      return {
        title: 'Plate left along the seam',
        label: 'plate left',
        grows: 'up',
        least: seam.remaining.least_mm,
        most: undefined,
        course: course(({ remaining_mm }) => remaining_mm),
        stretches: seam.remaining.stretches,
        readings: depths.map((reading) => ({ ...reading, value: plate - reading.value })),
        next: [],
        cutAgain,
      };
    }
  }
}

interface Frame {
  readonly size: number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  /** Lower end of the values. */
  readonly bottom: number;
  /** Middle of the lane of verdicts. */
  readonly lane: number;
  /** Places of the ends [mm]. */
  readonly from: number;
  readonly to: number;
  /** Values in the shown unit. */
  readonly axis: ValueAxis;
  readonly grows: Track['grows'];
  readonly units: UnitSystem;
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
  const height = Math.max(150, input.height);
  const frame = frameOf(track, units, width, height);
  const { size } = frame;
  const rows = legendRows(legendEntries(track, size), width - size, size);
  return {
    width,
    height,
    title: track.title,
    description: describe(track, units),
    marks: [
      ...acceptedMarks(track, frame),
      ...curveMarks(track, frame),
      ...axes(track, frame),
      ...verdictMarks(track, frame),
      ...track.readings.flatMap((reading) => readingMarks(reading, frame)),
      ...track.next.map(({ at_mm }) => nextMark(xOf(frame, at_mm), frame)),
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
  const axis = valueAxis(
    [least, ...(most === undefined ? [] : [most]), ...band, ...used.map(({ value }) => value)].map((value) =>
      shown(value, units),
    ),
    4,
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
    from: Math.min(0, course[0]?.at_mm ?? 0),
    to: course.at(-1)?.at_mm ?? 1,
    axis,
    grows,
    units,
  };
}

/** A length in the unit of the axis. */
function shown(millimetres: number, units: UnitSystem): number {
  return units === 'inch' ? millimetres / 25.4 : millimetres;
}

function xOf({ left, right, from, to }: Frame, at_mm: number): number {
  return left + Math.min(1, Math.max(0, (at_mm - from) / Math.max(1e-9, to - from))) * (right - left);
}

/** Height of a share of the axis. */
function yOf({ top, bottom, grows }: Frame, share: number): number {
  return grows === 'down' ? top + share * (bottom - top) : bottom - share * (bottom - top);
}

function place(frame: Frame, at_mm: number, value: number): DrawingPoint {
  return { x: xOf(frame, at_mm), y: yOf(frame, axisShare(frame.axis, shown(value, frame.units))) };
}

function acceptedMarks({ least, most }: Track, frame: Frame): Mark[] {
  const across = (value: number): [DrawingPoint, DrawingPoint] => [
    place(frame, frame.from, value),
    place(frame, frame.to, value),
  ];
  const [a, b] = across(least);
  const limit = (from: DrawingPoint, to: DrawingPoint): Mark => ({
    kind: 'line',
    role: 'tolerance-limit',
    from,
    to,
  });
  const [d, c] = across(most ?? frame.axis.to * (frame.units === 'inch' ? 25.4 : 1));
  return [
    { kind: 'area', role: 'tolerance', points: [a, b, c, d] },
    limit(a, b),
    ...(most === undefined ? [] : [limit(d, c)]),
  ];
}

function curveMarks({ course: places, cutAgain }: Track, frame: Frame): Mark[] {
  const course = (of: keyof Interval): DrawingPoint[] =>
    places.map((each) => place(frame, each.at_mm, each[of]));
  const band = [...course('p95'), ...course('p05').reverse()];
  const ends = cutAgain.flatMap(({ from_mm, to_mm }) => [from_mm, to_mm]);
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

function axes({ label }: Track, frame: Frame): Mark[] {
  const { size, left, right, top, bottom, lane, from, to, axis, units } = frame;
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
    const y = yOf(frame, axisShare(axis, tick));
    marks.push({ kind: 'tick', role: 'axis', from: { x: left - 0.4 * size, y }, to: { x: left, y } });
    marks.push(text({ x: left - 0.6 * size, y: y + 0.35 * size }, tickText(axis, tick), 'end'));
  }
  const y = lane + 0.8 * size;
  marks.push({ kind: 'line', role: 'axis', from: { x: left, y }, to: { x: right, y } });
  const along = lengthAxis((to - from) / 1000, Math.max(2, (right - left) / (6 * size)), units);
  for (let index = 0; index * along.step <= (to / 1000) * (1 + 1e-9); index += 1) {
    const x = xOf(frame, 1000 * index * along.step);
    marks.push({ kind: 'tick', role: 'axis', from: { x, y }, to: { x, y: y + 0.4 * size } });
    marks.push(text({ x, y: y + 1.5 * size }, axisText(along, index * along.step), 'middle'));
  }
  marks.push(text({ x: right + 0.9 * size, y: y + 1.5 * size }, along.unit, 'start'));
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

function verdictMarks({ stretches }: Track, frame: Frame): Mark[] {
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
function readingMarks({ at_mm, value, u95, used }: ReadValue, frame: Frame): Mark[] {
  const at = place(frame, at_mm, value);
  if (!used) return [dot(at, 0.34 * frame.size, 'break')];
  const [from, to] = [-u95, u95].map((off) => place(frame, at_mm, value + off));
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
      ? `at least ${formatStated(least, 'mm', units)} is to be left`
      : `accepted are ${fineStated(least, units)} to ${formatStated(most, 'mm', units)}`;
  return (
    `Median ${label} from ${fineStated(Math.min(...medians), units)} to ${formatStated(Math.max(...medians), 'mm', units)}; ` +
    `${accepted}. ${used === 1 ? '1 reading counts' : `${used} readings count`}.`
  );
}
