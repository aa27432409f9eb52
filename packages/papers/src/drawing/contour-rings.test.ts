import { describe, expect, test } from 'vitest';
import { type ContourPoint, contourRings, type ValueGrid } from './contour-rings.ts';

function gridOf(columns: number, rows: number, value: (x: number, y: number) => number): ValueGrid {
  const x = Array.from({ length: columns }, (_, index) => index);
  const y = Array.from({ length: rows }, (_, index) => index);
  return { x, y, values: Float64Array.from(y.flatMap((down) => x.map((across) => value(across, down)))) };
}

/** Area inside a ring; negative for a hole. */
function area(ring: readonly ContourPoint[]): number {
  return ring.reduce((sum, point, index) => {
    const next = ring[(index + 1) % ring.length]!;
    return sum + (point.x * next.y - next.x * point.y) / 2;
  }, 0);
}

describe('rings of a level', () => {
  test('go round a hot place, with the area of the true circle', () => {
    const rings = contourRings(
      gridOf(41, 41, (x, y) => -Math.hypot(x - 20, y - 20)),
      -10,
    );
    expect(rings).toHaveLength(1);
    // chords cut a little off the circle
    expect(area(rings[0]!) / (Math.PI * 100)).toBeCloseTo(1, 2);
    expect(rings[0]!.some(({ rim }) => rim)).toBe(false);
  });

  test('go the other way round a cold place inside a hot one', () => {
    const rings = contourRings(
      gridOf(41, 41, (x, y) => Math.hypot(x - 20, y - 20)),
      5,
    );
    expect(rings.map((ring) => Math.sign(area(ring))).sort()).toEqual([-1, 1]);
  });

  test('run along the edge where the level reaches it', () => {
    const rings = contourRings(
      gridOf(5, 5, () => 1),
      0,
    );
    expect(rings).toHaveLength(1);
    expect(area(rings[0]!)).toBeCloseTo(16, 9);
    expect(rings[0]!.every(({ rim }) => rim)).toBe(true);
    expect(
      contourRings(
        gridOf(5, 5, () => -1),
        0,
      ),
    ).toEqual([]);
  });

  test('part two hot corners of a saddle, or join them, by the mean', () => {
    const corners = (hot: number): ValueGrid => ({
      x: [0, 1],
      y: [0, 1],
      values: Float64Array.from([hot, 0, 0, hot]),
    });
    expect(contourRings(corners(1.5), 1)).toHaveLength(2);
    expect(contourRings(corners(3), 1)).toHaveLength(1);
  });
});
