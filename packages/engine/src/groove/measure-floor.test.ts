import { describe, expect, it } from 'vitest';
import { cutPass, type Floor, flatFloor } from './floor.ts';
import { ligamentUnder, measureFloor, shallowestIn } from './measure-floor.ts';
import { passArea, passWidth, WALL_FLARE } from './pass-section.ts';

const STEP = 2e-5;
const cut = (...passes: { offset: number; width: number; depth: number }[]): Floor =>
  passes.reduce((floor, pass) => cutPass(floor, pass), flatFloor(0.03, STEP));

describe('a shallow pass: the circular segment', () => {
  const shape = measureFloor(cut({ offset: 0.001, width: 0.016, depth: 0.004 }));

  it('has the depth, width, area and radius of the segment', () => {
    expect(shape.deepest).toBeCloseTo(0.004, 12);
    expect(shape.width).toBeCloseTo(2 * Math.sqrt(0.004 * (0.016 - 0.004)), 5);
    expect(shape.area / passArea({ width: 0.016, depth: 0.004 })).toBeCloseTo(1, 4);
    expect(shape.rootRadius).toBeCloseTo(0.008, 8);
    expect(shape.cuspHeight).toBe(0);
  });
});

describe('a deep pass: a U with near-vertical walls', () => {
  const shape = measureFloor(cut({ offset: 0, width: 0.016, depth: 0.02 }));

  it('has the radius of its bottom, walls at the flare, and the width of the closed form', () => {
    expect(shape.rootRadius).toBeCloseTo(0.008, 5);
    expect(shape.wallAngle).toBeCloseTo(WALL_FLARE, 4);
    expect(shape.width).toBeCloseTo(passWidth({ width: 0.016, depth: 0.02 }), 5);
    expect(shape.area / passArea({ width: 0.016, depth: 0.02 })).toBeCloseTo(1, 4);
  });
});

describe('two tracks', () => {
  const [radius, apart, depth] = [0.008, 0.01, 0.005];
  const shape = measureFloor(
    cut({ offset: -apart / 2, width: 2 * radius, depth }, { offset: apart / 2, width: 2 * radius, depth }),
  );

  it('leave the ridge between two circles: R - sqrt(R2 - s2/4) above the first bottom', () => {
    // The second pass starts on the plate beside the first track, or in it: s > half the first one's width here.
    const ridge = radius - Math.sqrt(radius * radius - (apart / 2) ** 2);
    expect(apart).toBeGreaterThan(passWidth({ width: 2 * radius, depth }) / 2);
    expect(shape.cuspHeight).toBeCloseTo(ridge, 6);
    expect(shape.deepest).toBeCloseTo(depth, 9);
  });

  it('keep the root radius of one of them, not of both', () => {
    expect(shape.rootRadius).toBeCloseTo(radius, 5);
  });

  it('that do not touch leave the plate between them as the ridge', () => {
    const far = measureFloor(
      cut({ offset: -0.012, width: 0.016, depth: 0.004 }, { offset: 0.012, width: 0.016, depth: 0.003 }),
    );
    expect(far.cuspHeight).toBeCloseTo(0.003, 9);
  });
});

describe('shapes that are drawn by hand', () => {
  const floorOf = (depthAt: (offset: number) => number, step = 1e-4): Floor => {
    const floor = flatFloor(0.03, step);
    return { ...floor, depth: floor.depth.map((_, i) => Math.max(0, depthAt(floor.first + i * step))) };
  };

  it('a V has its wall angle, width and area', () => {
    const angle = Math.PI / 6;
    const shape = measureFloor(floorOf((x) => 0.01 - Math.abs(x) / Math.tan(angle)));
    expect(shape.wallAngle).toBeCloseTo(angle, 4);
    expect(shape.width).toBeCloseTo(2 * 0.01 * Math.tan(angle), 8);
    expect(shape.area).toBeCloseTo(0.01 * 0.01 * Math.tan(angle), 6);
  });

  it('a box has upright walls and a flat root: no ridge, no small radius', () => {
    const shape = measureFloor(floorOf((x) => (Math.abs(x) < 0.01 ? 0.005 : 0), 1e-5));
    expect(shape.wallAngle).toBeLessThan(0.01);
    expect(shape.cuspHeight).toBe(0);
    expect(shape.rootRadius === undefined || shape.rootRadius > 1).toBe(true);
    expect(shape.width).toBeCloseTo(0.02, 4);
  });

  it('an untouched plate has no shape', () => {
    expect(measureFloor(flatFloor(0.01, 1e-3))).toEqual({
      deepest: 0,
      width: 0,
      rootRadius: undefined,
      wallAngle: 0,
      cuspHeight: 0,
      area: 0,
    });
  });
});

describe('shallowestIn', () => {
  const floor = cut({ offset: 0, width: 0.016, depth: 0.005 });

  it('is the depth at the edge of the zone', () => {
    const edge = 0.005 - (0.008 - Math.sqrt(0.008 ** 2 - 0.003 ** 2));
    expect(shallowestIn(floor, 0.006)).toBeCloseTo(edge, 6);
    expect(shallowestIn(floor, 0)).toBeCloseTo(0.005, 12);
    expect(shallowestIn(floor, 0.05)).toBe(0);
  });
});

describe('ligamentUnder', () => {
  const groove = cutPass(flatFloor(0.02, 0.0005), { offset: 0, width: 0.016, depth: 0.01 });

  it('is what is left of the plate under the deepest point', () => {
    expect(ligamentUnder(groove, 0.032)).toBeCloseTo(0.022, 12);
  });

  it('is the whole plate under an untouched floor, and below 0 where the groove goes through', () => {
    expect(ligamentUnder(flatFloor(0.02, 0.001), 0.032)).toBe(0.032);
    expect(ligamentUnder(groove, 0.008)).toBeCloseTo(-0.002, 12);
  });
});
