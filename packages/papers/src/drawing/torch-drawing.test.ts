import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { turningFigures } from '../blocks/torch-blocks.ts';
import { exampleJob, sampleAnswer, samplePlan } from '../sample-plan.test-data.ts';
import type { Drawing, DrawingPoint, Mark } from './drawing.ts';
import { drawingToSvg } from './drawing-to-svg.ts';
import { textWidth } from './text-width.ts';
import { type TorchDrawingInput, torchDrawing } from './torch-drawing.ts';

const { job } = exampleJob('penstock-seam');
const plan = samplePlan({ ...exampleJob('penstock-seam') }, { tracks: 1, layers: 2, gauge: true });
const straight: TorchDrawingInput = { job, plan, stickOut: 0.09, units: 'metric', width: 400, height: 190 };
const girth = { ...job, seam: { ...job.seam, path: 'girth', diameter: 0.6 } } as const;

function texts({ marks }: Drawing): string[] {
  return marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []));
}

function corners({ marks }: Drawing, role: Mark['role']): readonly DrawingPoint[] {
  const mark = marks.find((one) => one.role === role && one.kind === 'area');
  return mark?.kind === 'area' ? mark.points : [];
}

const length = (from: DrawingPoint, to: DrawingPoint): number => Math.hypot(to.x - from.x, to.y - from.y);

