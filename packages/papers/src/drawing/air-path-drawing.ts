import { type AirReport, formatAmount, formatStated, type UnitSystem } from '@furrow/engine';
import type { Drawing, DrawingPoint, Mark } from './drawing.ts';
import { textWidth } from './text-width.ts';
import { axisShare, type ValueAxis, valueAxis } from './value-axis.ts';

/** What the air path is drawn of, and how large. */
export interface AirPathInput {
  readonly air: Pick<AirReport, 'points' | 'wanted' | 'choked'>;
  readonly units: UnitSystem;
  /** Width [drawing unit], at least 320. */
  readonly width: number;
}

interface Layout {
  readonly size: number;
  /** Width of one point's column [drawing unit]. */
  readonly column: number;
  readonly axis: ValueAxis;
  readonly top: number;
  readonly bottom: number;
  readonly height: number;
}

/** Names of a point are broken into this many lines at most. */
const NAME_LINES = 4;

/** Draws the pressures along the way of the air, from the receiver to the torch: without flow and while it blows. */
export function airPathDrawing(input: AirPathInput): Drawing {
  const layout = layoutOf(input);
  const { points } = input.air;
  return {
    width: Math.max(320, input.width),
    height: layout.height,
    title: 'Air from receiver to torch',
    description: describe(input),
    marks: [
      ...wantedMarks(input, layout),
      ...itemMarks(input, layout),
      line(points, layout, 'static'),
      line(points, layout, 'flowing'),
      ...points.flatMap((_point, index) => pointMarks(input, layout, index)),
    ],
  };
}

function layoutOf({ air, width }: AirPathInput): Layout {
  const column = Math.max(320, width) / Math.max(1, air.points.length);
  const size = Math.min(13, Math.max(8.5, column / 7));
  const values = air.points.flatMap((point) => [point.static_kPa, point.flowing_kPa]);
  const axis = valueAxis([...values, air.wanted.regulator_kPa, air.wanted.torch_kPa], 4);
  const top = 3 * size;
  const bottom = top + 13 * size;
  const lines = Math.max(1, ...air.points.map((point) => nameLines(point.behind, column, size).length));
  return { size, column, axis, top, bottom, height: bottom + (lines + 4.2) * 1.25 * size };
}

function at({ column, axis, top, bottom }: Layout, index: number, kPa: number): DrawingPoint {
  return { x: (index + 0.5) * column, y: bottom - axisShare(axis, kPa) * (bottom - top) };
}

function line(points: AirReport['points'], layout: Layout, role: 'static' | 'flowing'): Mark {
  const key = role === 'static' ? 'static_kPa' : 'flowing_kPa';
  return { kind: 'polyline', role, points: points.map((point, index) => at(layout, index, point[key])) };
}

/** Both pressures at one point, with their numbers kept clear of each other. */
function pointMarks(input: AirPathInput, layout: Layout, index: number): Mark[] {
  const { air, units } = input;
  const { size } = layout;
  const point = air.points[index]!;
  const still = at(layout, index, point.static_kPa);
  const flowing = at(layout, index, point.flowing_kPa);
  const half = 0.28 * size;
  const dot = (place: DrawingPoint, role: 'static' | 'flowing'): Mark => ({
    kind: 'area',
    role,
    points: [
      { x: place.x - half, y: place.y },
      { x: place.x, y: place.y - half },
      { x: place.x + half, y: place.y },
      { x: place.x, y: place.y + half },
    ],
  });
  const text = (place: DrawingPoint, down: number, kPa: number, role: 'static' | 'flowing'): Mark => ({
    kind: 'text',
    role,
    at: { x: place.x, y: place.y + down },
    text: pressure(kPa, units),
    anchor: 'middle',
    size,
  });
  return [
    dot(still, 'static'),
    dot(flowing, 'flowing'),
    text(still, -0.8 * size, point.static_kPa, 'static'),
    text(flowing, flowingRow(input, layout, index) - flowing.y, point.flowing_kPa, 'flowing'),
  ];
}

/** Where the number of the flowing pressure stands: under its mark, or under the line of the least pressure near it. */
function flowingRow(input: AirPathInput, layout: Layout, index: number): number {
  const { size } = layout;
  const { y } = at(layout, index, input.air.points[index]!.flowing_kPa);
  const crossed = wantedPlaces(input).find((place) => place.index === index);
  const line = crossed === undefined ? y : at(layout, index, crossed.kPa).y;
  return line > y + 0.4 * size && line < y + 2 * size ? line + 1.3 * size : y + 1.6 * size;
}

