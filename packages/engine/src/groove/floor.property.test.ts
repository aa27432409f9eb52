import fc from 'fast-check';
import { expect, it } from 'vitest';
import { cutPass, type FloorPass, flatFloor } from './floor.ts';
import { measureFloor, shallowestIn } from './measure-floor.ts';

const mm = (min: number, max: number) => fc.double({ min, max, noNaN: true }).map((value) => value / 1000);
const pass: fc.Arbitrary<FloorPass> = fc.record({ offset: mm(-15, 15), width: mm(6, 24), depth: mm(0, 15) });
const passes = fc.array(pass, { minLength: 1, maxLength: 6 });
const HALF = 0.06;
const STEP = 2e-4;
const RUNS = { seed: 51, numRuns: 200 };

it('a pass never raises the floor', () => {
  fc.assert(
    fc.property(passes, (list) => {
      let floor = flatFloor(HALF, STEP);
      for (const one of list) {
        const after = cutPass(floor, one);
        const before = floor.depth;
        // one comparison for the whole floor: an expectation at every place takes longer than cutting it
        expect(after.depth.findIndex((depth, i) => !(depth >= before[i]!))).toBe(-1);
        floor = after;
      }
    }),
    RUNS,
  );
});

it('deeper and wider passes in one track leave a floor at least as deep everywhere', () => {
  fc.assert(
    fc.property(pass, mm(0, 4), mm(0, 6), (one, deeper, wider) => {
      const less = cutPass(flatFloor(HALF, STEP), one);
      const more = cutPass(flatFloor(HALF, STEP), {
        ...one,
        depth: one.depth + deeper,
        width: one.width + wider,
      });
      expect(less.depth.findIndex((depth, i) => !(more.depth[i]! >= depth - 1e-12))).toBe(-1);
    }),
    RUNS,
  );
});

it('every shape number is a number, and they fit each other', () => {
  fc.assert(
    fc.property(passes, (list) => {
      const floor = list.reduce((before, one) => cutPass(before, one), flatFloor(HALF, STEP));
      const shape = measureFloor(floor);
      for (const value of [shape.deepest, shape.width, shape.wallAngle, shape.cuspHeight, shape.area]) {
        expect(Number.isFinite(value)).toBe(true);
        expect(value).toBeGreaterThanOrEqual(0);
      }
      expect(shape.cuspHeight).toBeLessThanOrEqual(shape.deepest + 1e-12);
      expect(shape.area).toBeLessThanOrEqual(shape.deepest * (shape.width + 2 * STEP) + 1e-15);
      expect(shallowestIn(floor, 0.01)).toBeLessThanOrEqual(shape.deepest);
      if (shape.rootRadius !== undefined) expect(shape.rootRadius).toBeGreaterThan(0);
    }),
    RUNS,
  );
});
