import { describe, expect, test } from 'vitest';
import { exampleJob, samplePlan } from '../sample-plan.test-data.ts';
import type { Drawing, DrawingPoint, MarkRole } from './drawing.ts';
import { sectionDrawing } from './section-drawing.ts';

const example = exampleJob('penstock-seam');
// dimensions of its own, so that the demo job may change
const groove = {
  ...example.job.groove,
  depth: { wanted: 0.012, plus: 0.004, minus: 0 },
  width: { least: 0.014, most: 0.022 },
  ligament_least: 0.012,
};
const plate = { ...example.job.plate, thickness: 0.032 };
const penstock = { ...example, job: { ...example.job, groove, plate } };
const plan = samplePlan(penstock, { tracks: 1, layers: 2, gauge: true });
const input = { ...penstock.job, plan, units: 'metric', width: 640, height: 320 } as const;

function roles(drawing: Drawing): Set<MarkRole> {
  return new Set(drawing.marks.map((mark) => mark.role));
}

function outline(drawing: Drawing, role: MarkRole): readonly DrawingPoint[] {
  const mark = drawing.marks.find((one) => one.role === role && one.kind === 'polyline');
  return mark?.kind === 'polyline' ? mark.points : [];
}

function texts(drawing: Drawing): string[] {
  return drawing.marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []));
}

describe('section drawing', () => {
  test('has one scale in both directions', () => {
    const wanted = outline(sectionDrawing(input), 'target');
    const xs = wanted.map((point) => point.x);
    const ys = wanted.map((point) => point.y);
    const across = Math.max(...xs) - Math.min(...xs);
    const down = Math.max(...ys) - Math.min(...ys);
    const { width, depth } = penstock.job.groove;
    expect(across / down).toBeCloseTo((width.least + width.most) / 2 / depth.wanted, 6);
  });

  test('shows target and dimensions before there is a plan, and the expected floor after', () => {
    const { plan: _plan, ...before } = input;
    expect(roles(sectionDrawing(before))).toContain('target');
    expect(roles(sectionDrawing(before))).not.toContain('floor-median');
    for (const role of ['floor-median', 'floor-hatch', 'tolerance', 'ligament'] as const) {
      expect(roles(sectionDrawing(input))).toContain(role);
    }
  });

  test('marks wild points of a scan apart from what counts, also those beyond the picture', () => {
    const none = { offset_mm: [], depth_mm: [] };
    const scan = { offset_mm: [-10, 0, 10], depth_mm: [0, 12, 0], outliers: none };
    const { plan: _plan, ...bare } = input;
    const clean = sectionDrawing({ ...bare, measured: scan });
    expect(texts(clean)).not.toContain('wild, does not count');
    const wild = sectionDrawing({
      ...bare,
      measured: { ...scan, outliers: { offset_mm: [1, 2], depth_mm: [7, 900] } },
    });
    expect(texts(wild)).toContain('wild, does not count');
    const crosses = wild.marks.filter(({ role }) => role === 'course-below');
    // two lines each, and the one of the legend
    expect(crosses).toHaveLength(6);
    for (const mark of crosses)
      if (mark.kind === 'line') expect(mark.from.y).toBeLessThanOrEqual(input.height);
  });

  test('breaks a plate much thicker than the groove and keeps a thin one whole', () => {
    const thick = sectionDrawing({ ...input, plate: { ...input.plate, thickness: 0.3 } });
    expect(roles(thick)).toContain('break');
    expect(roles(sectionDrawing(input))).not.toContain('break');
  });

  test('gives the dimensions in the units asked for', () => {
    expect(texts(sectionDrawing(input))).toEqual(
      expect.arrayContaining(['12.0 mm', '+4.0 −0.0', 'width 14.0 to 22.0 mm', '≥ 12.0 mm']),
    );
    expect(texts(sectionDrawing({ ...input, units: 'inch' }))).toEqual(
      expect.arrayContaining(['0.47 in', 'width 0.55 to 0.87 in']),
    );
  });

  test('puts no label across the line of the ligament', () => {
    const drawing = sectionDrawing(input);
    const line = drawing.marks.find((mark) => mark.role === 'ligament' && mark.kind === 'line');
    const height = line?.kind === 'line' ? line.from.y : Number.NaN;
    const labels = drawing.marks.filter((mark) => mark.kind === 'text' && mark.role === 'dimension');
    for (const label of labels) {
      if (label.kind !== 'text') continue;
      expect(label.at.y <= height || label.at.y - 0.75 * label.size >= height).toBe(true);
    }
  });

  test('says what the depth in the groove is, and in a shallow wash beside its lines', () => {
    const label = (drawing: Drawing): DrawingPoint => {
      const mark = drawing.marks.find(
        (one) => one.kind === 'text' && one.text.startsWith('expect') && one.role === 'floor-median',
      );
      return mark?.kind === 'text' ? mark.at : { x: Number.NaN, y: Number.NaN };
    };
    const deep = sectionDrawing(input);
    const floor = (drawing: Drawing): number =>
      Math.max(...outline(drawing, 'floor-median').map((point) => point.y));
    expect(texts(deep)).toEqual(
      expect.arrayContaining(['expect', `${plan.floor_depth_mm.p50.toFixed(1)} mm`]),
    );
    expect(label(deep).y).toBeLessThan(floor(deep));
    const wash = { ...groove, depth: { wanted: 0.004, plus: 0.012, minus: 0.003 } };
    const shallow = sectionDrawing({ ...input, groove: wash, plate: { ...plate, thickness: 0.07 } });
    expect(label(shallow).y).toBeGreaterThan(floor(shallow));
  });
});
