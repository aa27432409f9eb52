import type { Drawing, DrawingPoint, Mark, MarkRole } from './drawing.ts';
import { hatch } from './hatch.ts';
import { drawLegend, type LegendEntry, legendRows } from './legend.ts';
import { textWidth } from './text-width.ts';
import { axisShare, tickText, type ValueAxis, valueAxis } from './value-axis.ts';

/** One quantity over time. */
export interface Course {
  /** Values in the unit of the axis, as many as there are values across. */
  readonly up: readonly number[];
  /** What it is; needed where there are several. */
  readonly text?: string;
}

/** Quantities over time, and the level they must keep to. */
export interface CourseDrawingInput {
  readonly title: string;
  readonly description: string;
  /** Unit of the values across and up, as written at the axes. */
  readonly unit: { readonly across: string; readonly up: string };
  /** Values across, in the unit of that axis. */
  readonly across: readonly number[];
  /** At most three: each has a line style of its own. */
  readonly courses: readonly Course[];
  /** Level that counts, with its words. */
  readonly limit?: { readonly value: number; readonly text: string } | undefined;
  /** Place across from which the level is not kept, with its words; what follows is hatched. */
  readonly below?: { readonly from: number; readonly text: string } | undefined;
  /** What happens at places across, each with a word or two. */
  readonly events?: readonly { readonly at: number; readonly text: string }[];
  /** Place across that is looked at. */
  readonly now?: number | undefined;
  /** Width [drawing unit], at least 200. */
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
  readonly across: ValueAxis;
  readonly up: ValueAxis;
}

/** Line styles of the courses, in their order. */
const COURSE_ROLES = ['course', 'course-second', 'course-third'] as const;

/** Draws how quantities go over time, against the level they must keep to. */
export function courseDrawing(input: CourseDrawingInput): Drawing {
  const width = Math.max(200, input.width);
  const height = Math.max(110, input.height);
  const frame = frameOf(input, width, height);
  return {
    width,
    height,
    title: input.title,
    description: input.description,
    marks: [
      ...belowMarks(input, frame),
      ...axes(input, frame),
      ...eventMarks(input, frame),
      ...limitMarks(input, frame),
      ...courseMarks(input, frame),
      ...nowMarks(input, frame),
      ...legendMarks(input, frame),
    ],
  };
}

function frameOf(input: CourseDrawingInput, width: number, height: number): Frame {
  const size = Math.min(13, Math.max(8, width / 40));
  const levels = input.limit === undefined ? [] : [input.limit.value];
  const rows = Math.max(2, Math.floor(height / (4 * size)));
  const up = valueAxis([...input.courses.flatMap(({ up: values }) => values), ...levels], rows);
  const widest = Math.max(...up.ticks.map((tick) => textWidth(tickText(up, tick), size)));
  const left = widest + 1.2 * size;
  const right = width - 2.4 * size;
  const columns = Math.max(2, Math.floor((right - left) / (6 * size)));
  const axis = valueAxis(input.across, columns);
  const ends = input.across.filter((value) => Number.isFinite(value));
  // time ends where the course ends, not at the next tick
  const to = ends.length < 2 ? axis.to : Math.max(...ends);
  return {
    size,
    left,
    right,
    top: 2 * size,
    bottom: height - 2.2 * size,
    across: { ...axis, to, ticks: axis.ticks.filter((tick) => tick <= to * (1 + 1e-9)) },
    up,
  };
}

function place(frame: Frame, across: number, up: number): DrawingPoint {
  return { x: acrossX(frame, across), y: upY(frame, up) };
}

function acrossX({ left, right, across }: Frame, value: number): number {
  return left + axisShare(across, value) * (right - left);
}

function upY({ top, bottom, up }: Frame, value: number): number {
  return bottom - axisShare(up, value) * (bottom - top);
}

function courseMarks({ across, courses }: CourseDrawingInput, frame: Frame): Mark[] {
  if (across.length < 2) return [];
  return courses.map(({ up }, index) => ({
    kind: 'polyline',
    role: COURSE_ROLES[index] ?? 'course',
    points: across.map((value, at) => place(frame, value, up[at] ?? 0)),
  }));
}

/** Names of the courses above the plot, where there are several. */
function legendMarks({ courses }: CourseDrawingInput, { size, left, right }: Frame): Mark[] {
  const width = 2.2 * size;
  const entries = courses.flatMap(({ text }, index): LegendEntry[] => {
    const role = COURSE_ROLES[index] ?? 'course';
    if (text === undefined) return [];
    return [
      {
        text,
        width,
        sample: ({ x, y }) => [{ kind: 'line', role, from: { x, y }, to: { x: x + width, y } }],
      },
    ];
  });
  const rows = legendRows(entries, right - left, size).slice(0, 1);
  return drawLegend(rows, { x: left + size, y: -0.25 * size }, size);
}

