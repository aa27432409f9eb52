import { describe, expect, it } from 'vitest';
import { arcHeight, halfWidthAt, heightAt, passArea, passWidth, WALL_FLARE } from './pass-section.ts';

const R = 0.008;

/** Area below a depth by Simpson's rule over the half width, which knows nothing of segments. */
function areaBySimpson(radius: number, depth: number, slices = 20_000): number {
  const tangent = Math.min(depth, arcHeight(radius));
  const simpson = (from: number, to: number, f: (x: number) => number): number => {
    const step = (to - from) / slices;
    let sum = f(from) + f(to);
    for (let i = 1; i < slices; i += 1) sum += f(from + i * step) * (i % 2 === 0 ? 2 : 4);
    return (sum * step) / 3;
  };
  // Over the arc height is R (1 - cos t), which takes the square root out of the integrand.
  const end = Math.acos(1 - tangent / radius);
  const arc = simpson(
    0,
    end,
    (t) => 2 * halfWidthAt(radius, radius * (1 - Math.cos(t))) * radius * Math.sin(t),
  );
  return depth > tangent ? arc + simpson(tangent, depth, (height) => 2 * halfWidthAt(radius, height)) : arc;
}

describe('the section of one pass', () => {
  it.each([0.0005, 0.002, 0.004, 0.0075, 0.0076, 0.01, 0.02])(
    'has the area of its integral at %d m deep',
    (depth) => {
      expect(passArea({ width: 2 * R, depth }) / areaBySimpson(R, depth)).toBeCloseTo(1, 9);
    },
  );

  it('is a half circle at the depth of its radius, but for the flare', () => {
    const halfCircle = (Math.PI * R * R) / 2;
    expect(passArea({ width: 2 * R, depth: R }) / halfCircle).toBeCloseTo(1, 3);
  });

  it('has no area and no width at no depth', () => {
    expect(passArea({ width: 2 * R, depth: 0 })).toBe(0);
    expect(passWidth({ width: 2 * R, depth: 0 })).toBe(0);
  });

  it('grows in area as fast as it is wide', () => {
    for (const depth of [0.001, 0.005, 0.0074, 0.0078, 0.015]) {
      const step = 1e-7;
      const rate =
        (passArea({ width: 2 * R, depth: depth + step }) - passArea({ width: 2 * R, depth: depth - step })) /
        (2 * step);
      expect(rate).toBeCloseTo(passWidth({ width: 2 * R, depth }), 6);
    }
  });
});

describe('halfWidthAt and heightAt', () => {
  it('are each other’s inverse', () => {
    for (let step = 0; step <= 200; step += 1) {
      const height = (step / 100) * R;
      expect(heightAt(R, halfWidthAt(R, height))).toBeCloseTo(height, 12);
      const distance = (step / 200) * 1.05 * R;
      expect(halfWidthAt(R, heightAt(R, distance))).toBeCloseTo(distance, 12);
    }
  });

  it('go over from arc to wall without a step or a kink', () => {
    const at = arcHeight(R);
    const step = 1e-8;
    expect(Math.abs(halfWidthAt(R, at + step) - halfWidthAt(R, at - step))).toBeLessThan(step);
    const below = (halfWidthAt(R, at) - halfWidthAt(R, at - step)) / step;
    const above = (halfWidthAt(R, at + step) - halfWidthAt(R, at)) / step;
    expect(below).toBeCloseTo(Math.tan(WALL_FLARE), 4);
    expect(above).toBeCloseTo(Math.tan(WALL_FLARE), 4);
  });

  it('rise', () => {
    let before = -1;
    for (let step = 0; step <= 300; step += 1) {
      const half = halfWidthAt(R, (step / 100) * R);
      expect(half).toBeGreaterThan(before);
      before = half;
    }
  });
});
