import fc from 'fast-check';
import { expect, test } from 'vitest';
import { contourRings } from './contour-rings.ts';

const line = (length: number): number[] => Array.from({ length }, (_, index) => index);

test('rings enclose all hot crossings of any grid and no cold one', () => {
  const values = fc.array(fc.integer({ min: -3, max: 3 }), { minLength: 48, maxLength: 48 });
  fc.assert(
    fc.property(values, (list) => {
      const grid = { x: line(8), y: line(6), values: Float64Array.from(list, (value) => value + 0.001) };
      const rings = contourRings(grid, 0.5);
      // how often the rings go round a place, from the side's own crossings with a ray to the right
      const turns = (px: number, py: number): number =>
        rings.reduce(
          (sum, ring) =>
            sum +
            ring.reduce((count, from, index) => {
              const to = ring[(index + 1) % ring.length]!;
              if (from.y <= py === to.y <= py) return count;
              const x = from.x + ((py - from.y) / (to.y - from.y)) * (to.x - from.x);
              return x > px ? count + (to.y > from.y ? 1 : -1) : count;
            }, 0),
          0,
        );
      for (let row = 1; row < 5; row += 1) {
        for (let column = 1; column < 7; column += 1) {
          expect(turns(column, row) !== 0).toBe(list[row * 8 + column]! > 0);
        }
      }
    }),
    { seed: 4, numRuns: 200 },
  );
});
