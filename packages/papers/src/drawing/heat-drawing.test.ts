import { describe, expect, test } from 'vitest';
import { sampleHeat } from '../sample-heat.test-data.ts';
import { exampleJob } from '../sample-plan.test-data.ts';
import type { Drawing, DrawingPoint, MarkRole } from './drawing.ts';
import { heatDrawing } from './heat-drawing.ts';

const { field } = sampleHeat();
const { job } = exampleJob('penstock-seam');
const marks = { ac1: 718, ac3: 842, melting: 1500 };
const base = {
  field,
  groove: job.groove,
  plate: { ...job.plate, thickness: 0.032 },
  marks,
  units: 'metric',
  width: 800,
  heightMost: 420,
} as const;

function at(time: number): Drawing {
  const frame = field.frames.find((one) => one.time === time);
  if (frame === undefined) throw new Error(`the sample has no moment ${time} s`);
  return heatDrawing({ ...base, frame });
}

function areas(drawing: Drawing, role: MarkRole): readonly (readonly DrawingPoint[])[] {
  return drawing.marks.flatMap((mark) => (mark.kind === 'area' && mark.role === role ? [mark.points] : []));
}

function texts(drawing: Drawing, role: MarkRole): string[] {
  return drawing.marks.flatMap((mark) => (mark.kind === 'text' && mark.role === role ? [mark.text] : []));
}

function depthOf(points: readonly DrawingPoint[]): number {
  const ys = points.map(({ y }) => y);
  return Math.max(...ys) - Math.min(...ys);
}

describe('heat in the section', () => {
  test('is cold and whole before the first pass', () => {
    const drawing = at(0);
    expect(areas(drawing, 'cut')).toEqual([]);
    // the legend alone shows a hot area
    expect(areas(drawing, 'heat-1')).toHaveLength(1);
    expect(drawing.description).toContain('before the first pass');
    expect(drawing.description).toContain('Hottest 20 °C');
  });

  test('cuts the groove deeper with each pass, to one scale', () => {
    const one = areas(at(62), 'cut')[0]!;
    const two = areas(at(302), 'cut')[0]!;
    expect(depthOf(two) / depthOf(one)).toBeCloseTo(2, 1);
  });

  test('fills hotter areas inside cooler ones and names their lines', () => {
    const drawing = at(62);
    const roles = drawing.marks.flatMap((mark) => (mark.kind === 'area' ? [mark.role] : []));
    expect(roles.indexOf('heat-1')).toBeLessThan(roles.indexOf('heat-2'));
    expect(roles.indexOf('heat-5')).toBeLessThan(roles.indexOf('heat-6'));
    expect(texts(drawing, 'isotherm-ac1')).toContain('Ac1 718 °C');
    expect(texts(drawing, 'isotherm-ac3').length).toBeGreaterThan(0);
  });

  test('runs no line of equal temperature along the edge of the plate', () => {
    const drawing = at(306);
    const surface = drawing.marks.find((mark) => mark.role === 'surface' && mark.kind === 'polyline');
    const top = surface?.kind === 'polyline' ? surface.points[0]!.y : Number.NaN;
    const lines = drawing.marks.filter((mark) => mark.kind === 'polyline' && mark.role === 'isotherm');
    expect(lines.length).toBeGreaterThan(0);
    for (const line of lines) {
      if (line.kind !== 'polyline') continue;
      const along = line.points.filter(
        ({ y }, index) =>
          Math.abs(y - top) < 0.01 && Math.abs((line.points[index - 1]?.y ?? -1) - top) < 0.01,
      );
      expect(along).toEqual([]);
    }
  });

  test('keeps its labels apart', () => {
    const boxes = areas(at(306), 'label-ground').map((points) => ({
      left: points[0]!.x,
      top: points[0]!.y,
      right: points[2]!.x,
      bottom: points[2]!.y,
    }));
    expect(boxes.length).toBeGreaterThan(2);
    boxes.forEach((one, index) => {
      for (const other of boxes.slice(index + 1)) {
        const apart =
          one.right < other.left ||
          one.left > other.right ||
          one.bottom < other.top ||
          one.top > other.bottom;
        expect(apart).toBe(true);
      }
    });
  });

  test('leads to crowded lines from beside the heat, and covers none of them', () => {
    const drawing = at(60);
    const leaders = drawing.marks.filter(({ role }) => role === 'leader');
    expect(leaders.length).toBeGreaterThan(2);
    expect(texts(drawing, 'isotherm-melting')).toContain('melts 1500 °C');
    const groove = areas(drawing, 'cut')[0]!;
    for (const leader of leaders) {
      if (leader.kind !== 'line') continue;
      expect(leader.to.x).toBeGreaterThan(leader.from.x);
      const inGroove = groove.some(({ x, y }) => Math.abs(x - leader.from.x) < 4 && leader.from.y < y - 4);
      expect(inGroove).toBe(false);
    }
  });

  test('draws a thick plate in part and says how deep its back face lies', () => {
    const frame = field.frames.at(-1)!;
    const drawing = heatDrawing({ ...base, frame, plate: { ...base.plate, thickness: 0.3 }, units: 'inch' });
    expect(drawing.marks.some(({ role }) => role === 'break')).toBe(true);
    expect(texts(drawing, 'label').join(' ')).toMatch(/back face, 11 3\/4 in down: \d+ °F/u);
  });

  test('takes a lower drawing for a wide groove in a thin plate', () => {
    const wide = {
      ...base,
      plate: { ...base.plate, thickness: 0.006 },
      groove: {
        ...job.groove,
        depth: { wanted: 0.003, plus: 0.001, minus: 0.001 },
        width: { least: 0.04, most: 0.05 },
      },
    };
    expect(heatDrawing({ ...wide, frame: field.frames[0]! }).height).toBeLessThan(250);
  });
});
