import type { SurveySeam } from '@furrow/engine';
import { describe, expect, it } from 'vitest';
import type { Drawing } from './drawing.ts';
import { seamCurveDrawing } from './seam-curve-drawing.ts';

const stretch = {
  from_mm: 0,
  to_mm: 1000,
  verdict: 'holds',
  simple_acceptance: 'holds',
  miss: 'none',
  chance_wrong_accept: 0.01,
  chance_wrong_reject: 0.99,
} as const;

/** A plate of 30 mm with a groove that deepens from 10 to 14 mm. */
const SEAM = {
  curve: [0, 500, 1000].map((at_mm, i) => ({
    at_mm,
    depth_mm: { p05: 9 + 2 * i, p50: 10 + 2 * i, p95: 11 + 2 * i },
    remaining_mm: { p05: 19 - 2 * i, p50: 20 - 2 * i, p95: 21 - 2 * i },
    width_mm: { p05: 15, p50: 16, p95: 17 },
  })),
  limits: { least_mm: 9, most_mm: 15, plate_left_least_mm: 12 },
  remaining: { verdict: 'holds', least_mm: 12, stretches: [stretch] },
  width: { verdict: 'holds', limits: { least_mm: 14, most_mm: 20 }, stretches: [stretch] },
  stretches: [stretch],
  readings: [
    { at_mm: 500, depth_mm: { value: 12, u95: 0.4 }, width_mm: { value: 18, u95: 0.4 }, used: true },
    { at_mm: 700, depth_mm: { value: 12, u95: 0.4 }, width_mm: null, used: false },
  ],
  measure_next: [{ at_mm: 250, gain: 1, gain_per_minute: 1 }],
  cut_again: [],
} as unknown as SurveySeam;

const SIZE = { units: 'metric', width: 800, height: 300 } as const;

function course(drawing: Drawing): readonly number[] {
  const mark = drawing.marks.find(({ role, kind }) => role === 'course' && kind === 'polyline');
  return mark?.kind === 'polyline' ? mark.points.map(({ y }) => y) : [];
}

function words(drawing: Drawing): string[] {
  return drawing.marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []));
}

describe('a curve along the seam', () => {
  it('draws depth downwards, and what is left of the plate upwards', () => {
    const [depth, left] = [
      course(seamCurveDrawing({ seam: SEAM, ...SIZE })),
      course(seamCurveDrawing({ seam: SEAM, of: 'remaining', ...SIZE })),
    ];
    expect(depth[2]!).toBeGreaterThan(depth[0]!);
    // where more was cut less is left: that curve falls on the page too
    expect(left[2]!).toBeGreaterThan(left[0]!);
    expect(words(seamCurveDrawing({ seam: SEAM, of: 'remaining', ...SIZE }))).toContain('plate left, mm');
  });

  it('tells what it shows, and shows widths where they were read alone', () => {
    expect(seamCurveDrawing({ seam: SEAM, of: 'width', ...SIZE }).description).toBe(
      'Median width from 16.0 to 16.0 mm; accepted are 14.0 to 20.0 mm. 1 reading counts.',
    );
    expect(words(seamCurveDrawing({ seam: SEAM, of: 'width', ...SIZE }))).not.toContain('does not count');
    expect(words(seamCurveDrawing({ seam: SEAM, ...SIZE }))).toContain('does not count');
    expect(seamCurveDrawing({ seam: SEAM, of: 'remaining', ...SIZE }).description).toContain(
      'at least 12.0 mm is to be left',
    );
  });

  it('says where to measure next once, at the depth', () => {
    expect(words(seamCurveDrawing({ seam: SEAM, ...SIZE }))).toContain('measure next');
    expect(words(seamCurveDrawing({ seam: SEAM, of: 'width', ...SIZE }))).not.toContain('measure next');
  });
});