describe('the torch', () => {
  test('is to scale: electrode, stick-out and height', () => {
    const drawing = torchDrawing(straight);
    const [tip, , , below] = corners(drawing, 'electrode') as [
      DrawingPoint,
      DrawingPoint,
      DrawingPoint,
      DrawingPoint,
    ];
    const dimensions = drawing.marks.filter((mark) => mark.kind === 'dimension');
    const [stickOut, height] = dimensions.map(({ from, to }) => length(from, to)) as [number, number];
    expect(stickOut / length(tip, below)).toBeCloseTo(90 / 12.7, 6);
    expect(height / stickOut).toBeCloseTo(Math.SQRT1_2, 6);
  });

  test('leans back to push: its head is behind and above the tip, travel goes to the right, the jet ahead', () => {
    const drawing = torchDrawing(straight);
    const rod = corners(drawing, 'electrode');
    expect(rod[1]!.x).toBeLessThan(rod[0]!.x);
    expect(rod[1]!.y).toBeLessThan(rod[0]!.y);
    for (const role of ['travel', 'jet'] as const) {
      const [head, wing] = corners(drawing, role);
      expect(head!.x, role).toBeGreaterThan(wing!.x);
    }
  });

  test('has its jet between electrode and plate', () => {
    const drawing = torchDrawing(straight);
    const jet = drawing.marks.filter((mark) => mark.kind === 'line' && mark.role === 'jet-zone');
    expect(jet).toHaveLength(2);
    const [tip, , , below] = corners(drawing, 'electrode');
    const middle = { x: (tip!.x + below!.x) / 2, y: (tip!.y + below!.y) / 2 };
    for (const mark of jet) {
      if (mark.kind !== 'line') continue;
      // at 45 degrees what lies below the electrode is nearer to the plate and to the back
      expect(mark.to.x - middle.x - (mark.to.y - middle.y)).toBeLessThan(0);
    }
  });

  test('names what is set, in the units of the reader', () => {
    expect(texts(torchDrawing(straight))).toEqual(
      expect.arrayContaining([
        'stick-out 90.0 mm',
        'electrode 12.7 mm',
        'height 63.6 mm',
        '45°',
        'travel 700 mm/min',
      ]),
    );
    expect(texts(torchDrawing({ ...straight, units: 'inch' }))).toEqual(
      expect.arrayContaining(['stick-out 3 1/2 in', 'electrode 1/2 in', '45°', 'travel 27.6 in/min']),
    );
  });

  test('stands still over a girth that turns towards its tip', () => {
    const drawing = torchDrawing({ ...straight, job: girth, roll: 0.3 });
    const [head, wing] = corners(drawing, 'travel');
    expect(head!.x).toBeLessThan(wing!.x);
    expect(texts(drawing)).toContain('shell turns, 700 mm/min');
    // 700 mm/min around pi times 600 mm
    expect(drawing.description).toContain('the shell turns at 0.371 rev/min, once in 2 min 42 s');
    expect(drawing.description).toContain('a roll of 300 mm on the gouged surface turns at 0.743 rev/min');
    const surface = drawing.marks.find((mark) => mark.role === 'surface');
    const ys = surface?.kind === 'polyline' ? surface.points.map(({ y }) => y) : [];
    expect(ys[0]!).toBeGreaterThan(ys[20]!);
    expect(ys.at(-1)!).toBeGreaterThan(ys.at(-10)!);
  });

  test('tells no travel to set where the gauge sets it', () => {
    const passes = plan.passes.map((pass) => ({ ...pass, set_by_gauge: true }));
    const gauged = { ...straight, plan: { ...plan, passes } };
    expect(texts(torchDrawing(gauged))).toContain('travel by gauge');
    expect(texts(torchDrawing({ ...gauged, job: girth }))).toContain('shell turns, by gauge');
    const read = { ...exampleJob('penstock-seam'), job: girth };
    const answer = sampleAnswer(read, gauged.plan);
    const [figure] = turningFigures(read, answer, gauged.plan, 'metric');
    expect(figure).toEqual({
      label: 'Shell turns',
      value: 'by gauge',
      note: '0.371 rev/min at 700 mm/min; in proportion',
    });
    expect(turningFigures(read, answer, plan, 'metric')).toEqual([
      {
        label: 'Shell turns',
        value: '0.371',
        unit: 'rev/min',
        note: 'once in 2 min 42 s, others by their travel',
      },
    ]);
    expect(turningFigures(exampleJob('penstock-seam'), answer, plan, 'metric')).toEqual([]);
  });

  test('lies inside its frame at any setting and size', () => {
    const given = fc.record({
      angle: fc.double({ min: 15, max: 80, noNaN: true }),
      stickOut: fc.double({ min: 0.03, max: 0.4, noNaN: true }),
      diameter: fc.constantFrom(3.2, 6.35, 12.7, 19.05),
      depth: fc.double({ min: 0.3, max: 25, noNaN: true }),
      shell: fc.option(fc.double({ min: 0.1, max: 60, noNaN: true }), { nil: undefined }),
      width: fc.integer({ min: 1, max: 1400 }),
      height: fc.integer({ min: 1, max: 800 }),
      units: fc.constantFrom('inch' as const, 'metric' as const),
    });
    fc.assert(
      fc.property(given, ({ angle, stickOut, diameter, depth, shell, ...rest }) => {
        const first = {
          ...plan.passes[0]!,
          push_angle_deg: angle,
          depth_mm: { p05: depth, p50: depth, p95: depth },
        };
        const drawing = torchDrawing({
          job: shell === undefined ? job : { ...job, seam: { ...job.seam, path: 'girth', diameter: shell } },
          plan: { ...plan, electrode_diameter_mm: diameter, passes: [first] },
          stickOut,
          ...rest,
        });
        expect(drawingToSvg(drawing)).not.toMatch(/NaN|Infinity|undefined/);
        const inside = ({ x, y }: DrawingPoint, spare: number): void => {
          expect(x).toBeGreaterThanOrEqual(-spare);
          expect(x).toBeLessThanOrEqual(drawing.width + spare);
          expect(y).toBeGreaterThanOrEqual(-spare);
          expect(y).toBeLessThanOrEqual(drawing.height + spare);
        };
        for (const mark of drawing.marks) {
          if (mark.kind === 'text') {
            const wide = textWidth(mark.text, mark.size);
            const left = mark.anchor === 'end' ? mark.at.x - wide : mark.at.x;
            inside({ x: left, y: mark.at.y }, 1);
            inside({ x: left + wide, y: mark.at.y }, 1);
          } else if ('points' in mark) for (const point of mark.points) inside(point, 1);
          else for (const point of [mark.from, mark.to]) inside(point, 1);
        }
      }),
      { seed: 3, numRuns: 200 },
    );
  });
});
