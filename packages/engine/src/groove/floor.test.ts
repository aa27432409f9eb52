import { describe, expect, it } from 'vitest';
import { cutPass, type Floor, flatFloor, floorDepthAt } from './floor.ts';
import { passArea } from './pass-section.ts';

const areaOf = (floor: Floor): number => floor.depth.reduce((sum, depth) => sum + depth, 0) * floor.step;

describe('cutPass', () => {
  it.each([0.003, 0.01])(
    'takes off the area of the closed form, the closer the finer the grid (%d m deep)',
    (depth) => {
      const exact = passArea({ width: 0.016, depth });
      const error = (step: number): number =>
        Math.abs(
          areaOf(cutPass(flatFloor(0.02, step), { offset: 0.00013, width: 0.016, depth })) / exact - 1,
        );
      expect(error(4e-4)).toBeLessThan(2e-2);
      expect(error(1e-4)).toBeLessThan(3e-3);
      expect(error(1e-5)).toBeLessThan(1e-4);
      expect(error(1e-5)).toBeLessThan(error(4e-4));
    },
  );

  it('leaves the floor before it as it was', () => {
    const before = flatFloor(0.01, 0.001);
    cutPass(before, { offset: 0, width: 0.01, depth: 0.005 });
    expect(areaOf(before)).toBe(0);
  });

  it('adds up in one track: two passes reach as deep as both together', () => {
    const once = cutPass(flatFloor(0.02, 1e-4), { offset: 0, width: 0.016, depth: 0.006 });
    const twice = cutPass(once, { offset: 0, width: 0.016, depth: 0.005 });
    expect(floorDepthAt(twice, 0)).toBeCloseTo(0.011, 12);
    const deep = cutPass(flatFloor(0.02, 1e-4), { offset: 0, width: 0.016, depth: 0.011 });
    expect(areaOf(twice)).toBeCloseTo(areaOf(deep), 12);
  });

  it('takes nothing off at no depth', () => {
    const cut = cutPass(flatFloor(0.02, 1e-4), { offset: 0, width: 0.016, depth: 0.006 });
    expect(cutPass(cut, { offset: 0, width: 0.016, depth: 0 }).depth).toEqual(cut.depth);
  });

  it('measures from the local floor under the electrode', () => {
    const first = cutPass(flatFloor(0.03, 1e-4), { offset: 0, width: 0.016, depth: 0.006 });
    const local = floorDepthAt(first, 0.004);
    const second = cutPass(first, { offset: 0.004, width: 0.016, depth: 0.002 });
    expect(local).toBeGreaterThan(0);
    expect(floorDepthAt(second, 0.004)).toBeCloseTo(local + 0.002, 12);
  });
});

describe('the floor', () => {
  it('reaches as far as asked on both sides, with a point on the centre line', () => {
    const floor = flatFloor(0.0105, 0.001);
    expect(floor.first).toBeCloseTo(-0.011, 12);
    expect(floor.depth).toHaveLength(23);
    expect(flatFloor(0.01, 0.001).depth).toHaveLength(21);
  });

  it('is read between its points by a straight line, and is untouched beyond them', () => {
    const floor: Floor = { first: -1, step: 1, depth: Float64Array.of(0, 2, 1) };
    expect([-1, -0.5, 0, 0.25, 1].map((offset) => floorDepthAt(floor, offset))).toEqual([0, 1, 2, 1.75, 1]);
    expect([-1.5, 2, 9].map((offset) => floorDepthAt(floor, offset))).toEqual([0, 0, 0]);
  });
});
