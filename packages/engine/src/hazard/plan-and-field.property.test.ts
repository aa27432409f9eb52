import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { convexHull } from './convex-hull.ts';
import { fireZone, LEAST_RADIUS } from './fire-zone.ts';
import { distanceFromLead, distanceFromPair, fieldOfLead, fieldOfPair } from './magnetic-field.ts';
import { zoneOutlines } from './zone-outline.ts';

const RUNS = { seed: 20261126, numRuns: 200 };
const coordinate = fc.double({ min: -100, max: 100, noNaN: true });
const point = fc.record({ x: coordinate, y: coordinate });

/** Twice the area to the left of a directed line. */
const leftOf = (a: { x: number; y: number }, b: typeof a, c: typeof a): number =>
  (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);

function holds(outline: readonly { x: number; y: number }[], inner: { x: number; y: number }): boolean {
  return outline.every((corner, index) => {
    const next = outline[(index + 1) % outline.length]!;
    return leftOf(corner, next, inner) >= -1e-6 * Math.hypot(next.x - corner.x, next.y - corner.y) - 1e-6;
  });
}

describe('convexHull', () => {
  it('holds every point, turns one way only, and is made of the points', () => {
    fc.assert(
      fc.property(fc.array(point, { minLength: 3, maxLength: 30 }), (points) => {
        const hull = convexHull(points);
        if (hull.length < 3) return;
        expect(points.every((one) => holds(hull, one))).toBe(true);
        expect(hull.every((corner) => points.includes(corner))).toBe(true);
      }),
      RUNS,
    );
  });
});

describe('fireZone', () => {
  it('is never smaller than 35 ft, whatever is wanted, and never shorter ahead than all round', () => {
    fc.assert(
      fc.property(
        fc.option(fc.double({ min: 0, max: 200, noNaN: true }), { nil: undefined }),
        fc.double({ min: 0, max: 200, noNaN: true }),
        fc.double({ min: 0, max: 100, noNaN: true }),
        (radius, ahead, height) => {
          const zone = fireZone({ radius, ahead, height });
          expect(zone.radius).toBeGreaterThanOrEqual(LEAST_RADIUS);
          expect(zone.radius).toBeGreaterThanOrEqual(radius ?? 0);
          expect(zone.ahead).toBeGreaterThanOrEqual(zone.radius);
          expect(zone.down).toBeGreaterThanOrEqual(height);
          expect(fireZone({ radius, ahead, height: height + 1 }).radius).toBeGreaterThanOrEqual(zone.radius);
        },
      ),
      RUNS,
    );
  });

  it('leaves nothing out that lies within its radius of the seam, nor the tip of the jet', () => {
    fc.assert(
      fc.property(
        fc.array(point, { minLength: 2, maxLength: 5 }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 2 * Math.PI, noNaN: true }),
        fc.boolean(),
        (seam, share, angle, bothWays) => {
          const zone = fireZone({ ahead: 25, height: 2 });
          const { round, withJet } = zoneOutlines(seam, zone, bothWays);
          const [start, end] = [seam[0]!, seam[1]!];
          const near = {
            x: start.x + share * (end.x - start.x) + zone.radius * Math.cos(angle),
            y: start.y + share * (end.y - start.y) + zone.radius * Math.sin(angle),
          };
          expect(holds(round, near)).toBe(true);
          expect(holds(withJet, near)).toBe(true);
          const length = Math.hypot(end.x - start.x, end.y - start.y);
          if (length < 1e-3) return;
          const along = { x: (end.x - start.x) / length, y: (end.y - start.y) / length };
          expect(holds(withJet, { x: end.x + 25 * along.x, y: end.y + 25 * along.y })).toBe(true);
          if (bothWays)
            expect(holds(withJet, { x: start.x - 25 * along.x, y: start.y - 25 * along.y })).toBe(true);
        },
      ),
      RUNS,
    );
  });
});

describe('the field', () => {
  const current = fc.double({ min: 1, max: 5000, noNaN: true });
  const field = fc.double({ min: 1e-5, max: 1e-2, noNaN: true });
  const apart = fc.double({ min: 0.01, max: 20, noNaN: true });
  it('at the distance that is found is the field that was asked for, and a pair is never worse than one lead', () => {
    fc.assert(
      fc.property(current, field, apart, (amperes, wanted, between) => {
        const single = distanceFromLead(amperes, wanted);
        const pair = distanceFromPair(amperes, wanted, between);
        expect(fieldOfLead(amperes, single) / wanted).toBeCloseTo(1, 9);
        expect(fieldOfPair(amperes, pair, between) / wanted).toBeCloseTo(1, 6);
        expect(pair).toBeLessThanOrEqual(single);
      }),
      RUNS,
    );
  });
});
