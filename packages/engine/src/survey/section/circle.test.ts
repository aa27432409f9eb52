import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { geometricCircle, taubinCircle } from './circle.ts';

describe('a circle through points', () => {
  it('is the circle they lie on, whatever its place and size', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1, max: 1, noNaN: true }),
        fc.double({ min: -1, max: 1, noNaN: true }),
        fc.double({ min: 1e-3, max: 1, noNaN: true }),
        fc.double({ min: 0.4, max: 6, noNaN: true }),
        (cx, cy, radius, span) => {
          const angles = Array.from({ length: 12 }, (_, i) => (span * i) / 11);
          const x = angles.map((a) => cx + radius * Math.cos(a));
          const y = angles.map((a) => cy + radius * Math.sin(a));
          expect(taubinCircle(x, y)!.radius / radius).toBeCloseTo(1, 4);
          expect(geometricCircle(x, y)!.radius / radius).toBeCloseTo(1, 7);
        },
      ),
      { seed: 3, numRuns: 100 },
    );
  });

  it('is none through points on a line, or through two', () => {
    expect(taubinCircle([0, 1, 2, 3], [1, 2, 3, 4])).toBeUndefined();
    expect(geometricCircle([0, 1, 2], [0, 1, 0])).toBeUndefined();
    expect(taubinCircle([5, 5, 5], [1, 1, 1])).toBeUndefined();
  });

  it('does not follow a wild point, and weighs it 0', () => {
    const angles = Array.from({ length: 40 }, (_, i) => 3.4 + (2.5 * i) / 39);
    const x = angles.map((a, i) => 6 * Math.cos(a) + 1e-3 * ((i * 7) % 5));
    const y = angles.map((a) => 6 * Math.sin(a));
    y[20]! -= 2;
    const robust = geometricCircle(x, y)!;
    expect(Math.abs(robust.radius - 6)).toBeLessThan(0.01);
    expect(robust.weights[20]).toBe(0);
    expect(Math.abs(geometricCircle(x, y, false)!.radius - 6)).toBeGreaterThan(0.05);
  });
});
