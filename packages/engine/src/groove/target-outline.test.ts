import { describe, expect, it } from 'vitest';
import type { SectionPoint } from './circle-fit.ts';
import { fitRadius } from './circle-fit.ts';
import { runOutLength, targetOutline } from './target-outline.ts';

type Groove = Parameters<typeof targetOutline>[0];

const U: Groove = {
  shape: 'u',
  depth: { wanted: 0.012, plus: 0.005, minus: 0.001 },
  width: { least: 0.014, most: 0.022 },
  floor_width: 0,
};
const GROOVES: readonly (readonly [string, Groove])[] = [
  ['a U', U],
  ['a shallow U', { ...U, depth: { wanted: 0.004, plus: 0.002, minus: 0.001 } }],
  [
    'a wash',
    { ...U, shape: 'wash', depth: { wanted: 0.004, plus: 0.006, minus: 0.001 }, floor_width: 0.013 },
  ],
  ['a pocket', { ...U, shape: 'pocket', floor_width: 0.003 }],
  ['a floor as wide as the groove', { ...U, shape: 'wash', floor_width: 0.022 }],
];

describe.each(GROOVES)('%s', (_name, groove) => {
  it.each(['wanted', 'least', 'most'] as const)(
    '%s: from shoulder to shoulder, even, inside its own box',
    (which) => {
      const points = targetOutline(groove, which);
      const width = { wanted: 0.018, least: 0.014, most: 0.022 }[which];
      const depth =
        groove.depth.wanted + { wanted: 0, least: -groove.depth.minus, most: groove.depth.plus }[which];
      expect(points[0]).toEqual({ offset: -width / 2, depth: 0 });
      expect(points.at(-1)).toEqual({ offset: width / 2, depth: 0 });
      expect(Math.max(...points.map((point) => point.depth))).toBeCloseTo(depth, 12);
      points.forEach((point, i) => {
        const twin = points[points.length - 1 - i]!;
        expect(point.offset).toBeCloseTo(-twin.offset, 12);
        expect(point.depth).toBeCloseTo(twin.depth, 12);
        expect(Math.abs(point.offset)).toBeLessThanOrEqual(width / 2 + 1e-12);
        expect(point.depth).toBeGreaterThanOrEqual(0);
        if (i > 0) expect(point.offset).toBeGreaterThanOrEqual(points[i - 1]!.offset - 1e-12);
      });
    },
  );

  it('lies nested: the least inside the wanted inside the most', () => {
    const [least, wanted, most] = (['least', 'wanted', 'most'] as const).map((which) =>
      targetOutline(groove, which),
    );
    for (let step = -100; step <= 100; step += 1) {
      const offset = (step / 100) * 0.0109;
      const slack = 1e-4;
      expect(depthAt(least!, offset)).toBeLessThanOrEqual(depthAt(wanted!, offset) + slack);
      expect(depthAt(wanted!, offset)).toBeLessThanOrEqual(depthAt(most!, offset) + slack);
    }
  });
});

/** Depth of an outline at an offset, between its points by a straight line; 0 outside. */
function depthAt(points: readonly SectionPoint[], offset: number): number {
  for (let i = 1; i < points.length; i += 1) {
    const [a, b] = [points[i - 1]!, points[i]!];
    if (offset >= a.offset && offset <= b.offset) {
      return a.offset === b.offset
        ? Math.max(a.depth, b.depth)
        : a.depth + ((b.depth - a.depth) * (offset - a.offset)) / (b.offset - a.offset);
    }
  }
  return 0;
}

describe('the shape of the root', () => {
  it('of a U is a circle of half the width, with upright walls', () => {
    const points = targetOutline(U, 'wanted');
    expect(fitRadius(points.filter((point) => point.depth > 0.004))).toBeCloseTo(0.009, 6);
    expect(points[1]!.offset).toBeCloseTo(-0.009, 12);
    expect(points[1]!.depth).toBeCloseTo(0.003, 12);
  });

  it('of a U shallower than half its width is the segment through both shoulders', () => {
    const points = targetOutline({ ...U, depth: { wanted: 0.004, plus: 0, minus: 0 } }, 'wanted');
    expect(fitRadius(points)).toBeCloseTo((0.009 ** 2 + 0.004 ** 2) / (2 * 0.004), 9);
  });

  it('of a wash is flat over its floor', () => {
    const points = targetOutline(GROOVES[2]![1], 'wanted').filter(
      (point) => Math.abs(point.depth - 0.004) < 1e-12,
    );
    expect(points.map((point) => point.offset)).toEqual([-0.0065, 0.0065]);
  });
});

it('only a pocket runs out at its ends', () => {
  expect(runOutLength({ ...U, shape: 'pocket' })).toBeCloseTo(0.048, 12);
  expect(runOutLength(U)).toBe(0);
  expect(runOutLength({ ...U, shape: 'wash' })).toBe(0);
});
