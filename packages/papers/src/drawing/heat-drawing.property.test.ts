import type { HeatField } from '@furrow/engine';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { exampleJob } from '../sample-plan.test-data.ts';
import { drawingToSvg } from './drawing-to-svg.ts';
import { heatCourse } from './heat-course.ts';
import { heatDrawing } from './heat-drawing.ts';

const { job } = exampleJob('penstock-seam');
const length = (least: number, most: number): fc.Arbitrary<number> =>
  fc.double({ min: least, max: most, noNaN: true });

test('a section of any temperatures, grid and cut has finite places only', () => {
  const given = fc.record({
    columns: fc.integer({ min: 1, max: 12 }),
    rows: fc.integer({ min: 1, max: 8 }),
    temperatures: fc.array(fc.oneof(length(233, 2000), fc.constant(Number.NaN)), {
      minLength: 96,
      maxLength: 96,
    }),
    cut: fc.array(length(0, 0.02), { minLength: 12, maxLength: 12 }),
    thickness: length(0.001, 0.4),
    halfWidth: length(0.001, 3),
    marks: fc.record({
      ac1: fc.option(length(600, 800), { nil: undefined }),
      ac3: fc.option(length(800, 950), { nil: undefined }),
      melting: fc.option(length(900, 1600), { nil: undefined }),
    }),
    units: fc.constantFrom('inch', 'metric'),
    width: fc.integer({ min: 1, max: 2000 }),
    heightMost: fc.integer({ min: 1, max: 1000 }),
  });
  fc.assert(
    fc.property(given, ({ columns, rows, temperatures, cut, thickness, halfWidth, ...sheet }) => {
      const field: HeatField = {
        across: Float64Array.from(
          { length: columns },
          (_, index) => ((2 * index + 1) / columns - 1) * halfWidth,
        ),
        below: Float64Array.from({ length: rows }, (_, index) => ((index + 0.5) / rows) * thickness),
        frames: [
          {
            time: 3,
            pass: 1,
            temperature: Float32Array.from(temperatures.slice(0, columns * rows)),
            floor: Float32Array.from(cut.slice(0, columns)),
          },
        ],
      };
      const drawing = heatDrawing({
        field,
        frame: field.frames[0]!,
        groove: job.groove,
        plate: { ...job.plate, thickness },
        ...sheet,
      });
      expect(drawingToSvg(drawing)).not.toMatch(/NaN|Infinity|undefined/);
      expect(heatCourse(field).time_s).toEqual([3]);
    }),
    { seed: 5, numRuns: 150 },
  );
});
