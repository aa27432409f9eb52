import fc from 'fast-check';
import { expect, test } from 'vitest';
import { exampleJob, samplePlan } from '../sample-plan.test-data.ts';
import type { Drawing, DrawingPoint, Mark } from './drawing.ts';
import { drawingToSvg } from './drawing-to-svg.ts';
import { seamStripDrawing } from './seam-strip-drawing.ts';
import { sectionDrawing } from './section-drawing.ts';

const settings = { seed: 2, numRuns: 150 };
const jobs = ['penstock-seam', 'casting-wash', 'defect-pocket'] as const;
const length = (least: number, most: number): fc.Arbitrary<number> =>
  fc.double({ min: least, max: most, noNaN: true });

function points(mark: Mark): readonly DrawingPoint[] {
  if (mark.kind === 'text') return [mark.at];
  return 'points' in mark ? mark.points : [mark.from, mark.to];
}

function expectSound(drawing: Drawing): void {
  for (const mark of drawing.marks) {
    for (const { x, y } of points(mark)) {
      expect(Number.isFinite(x) && Number.isFinite(y)).toBe(true);
    }
  }
  expect(drawingToSvg(drawing)).not.toMatch(/NaN|Infinity|undefined| style=/);
}

const size = fc.record({
  width: fc.integer({ min: 1, max: 2000 }),
  height: fc.integer({ min: 1, max: 1200 }),
  units: fc.constantFrom('inch', 'metric'),
});

test('a section of any accepted groove has finite places only', () => {
  const groove = fc.record({
    name: fc.constantFrom(...jobs),
    wanted: length(0.0005, 0.15),
    plus: length(0, 0.1),
    minusShare: length(0, 0.99),
    least: length(0.001, 0.5),
    wider: length(0, 0.1),
    floorShare: length(0, 1),
    spareShare: length(0.001, 20),
    ligamentShare: length(0, 1),
    withPlan: fc.boolean(),
    size,
  });
  fc.assert(
    fc.property(groove, (given) => {
      const read = exampleJob(given.name);
      const most = given.least + given.wider;
      const thickness = given.wanted * (1 + given.spareShare);
      const drawing = sectionDrawing({
        groove: {
          ...read.job.groove,
          depth: { wanted: given.wanted, plus: given.plus, minus: given.wanted * given.minusShare },
          width: { least: given.least, most },
          floor_width: most * given.floorShare,
          ligament_least: thickness * given.ligamentShare,
        },
        plate: { ...read.job.plate, thickness },
        plan: given.withPlan ? samplePlan(read, { tracks: 3, layers: 1, gauge: false }) : undefined,
        ...given.size,
      });
      expectSound(drawing);
    }),
    settings,
  );
});

test('a seam strip of any seam and any number of passes has finite places only', () => {
  const given = fc.record({
    name: fc.constantFrom(...jobs),
    length: length(0.01, 500),
    tracks: fc.integer({ min: 1, max: 10 }),
    layers: fc.integer({ min: 1, max: 4 }),
    gauge: fc.boolean(),
    withPlan: fc.boolean(),
    size,
  });
  fc.assert(
    fc.property(given, ({ name, length: seam, tracks, layers, gauge, withPlan, size: sheet }) => {
      const read = exampleJob(name);
      const job = { ...read.job, seam: { ...read.job.seam, length: seam } };
      const plan = withPlan ? samplePlan({ ...read, job }, { tracks, layers, gauge }) : undefined;
      const drawing = seamStripDrawing({ job, plan, ...sheet });
      expectSound(drawing);
    }),
    settings,
  );
});
