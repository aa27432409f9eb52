import fc from 'fast-check';
import { expect, it } from 'vitest';
import { clipLine } from './clip-line.ts';

const FRAME = { least: { x_m: 0, y_m: 0 }, most: { x_m: 10, y_m: 5 } };
const at = (x_m: number, y_m: number) => ({ x_m, y_m });

it('keeps a line inside as it is, and drops one outside', () => {
  const inside = [at(1, 1), at(9, 4), at(2, 3)];
  expect(clipLine(inside, FRAME)).toEqual([inside]);
  expect(clipLine([at(-1, 6), at(11, 6)], FRAME)).toEqual([]);
  expect(clipLine([at(-1, -1), at(-1, 9)], FRAME)).toEqual([]);
});

it('cuts a line where it leaves, and begins anew where it comes back', () => {
  expect(clipLine([at(-5, 2), at(5, 2), at(5, 8), at(8, 8), at(8, 1)], FRAME)).toEqual([
    [at(0, 2), at(5, 2), at(5, 5)],
    [at(8, 5), at(8, 1)],
  ]);
});

it('never leaves the frame, whatever the line', () => {
  const coordinate = fc.double({ min: -30, max: 30, noNaN: true });
  const point = fc.record({ x_m: coordinate, y_m: coordinate });
  fc.assert(
    fc.property(fc.array(point, { maxLength: 12 }), (line) => {
      for (const { x_m, y_m } of clipLine(line, FRAME).flat()) {
        expect(x_m).toBeGreaterThanOrEqual(-1e-9);
        expect(x_m).toBeLessThanOrEqual(10 + 1e-9);
        expect(y_m).toBeGreaterThanOrEqual(-1e-9);
        expect(y_m).toBeLessThanOrEqual(5 + 1e-9);
      }
    }),
    { seed: 20261125, numRuns: 200 },
  );
});