/** Where the words of the events stand: at the top, or under the words of a limit that need that row. */
function eventRow(limit: CourseDrawingInput['limit'], frame: Frame): number {
  const row = frame.top + 0.9 * frame.size;
  if (limit === undefined) return row;
  const taken = limitRow(frame, upY(frame, limit.value));
  return Math.abs(taken - row) < 1.2 * frame.size ? taken + 1.3 * frame.size : row;
}

/** A thin line at each event; its words where they do not run into those before. */
function eventMarks({ events = [], limit }: CourseDrawingInput, frame: Frame): Mark[] {
  const { size, top, bottom, right } = frame;
  const row = eventRow(limit, frame);
  let free = Number.NEGATIVE_INFINITY;
  return events.flatMap(({ at, text }): Mark[] => {
    const x = acrossX(frame, at);
    const marks: Mark[] = [{ kind: 'line', role: 'course-event', from: { x, y: top }, to: { x, y: bottom } }];
    const from = x + 0.3 * size;
    const to = from + textWidth(text, size);
    if (from >= free && to <= right) {
      free = to + 0.4 * size;
      const words = { x: from, y: row };
      marks.push({ kind: 'text', role: 'course-event', at: words, text, anchor: 'start', size });
    }
    return marks;
  });
}

function nowMarks({ now }: CourseDrawingInput, frame: Frame): Mark[] {
  if (now === undefined) return [];
  const x = acrossX(frame, now);
  const { size, top, bottom } = frame;
  return [
    { kind: 'line', role: 'cursor', from: { x, y: top - 0.4 * size }, to: { x, y: bottom } },
    {
      kind: 'area',
      role: 'cursor',
      points: [
        { x: x - 0.45 * size, y: top - 0.8 * size },
        { x: x + 0.45 * size, y: top - 0.8 * size },
        { x, y: top },
      ],
    },
  ];
}

function axes(input: CourseDrawingInput, frame: Frame): Mark[] {
  const { size, left, right, bottom } = frame;
  const text = (x: number, y: number, words: string, anchor: 'start' | 'middle' | 'end'): Mark => ({
    kind: 'text',
    role: 'axis',
    at: { x, y },
    text: words,
    anchor,
    size,
  });
  const marks: Mark[] = [
    { kind: 'line', role: 'axis', from: { x: left, y: bottom }, to: { x: right, y: bottom } },
    text(left - 0.6 * size, 0.9 * size, input.unit.up, 'end'),
  ];
  for (const tick of frame.up.ticks) {
    const y = upY(frame, tick);
    marks.push({ kind: 'line', role: 'lane', from: { x: left, y }, to: { x: right, y } });
    marks.push(text(left - 0.6 * size, y + 0.35 * size, tickText(frame.up, tick), 'end'));
  }
  frame.across.ticks.forEach((tick, index) => {
    const x = acrossX(frame, tick);
    marks.push({ kind: 'tick', role: 'axis', from: { x, y: bottom }, to: { x, y: bottom + 0.4 * size } });
    const words = tickText(frame.across, tick);
    marks.push(text(x, bottom + 1.5 * size, words, 'middle'));
    if (index === frame.across.ticks.length - 1) {
      const after = x + textWidth(words, size) / 2 + 0.3 * size;
      marks.push(text(after, bottom + 1.5 * size, input.unit.across, 'start'));
    }
  });
  return marks;
}

/** Where the words of a limit stand: above its line where there is room. */
function limitRow({ size, top }: Frame, y: number): number {
  return y - 0.5 * size > top + size ? y - 0.45 * size : y + 1.15 * size;
}

function limitMarks({ limit }: CourseDrawingInput, frame: Frame): Mark[] {
  if (limit === undefined) return [];
  const y = upY(frame, limit.value);
  const { size, left, right } = frame;
  return [
    { kind: 'line', role: 'course-limit', from: { x: left, y }, to: { x: right, y } },
    {
      kind: 'text',
      role: 'course-limit',
      at: { x: right - 0.3 * size, y: limitRow(frame, y) },
      text: limit.text,
      anchor: 'end',
      size,
    },
  ];
}

/** Where the level is not kept: hatched, with a line and its words at the place where it begins. */
function belowMarks({ below }: CourseDrawingInput, frame: Frame): Mark[] {
  if (below === undefined) return [];
  const { size, right, top, bottom } = frame;
  const x = acrossX(frame, below.from);
  const role: MarkRole = 'course-below';
  const corners = [
    { x, y: top },
    { x: right, y: top },
    { x: right, y: bottom },
    { x, y: bottom },
  ];
  const late = right - x < textWidth(below.text, size) + size;
  return [
    ...hatch(corners, 0.8 * size, role),
    { kind: 'line', role, from: { x, y: top - 0.6 * size }, to: { x, y: bottom } },
    {
      kind: 'text',
      role,
      at: { x: late ? Math.min(right, x + 0.2 * size) : x, y: top - 0.9 * size },
      text: below.text,
      anchor: late ? 'end' : 'start',
      size,
    },
  ];
}