/** The points at which a least pressure is wanted. */
function wantedPlaces({ air }: AirPathInput): readonly { readonly index: number; readonly kPa: number }[] {
  const regulator = air.points.findIndex((point) => point.kind === 'regulator');
  const torch = air.points.length - 1;
  return [
    ...(regulator < 0 || regulator === torch ? [] : [{ index: regulator, kPa: air.wanted.regulator_kPa }]),
    ...(torch < 0 ? [] : [{ index: torch, kPa: air.wanted.torch_kPa }]),
  ];
}

/** The least pressures that are wanted, drawn where they are wanted: behind the regulator and at the torch. */
function wantedMarks(input: AirPathInput, layout: Layout): Mark[] {
  const { size, column } = layout;
  const { units } = input;
  return wantedPlaces(input).flatMap(({ index, kPa }): Mark[] => {
    const { x, y } = at(layout, index, kPa);
    const half = Math.min(0.46 * column, 4.5 * size);
    return [
      { kind: 'line', role: 'wanted', from: { x: x - half, y }, to: { x: x + half, y } },
      {
        kind: 'text',
        role: 'wanted',
        at: { x, y: layout.bottom + 1.2 * size },
        text: `needs ${pressure(kPa, units)}`,
        anchor: 'middle',
        size: Math.min(size, (0.96 * column * size) / textWidth(`needs ${pressure(kPa, units)}`, size)),
      },
    ];
  });
}

/** What lies on the way, with its sign, its name and its size. */
function itemMarks({ air, units }: AirPathInput, layout: Layout): Mark[] {
  const { size, column, bottom } = layout;
  const y = bottom + 2.4 * size;
  return air.points.flatMap((point, index): Mark[] => {
    const x = (index + 0.5) * column;
    const choked = air.choked.includes(point.behind);
    const sized =
      point.bore_mm === null
        ? ''
        : [
            formatStated(point.bore_mm, 'mm', units, 'length'),
            ...(point.length_m === null ? [] : [formatAmount(point.length_m, 'length', units)]),
          ].join(' × ');
    const lines = nameLines(point.behind, column, size);
    const words = [...lines, ...(sized === '' ? [] : [sized]), ...(choked ? ['choked'] : [])];
    return [
      ...(index === 0
        ? []
        : [{ kind: 'line', role: 'axis', from: { x: x - column, y }, to: { x, y } } as const]),
      sign(point.kind, { x, y }, 0.55 * size),
      ...words.map((text, row): Mark => {
        const loud = choked && row === words.length - 1;
        return {
          kind: 'text',
          role: loud ? 'course-below' : row < lines.length ? 'label' : 'axis',
          at: { x, y: y + (1.7 + row * 1.25) * size },
          text,
          anchor: 'middle',
          size: Math.min(size, (0.97 * column * size) / Math.max(1, textWidth(text, size))),
        };
      }),
    ];
  });
}

function sign(kind: AirReport['points'][number]['kind'], { x, y }: DrawingPoint, half: number): Mark {
  const wide = kind === 'hose' || kind === 'pipe' ? 2.4 : 1;
  const tall = kind === 'hose' || kind === 'pipe' ? 0.5 : 1;
  if (kind === 'regulator') {
    return {
      kind: 'area',
      role: 'post',
      points: [
        { x, y: y - 1.3 * half },
        { x: x + 1.3 * half, y },
        { x, y: y + 1.3 * half },
        { x: x - 1.3 * half, y },
      ],
    };
  }
  return {
    kind: 'area',
    role: kind === 'receiver' ? 'station' : 'post',
    points: [
      { x: x - wide * half, y: y - tall * half },
      { x: x + wide * half, y: y - tall * half },
      { x: x + wide * half, y: y + tall * half },
      { x: x - wide * half, y: y + tall * half },
    ],
  };
}

/** Breaks a name at its spaces so that it fits its column. */
function nameLines(name: string, column: number, size: number): string[] {
  const lines: string[] = [];
  for (const word of name.replaceAll('_', ' ').split(/\s+/u)) {
    const last = lines.at(-1);
    const joined = last === undefined ? word : `${last} ${word}`;
    if (last === undefined || textWidth(joined, size) > 0.94 * column) lines.push(word);
    else lines[lines.length - 1] = joined;
  }
  if (lines.length <= NAME_LINES) return lines;
  return [...lines.slice(0, NAME_LINES - 1), `${lines[NAME_LINES - 1]} …`];
}

function pressure(kPa: number, units: UnitSystem): string {
  return formatStated(kPa, 'kPa', units);
}

function describe({ air, units }: AirPathInput): string {
  const points = air.points.map(
    (point) =>
      `behind ${point.behind} ${pressure(point.static_kPa, units)} without flow, ` +
      `${pressure(point.flowing_kPa, units)} flowing`,
  );
  return `Pressures along the way: ${points.join('; ')}.`;
}
