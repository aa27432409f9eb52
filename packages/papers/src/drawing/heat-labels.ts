import type { ContourPoint } from './contour-rings.ts';
import type { DrawingPoint, Mark } from './drawing.ts';
import type { HeatLevel } from './heat-levels.ts';
import type { HeatSpace } from './heat-space.ts';
import { textWidth } from './text-width.ts';

type Rings = readonly (readonly (readonly ContourPoint[])[])[];

interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** A level with the places where its line runs through the plate. */
interface DrawnLevel {
  readonly level: HeatLevel;
  readonly line: readonly DrawingPoint[];
}

/** A label for each line: on it where it covers no other one, else beside the heat with a thin line that leads to it. */
export function heatLabels(
  rings: Rings,
  levels: readonly HeatLevel[],
  cut: readonly DrawingPoint[],
  space: HeatSpace,
): Mark[] {
  const { size, left, right, surface, bottom } = space;
  const drawn = levels.flatMap((level, index): DrawnLevel[] => {
    const line = (rings[index] ?? [])
      .flat()
      .filter((point) => !point.rim && point.x > left && point.x < right && point.y < bottom)
      // a line ends at the floor: what goes on in the groove is not drawn
      .filter((point) => point.y >= floorAt(cut, point.x));
    return line.length === 0 ? [] : [{ level, line }];
  });
  const floor = Math.max(surface, ...cut.map(({ y }) => y));
  const taken: Box[] = [];
  if (cut.length > 1) {
    const xs = cut.map(({ x }) => x);
    taken.push({ left: Math.min(...xs), right: Math.max(...xs), top: surface, bottom: floor });
  }
  const marks: Mark[] = [];
  const beside: DrawnLevel[] = [];
  for (const one of drawn) {
    const half = textWidth(one.level.text, size) / 2 + 0.15 * size;
    const boxAt = ({ x, y }: DrawingPoint): Box => ({
      left: x - half,
      right: x + half,
      top: y - 0.6 * size,
      bottom: y + 0.6 * size,
    });
    const others = drawn.filter((other) => other !== one).flatMap(({ line }) => line);
    const free = (box: Box): boolean =>
      inside(box, { left, right, top: surface, bottom }) &&
      taken.every((other) => apart(box, other)) &&
      !others.some((point) => holds(box, point));
    // the right flank, half way down, is where most lines lie apart
    const middle = (surface + bottom) / 2;
    const away = ({ x, y }: DrawingPoint): number => Math.abs(y - middle) + 0.15 * (right - x);
    const at = one.line.toSorted((a, b) => away(a) - away(b)).find((place) => free(boxAt(place)));
    if (at === undefined) {
      beside.push(one);
      continue;
    }
    const box = boxAt(at);
    taken.push(box);
    marks.push(...labelMarks(one.level, box, size));
  }
  return [...marks, ...besideMarks(beside, taken, space)];
}

/** Labels under each other at the right of the lines they belong to, the hottest first. */
function besideMarks(levels: readonly DrawnLevel[], taken: readonly Box[], space: HeatSpace): Mark[] {
  const { size, centre, surface, bottom, right } = space;
  const reach = Math.max(centre, ...levels.flatMap(({ line }) => line.map(({ x }) => x)));
  const start = reach + 2 * size;
  const marks: Mark[] = [];
  let top = surface + 0.5 * size;
  levels.toReversed().forEach(({ level, line }, index) => {
    const width = textWidth(level.text, size) + 0.3 * size;
    let box: Box = { left: start, right: start + width, top, bottom: top + 1.2 * size };
    for (const other of taken) {
      if (!apart(box, other)) box = { ...box, top: other.bottom + 1, bottom: other.bottom + 1 + 1.2 * size };
    }
    if (box.right > right || box.bottom > bottom) return;
    top = box.bottom + 0.15 * size;
    // hot lines are met near the surface, cool ones further down, so that no two leaders cross
    const wanted = 0.25 + (0.7 * index) / Math.max(1, levels.length);
    const turn = ({ x, y }: DrawingPoint): number => Math.abs(Math.atan2(y - surface, x - centre) - wanted);
    const foot = line.reduce((best, point) => (turn(point) < turn(best) ? point : best));
    marks.push(
      {
        kind: 'line',
        role: 'leader',
        from: foot,
        to: { x: box.left, y: (box.top + box.bottom) / 2 },
      },
      ...labelMarks(level, box, size),
    );
  });
  return marks;
}

function labelMarks(level: HeatLevel, box: Box, size: number): Mark[] {
  return [
    {
      kind: 'area',
      role: 'label-ground',
      points: [
        { x: box.left, y: box.top },
        { x: box.right, y: box.top },
        { x: box.right, y: box.bottom },
        { x: box.left, y: box.bottom },
      ],
    },
    {
      kind: 'text',
      role: level.role,
      at: { x: (box.left + box.right) / 2, y: (box.top + box.bottom) / 2 + 0.35 * size },
      text: level.text,
      anchor: 'middle',
      size,
    },
  ];
}

/** Height of the floor at a place across; above everything where nothing is cut. */
function floorAt(cut: readonly DrawingPoint[], x: number): number {
  const next = cut.findIndex((point) => point.x >= x);
  const [from, to] = [cut[next - 1], cut[next]];
  if (from === undefined || to === undefined) return Number.NEGATIVE_INFINITY;
  const span = to.x - from.x;
  return from.y + (span > 0 ? (x - from.x) / span : 0) * (to.y - from.y);
}

function holds(box: Box, { x, y }: DrawingPoint): boolean {
  return x > box.left && x < box.right && y > box.top && y < box.bottom;
}

function inside(box: Box, outer: Box): boolean {
  return box.left > outer.left && box.right < outer.right && box.top > outer.top && box.bottom < outer.bottom;
}

function apart(one: Box, other: Box): boolean {
  return one.right < other.left || one.left > other.right || one.bottom < other.top || one.top > other.bottom;
}
