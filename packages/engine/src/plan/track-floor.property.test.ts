import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cutPass, type Floor, flatFloor, floorDepthAt, heightAt, shallowestIn } from '../groove/index.ts';
import { type Pattern, trackOffset } from './pattern.ts';
import { readTracks } from './read-floor.ts';
import { fillFloor } from './track-floor.ts';

/** Runs fixed by a seed, so that a failure comes back. */
const RUNS = { seed: 31, numRuns: 150 };
const STEP = 0.02e-3;

/** Even over the range: draws of doubles are even over their bits, so nearly all lie at the small end. */
const between = (min: number, max: number) =>
  fc.noBias(fc.integer({ min: 0, max: 10_000 })).map((part) => min + ((max - min) * part) / 10_000);

/** Two layers of up to five tracks, whose cuts differ by up to so much about their middle. */
const jobs = (differ: number) =>
  fc.record({
    tracks: fc.integer({ min: 2, max: 5 }),
    radius: between(3e-3, 12e-3),
    spacingShare: between(0.3, 1.9),
    middle: between(0.5e-3, 8e-3),
    parts: fc.array(between(1 - differ, 1 + differ), { minLength: 10, maxLength: 10 }),
    // A finished track is passed over in later layers, so that its neighbours can cut it away.
    skipped: fc.array(fc.boolean(), { minLength: 5, maxLength: 5 }),
    zoneShare: between(0, 1),
  });
type Given = typeof jobs extends (differ: number) => fc.Arbitrary<infer T> ? T : never;

interface Both {
  readonly shape: { readonly deepest: number; readonly shallowest: number; readonly width: number };
  readonly floor: Floor;
  readonly zone: number;
}

/** The same passes, once as depths at the tracks and once on a grid; none varies along the seam. */
function cutBothWays(given: Given): Both {
  const { tracks, radius } = given;
  // The tracks lie on grid points, so that the grid sees their deepest points.
  const spacing = 2 * STEP * Math.round((given.spacingShare * radius) / (2 * STEP));
  const pattern: Pattern = { tracks, spacing };
  const one = () => new Float64Array(1);
  const depths = Array.from({ length: tracks }, one);
  const reach = depths.map((_, apart) => Float64Array.of(heightAt(radius, apart * spacing)));
  const under = one();
  let floor = flatFloor(Math.abs(trackOffset(pattern, 0)) + radius + 4e-3, STEP);
  for (let layer = 0; layer < 2; layer += 1) {
    for (let track = 0; track < tracks; track += 1) {
      if (layer === 1 && given.skipped[track] === true) continue;
      const depth = given.middle * given.parts[layer * 5 + track]!;
      fillFloor(under, depths, reach, track);
      depths[track]![0] = under[0]! + depth;
      floor = cutPass(floor, { offset: trackOffset(pattern, track), width: 2 * radius, depth });
    }
  }
  const zone = given.zoneShare * (tracks - 1) * spacing;
  const out = {
    deepest: one(),
    depth: one(),
    shallowest: one(),
    width: one(),
    widthLeast: one(),
    widthMost: one(),
  };
  const still = Array.from({ length: pattern.tracks }, () => one().fill(1));
  readTracks(out, 0, pattern, zone, { low: still, high: still, ridge: still }, depths, radius);
  return {
    shape: { deepest: out.deepest[0]!, shallowest: out.shallowest[0]!, width: out.width[0]! },
    floor,
    zone,
  };
}

/** Shallowest point of the zone on the grid, its edges included. */
function shallowestOnGrid({ floor, zone }: Both): number {
  return Math.min(
    shallowestIn(floor, zone),
    ...[-zone / 2, zone / 2].map((edge) => floorDepthAt(floor, edge)),
  );
}

/** What a ridge of steep walls may lose between two grid points [m]. */
function gridError({ depth }: Floor): number {
  return depth
    .subarray(1)
    .reduce((most, each, index) => Math.max(most, Math.abs(each - depth[index]!)), 1e-6);
}

describe('The floor of several tracks in closed form', () => {
  it('is as deep as the same passes leave it on a grid', () => {
    fc.assert(
      fc.property(jobs(0.9), (given) => {
        const { shape, floor } = cutBothWays(given);
        expect(Math.abs(shape.deepest - Math.max(...floor.depth))).toBeLessThan(1e-9);
      }),
      RUNS,
    );
  });

  it('promises no more depth in the zone than the grid shows, however the cuts differ', () => {
    fc.assert(
      fc.property(jobs(0.9), (given) => {
        const both = cutBothWays(given);
        expect(both.shape.shallowest).toBeLessThan(shallowestOnGrid(both) + gridError(both.floor));
      }),
      RUNS,
    );
  });

  it('is as shallow in the zone as on the grid where the tracks are about as deep', () => {
    fc.assert(
      fc.property(jobs(0.1), (given) => {
        // so far apart and so shallow that no track reaches under another's centre line
        const both = cutBothWays({
          ...given,
          spacingShare: Math.max(1, given.spacingShare),
          middle: Math.min(0.45 * given.radius, given.middle),
          skipped: [],
        });
        const error = Math.abs(both.shape.shallowest - shallowestOnGrid(both));
        expect(error).toBeLessThan(gridError(both.floor));
      }),
      RUNS,
    );
  });
});
