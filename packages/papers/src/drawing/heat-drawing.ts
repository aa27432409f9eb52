import {
  formatAmount,
  formatStated,
  type HeatField,
  type HeatFrame,
  type Job,
  targetOutline,
  type UnitSystem,
} from '@furrow/engine';
import { contourRings, type ValueGrid } from './contour-rings.ts';
import type { Drawing, DrawingPoint, Mark } from './drawing.ts';
import { heatAreas, isothermLines } from './heat-areas.ts';
import { backFaceOf, hottestOf } from './heat-course.ts';
import { heatLabels } from './heat-labels.ts';
import { heatLegend, heatLegendHeight } from './heat-legend.ts';
import { type HeatMarks, heatLevels } from './heat-levels.ts';
import { type HeatSpace, heatSpace } from './heat-space.ts';
import { heatViewGrid } from './heat-view-grid.ts';
import { scaleBar } from './scale-bar.ts';

/** What the heated section is drawn of, and how large. */
export interface HeatDrawingInput {
  readonly field: HeatField;
  /** The moment that is drawn. */
  readonly frame: HeatFrame;
  readonly groove: Job['groove'];
  readonly plate: Job['plate'];
  readonly marks: HeatMarks;
  readonly units: UnitSystem;
  /** Width [drawing unit], at least 240. */
  readonly width: number;
  /** Greatest height [drawing unit], at least 160; a wide groove in a thin plate takes less. */
  readonly heightMost: number;
}

/** Draws the section at one moment: areas between lines of equal temperature, the groove as far as it is cut, the one wanted. */
export function heatDrawing(input: HeatDrawingInput): Drawing {
  const { field, frame, plate, units } = input;
  const width = Math.max(240, input.width);
  const space = heatSpace(input, width, Math.max(160, input.heightMost));
  const { size, scale, centre, surface, bottom } = space;
  const levels = heatLevels(input.marks, units);
  const grid = gridOn(space, field, frame);
  const rings = levels.map(({ celsius }) => contourRings(grid, celsius));
  const cut = cutOutline(field, frame, space);
  const broken = space.shown < plate.thickness * (1 - 1e-9);
  const pad = 0.4 * size;
  const legendTop = bottom + 1.9 * size;
  return {
    width,
    height: legendTop + heatLegendHeight(size),
    title: 'Temperature in the section',
    description: describe(input),
    marks: [
      plateMark(space),
      ...rings.flatMap(heatAreas),
      ...rings.flatMap((list, index) => isothermLines(list, levels[index]?.role ?? 'isotherm')),
      ...cutMarks(cut, size),
      ...outlineMarks(cut, space, broken),
      {
        kind: 'polyline',
        role: 'target',
        points: targetOutline(input.groove, 'wanted').map(({ offset, depth }) => ({
          x: centre + offset * scale,
          y: surface + depth * scale,
        })),
      },
      ...heatLabels(rings, levels, cut, space),
      backText(input, space, broken),
      ...heatLegend(levels, { topLeft: { x: pad, y: legendTop }, width: width - 2 * pad, size }),
      ...scaleBar(scale, units, { x: width - pad, y: bottom + size }, size),
    ],
  };
}

/** The temperatures at the crossings of lines on the drawing. */
function gridOn(
  { left, right, centre, surface, scale, shown }: HeatSpace,
  field: HeatField,
  frame: HeatFrame,
): ValueGrid {
  const grid = heatViewGrid(field, frame, {
    left: (left - centre) / scale,
    right: (right - centre) / scale,
    bottom: shown,
  });
  return {
    ...grid,
    x: grid.x.map((place) => centre + place * scale),
    y: grid.y.map((place) => surface + place * scale),
  };
}

function plateMark({ left, right, surface, bottom }: HeatSpace): Mark {
  return {
    kind: 'area',
    role: 'plate',
    points: [
      { x: left, y: surface },
      { x: right, y: surface },
      { x: right, y: bottom },
      { x: left, y: bottom },
    ],
  };
}

/** The cut as far as it goes at this moment, from shoulder to shoulder; empty before the first pass. */
function cutOutline(
  { across }: HeatField,
  { floor }: HeatFrame,
  { centre, scale, surface }: HeatSpace,
): DrawingPoint[] {
  const first = floor.findIndex((depth) => depth > 0);
  if (first < 0) return [];
  const last = floor.findLastIndex((depth) => depth > 0);
  const points: DrawingPoint[] = [];
  for (let index = Math.max(0, first - 1); index <= Math.min(across.length - 1, last + 1); index += 1) {
    points.push({ x: centre + (across[index] ?? 0) * scale, y: surface + (floor[index] ?? 0) * scale });
  }
  return points;
}

/** Nothing where metal is cut out; a little above the surface too, so that no edge of colour stays. */
function cutMarks(cut: readonly DrawingPoint[], size: number): Mark[] {
  const [first, last] = [cut[0], cut.at(-1)];
  if (first === undefined || last === undefined) return [];
  const rise = 0.1 * size;
  const points = [{ x: first.x, y: first.y - rise }, ...cut, { x: last.x, y: last.y - rise }];
  return [{ kind: 'area', role: 'cut', points }];
}

/** Surface, floor and back face; a plate drawn in part ends in a break. */
function outlineMarks(cut: readonly DrawingPoint[], space: HeatSpace, broken: boolean): Mark[] {
  const { left, right, surface, bottom, size } = space;
  const top = [{ x: left, y: surface }, ...cut, { x: right, y: surface }];
  const middle = (left + right) / 2;
  return [
    { kind: 'polyline', role: 'surface', points: top },
    broken
      ? {
          kind: 'polyline',
          role: 'break',
          points: [
            { x: left, y: bottom },
            { x: middle - 0.6 * size, y: bottom },
            { x: middle - 0.2 * size, y: bottom - 0.35 * size },
            { x: middle + 0.2 * size, y: bottom + 0.35 * size },
            { x: middle + 0.6 * size, y: bottom },
            { x: right, y: bottom },
          ],
        }
      : { kind: 'line', role: 'surface', from: { x: left, y: bottom }, to: { x: right, y: bottom } },
  ];
}

function temperatureText(celsius: number, units: UnitSystem): string {
  return formatStated(celsius, 'degC', units);
}

function backText({ field, frame, plate, units }: HeatDrawingInput, space: HeatSpace, broken: boolean): Mark {
  const { size, left, bottom } = space;
  const where = broken ? `, ${formatAmount(plate.thickness, 'depth', units)} down` : '';
  return {
    kind: 'text',
    role: 'label',
    at: { x: left, y: bottom + 1.35 * size },
    text: `back face${where}: ${temperatureText(backFaceOf(field, frame), units)} at its hottest`,
    anchor: 'start',
    size,
  };
}

function describe({ field, frame, units }: HeatDrawingInput): string {
  const hottest = hottestOf(frame.temperature);
  const deepest = Math.max(0, ...frame.floor);
  const when = frame.pass === 0 ? 'before the first pass' : `pass ${frame.pass} run last or running`;
  return (
    `${formatAmount(frame.time, 'time', units)} after the first arc, ${when}. Hottest ${temperatureText(hottest, units)}; ` +
    `back face ${temperatureText(backFaceOf(field, frame), units)} at most; cut ${formatAmount(deepest, 'depth', units)} deep.`
  );
}
