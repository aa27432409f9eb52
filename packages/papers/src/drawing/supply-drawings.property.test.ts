import type { AirReport, BayReport } from '@furrow/engine';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { airPathDrawing } from './air-path-drawing.ts';
import { bayDrawing, bayScale } from './bay-drawing.ts';
import { bayPlace, bayPoint } from './bay-scale.ts';
import { courseDrawing } from './course-drawing.ts';
import type { Drawing } from './drawing.ts';
import { drawingToSvg } from './drawing-to-svg.ts';

const settings = { seed: 3, numRuns: 150 };
const number = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });
const units = fc.constantFrom('inch', 'metric');
const width = fc.integer({ min: 1, max: 2000 });

function expectSound(drawing: Drawing): void {
  expect(drawingToSvg(drawing)).not.toMatch(/NaN|Infinity|undefined| style=/);
}

const point = fc.record({ x_m: number(-50, 50), y_m: number(-50, 50) });
const area = fc.record({
  name: fc.string({ maxLength: 30 }),
  outline_m: fc.array(point, { minLength: 3, maxLength: 6 }),
});
const bay: fc.Arbitrary<BayReport> = fc.record({
  outline_m: fc.array(point, { minLength: 3, maxLength: 8 }),
  obstacles: fc.array(area, { maxLength: 3 }),
  walkways: fc.array(area, { maxLength: 2 }),
  workpiece: area,
  seam_m: fc.array(point, { minLength: 2, maxLength: 4 }),
  posts: fc.array(
    fc.record({
      name: fc.string({ maxLength: 20 }),
      kind: fc.constantFrom('power', 'air', 'work clamp'),
      at_m: point,
    }),
    { maxLength: 3 },
  ),
  keep_out_m: number(0, 10),
});

test('a place of the bay is found again where it is drawn, to one scale across and up', () => {
  fc.assert(
    fc.property(bay, point, point, width, (given, one, other, wide) => {
      const scale = bayScale({ bay: given, width: wide, heightMost: 600 });
      const [from, to] = [bayPoint(scale, one), bayPoint(scale, other)];
      const back = bayPlace(scale, from);
      expect(back.x_m).toBeCloseTo(one.x_m, 6);
      expect(back.y_m).toBeCloseTo(one.y_m, 6);
      const drawn = Math.hypot(to.x - from.x, to.y - from.y);
      const true_m = Math.hypot(other.x_m - one.x_m, other.y_m - one.y_m);
      expect(drawn).toBeCloseTo(true_m * scale.perMetre, 6);
    }),
    settings,
  );
});

test('a bay of any shape has finite places only', () => {
  fc.assert(
    fc.property(bay, point, number(0, 80), units, width, (given, station, radius, system, wide) => {
      expectSound(
        bayDrawing({
          bay: given,
          station,
          routes: [
            {
              name: 'source to station',
              kind: 'electrode lead',
              from: 'source',
              to: 'station',
              path_m: [station, { x_m: 0, y_m: 0 }],
              needed_m: 3,
              picked_m: 6,
              pieces: [],
              joints: 0,
              cleats: 0,
              loss_W: 1,
            },
          ],
          reach: [{ name: 'lead', from: station, radius }],
          units: system,
          width: wide,
          heightMost: 600,
        }),
      );
    }),
    settings,
  );
});

const airPoint: fc.Arbitrary<AirReport['points'][number]> = fc.record({
  behind: fc.string({ maxLength: 60 }),
  kind: fc.constantFrom('receiver', 'hose', 'pipe', 'component', 'regulator', 'draw'),
  length_m: fc.option(number(0.1, 100)),
  bore_mm: fc.option(number(1, 100)),
  static_kPa: number(0, 3000),
  flowing_kPa: number(0, 3000),
});

test('an air path of any length has finite places only, and both pressures of every point', () => {
  const given = fc.record({
    points: fc.array(airPoint, { maxLength: 14 }),
    regulator_kPa: number(1, 1000),
    torch_kPa: number(1, 1000),
    units,
    width,
  });
  fc.assert(
    fc.property(given, ({ points, regulator_kPa, torch_kPa, units: system, width: wide }) => {
      const source = { text: 'x', provenance: 'derived' } as const;
      const drawing = airPathDrawing({
        air: {
          points,
          choked: points.slice(0, 1).map(({ behind }) => behind),
          wanted: { regulator_kPa, regulator_source: source, torch_kPa, torch_source: source },
        },
        units: system,
        width: wide,
      });
      expectSound(drawing);
      const texts = (role: string): number =>
        drawing.marks.filter((mark) => mark.kind === 'text' && mark.role === role).length;
      expect(texts('static')).toBe(points.length);
      expect(texts('flowing')).toBe(points.length);
    }),
    settings,
  );
});

test('courses of any values have finite places only', () => {
  const given = fc.record({
    courses: fc.array(
      fc.record({
        up: fc.array(number(-500, 2000), { minLength: 40, maxLength: 40 }),
        text: fc.string({ maxLength: 30 }),
      }),
      { maxLength: 3 },
    ),
    length: fc.integer({ min: 0, max: 40 }),
    limit: fc.option(number(-500, 2000), { nil: undefined }),
    below: fc.option(number(0, 40), { nil: undefined }),
    events: fc.array(fc.record({ at: number(-5, 60), text: fc.string({ maxLength: 20 }) }), {
      maxLength: 30,
    }),
    now: fc.option(number(-5, 60), { nil: undefined }),
    width,
    height: fc.integer({ min: 1, max: 500 }),
  });
  fc.assert(
    fc.property(given, ({ courses, length, limit, below, ...sheet }) => {
      const drawing = courseDrawing({
        title: 'Course',
        description: 'Any.',
        unit: { across: 's', up: 'bar' },
        across: Array.from({ length }, (_, index) => index),
        courses: courses.map(({ up, text }) => ({ up: up.slice(0, length), text })),
        limit: limit === undefined ? undefined : { value: limit, text: 'limit' },
        below: below === undefined ? undefined : { from: below, text: 'too low from here' },
        ...sheet,
      });
      expectSound(drawing);
      const lines = drawing.marks.filter((mark) => mark.kind === 'polyline');
      expect(lines.length).toBe(length < 2 ? 0 : courses.length);
      expect(new Set(lines.map((mark) => mark.role)).size).toBe(lines.length);
    }),
    settings,
  );
});
