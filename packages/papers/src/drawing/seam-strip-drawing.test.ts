import { describe, expect, test } from 'vitest';
import { exampleJob, samplePlan } from '../sample-plan.test-data.ts';
import type { Drawing, MarkRole } from './drawing.ts';
import { seamStripX } from './seam-strip-axis.ts';
import { seamStripDrawing, seamStripScale } from './seam-strip-drawing.ts';

const penstock = exampleJob('penstock-seam');
const plan = samplePlan(penstock, { tracks: 1, layers: 2, gauge: true });
const input = { job: penstock.job, plan, units: 'metric', width: 760, height: 180 } as const;

function areas(drawing: Drawing, role: MarkRole): number {
  return drawing.marks.filter((mark) => mark.kind === 'area' && mark.role === role).length;
}

function texts(drawing: Drawing, role: MarkRole): string[] {
  return drawing.marks.flatMap((mark) => (mark.kind === 'text' && mark.role === role ? [mark.text] : []));
}

describe('strip drawing', () => {
  test('has a lane, a start and the electrode changes of every pass, and its stations once', () => {
    const drawing = seamStripDrawing(input);
    // one more of each sign stands in the legend
    expect(areas(drawing, 'pass')).toBe(2);
    expect(areas(drawing, 'start')).toBe(2 + 1);
    expect(areas(drawing, 'electrode-change')).toBe(plan.electrode_changes.length + 1);
    expect(areas(drawing, 'gauge-station')).toBe(5 + 1);
    expect(texts(drawing, 'gauge-station')).toContain('0.60 m');
  });

  test('tells its stations in the unit of its axis', () => {
    const inch = texts(seamStripDrawing({ ...input, units: 'inch' }), 'gauge-station');
    expect(inch[0]).toBe('1 ft 11 1/2 in');
    expect(inch.every((text) => text.includes('ft'))).toBe(true);
  });

  test('writes nothing over the lanes but the names of stations, so that what is laid over them crosses no words', () => {
    for (const units of ['inch', 'metric'] as const)
      for (const width of [420, 760, 1000]) {
        const drawing = seamStripDrawing({ ...input, units, width });
        const axis = seamStripScale({ ...input, units, width });
        const over = drawing.marks.filter(
          (mark) => mark.kind === 'text' && mark.at.y < axis.foot && mark.role !== 'gauge-station',
        );
        for (const mark of over)
          expect(mark.kind === 'text' && mark.anchor === 'start' ? mark.at.x : 0).toBeLessThan(axis.left);
        for (const mark of over)
          if (mark.kind === 'text' && mark.anchor === 'end') expect(mark.at.x).toBeLessThanOrEqual(axis.left);
      }
  });

  test('leaves travel to the gauge where a reading sets it', () => {
    expect(texts(seamStripDrawing(input), 'label')).toEqual(
      expect.arrayContaining(['700 mm/min', 'by gauge']),
    );
  });

  test('draws what a lost arc leaves to the scale of the seam', () => {
    const drawing = seamStripDrawing(input);
    const axis = seamStripScale(input);
    const loss = drawing.marks.find((mark) => mark.kind === 'area' && mark.role === 'loss');
    const xs = loss?.kind === 'area' ? loss.points.map((point) => point.x) : [];
    const scale = (axis.right - axis.left) / (axis.to - axis.from);
    expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo((plan.loss_length_mm / 1000) * scale, 9);
  });

  test('runs out beyond both ends of a pocket', () => {
    const read = exampleJob('defect-pocket');
    const pocket = samplePlan(read, { tracks: 1, layers: 1, gauge: false });
    const axis = seamStripScale({ ...input, job: read.job, plan: pocket });
    expect(axis.from).toBeCloseTo(-0.024, 9);
    expect(axis.to).toBeCloseTo(0.204, 9);
    expect(seamStripX(axis, 0)).toBeGreaterThan(axis.left);
    expect(areas(seamStripDrawing({ ...input, job: read.job, plan: pocket }), 'run-out')).toBeGreaterThan(0);
  });

  test('keeps every lane but thins the labels out when there are forty passes', () => {
    const many = samplePlan(penstock, { tracks: 10, layers: 4, gauge: false });
    const drawing = seamStripDrawing({ ...input, plan: many });
    expect(areas(drawing, 'pass')).toBe(40);
    const labels = drawing.marks.filter(
      (mark) => mark.kind === 'text' && mark.role === 'label' && mark.text === '700 mm/min',
    );
    expect(labels.length).toBeLessThan(40);
    const heights = labels.map((mark) => (mark.kind === 'text' ? mark.at.y : 0));
    const size = labels[0]?.kind === 'text' ? labels[0].size : 0;
    heights.slice(1).forEach((height, index) => {
      expect(height - heights[index]!).toBeGreaterThanOrEqual(size);
    });
  });

  test('draws the bare seam before there is a plan', () => {
    const { plan: _plan, ...before } = input;
    expect(areas(seamStripDrawing(before), 'pass')).toBe(1);
    expect(texts(seamStripDrawing(before), 'axis')).toContain('m');
  });
});
