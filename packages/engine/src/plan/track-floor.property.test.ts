import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cutPass, type Floor, flatFloor, floorDepthAt, heightAt, shallowestIn } from '../groove/index.ts';
import { type Pattern, trackOffset } from './pattern.ts';
import { fillReach, floorAtTrack, readTrackFloor, type TrackFloorShape } from './track-floor.ts';

/** Runs fixed by a seed, so that a failure comes back. */
const RUNS = { seed: 31, numRuns: 250 };
const STEP = 0.02e-3;

/** Even over the range: draws of doubles are even over their bits, so nearly all lie at the small end. */
const between = (min: number, max: number) =>
  fc.noBias(fc.integer({ min: 0, max: 10_000 })).map((part) => min + ((max - min) * part) / 10_000);

const job = fc.record({
  tracks: fc.integer({ min: 1, max: 5 }),
  radius: between(3e-3, 12e-3),
  spacingShare: between(0.3, 1.9),
  cuts: fc.array(between(0.3e-3, 12e-3), { minLength: 10, maxLength: 10 }),
  // A finished track is passed over in later layers, so that its neighbours can cut it away.
  skipped: fc.array(fc.boolean(), { minLength: 10, maxLength: 10 }),
  zoneShare: between(0, 1),
});

interface Both {
  readonly shape: TrackFloorShape;
  readonly floor: Floor;
  readonly zone: number;
}

/** Two layers of the same passes, once as depths at the tracks and once on a grid. */
function cutBothWays(given: typeof job extends fc.Arbitrary<infer T> ? T : never): Both {
  const { tracks, radius } = given;
  // The tracks lie on grid points, so that the grid sees their deepest points.
  const spacing = 2 * STEP * Math.round((given.spacingShare * radius) / (2 * STEP));
  const pattern: Pattern = { tracks, spacing: tracks === 1 ? 0 : spacing };
  const depths = new Float64Array(tracks);
  const reach = new Float64Array(tracks);
  fillReach(reach, 0, tracks, radius, pattern.spacing);
  let floor = flatFloor(Math.abs(trackOffset(pattern, 0)) + radius + 4e-3, STEP);
  for (let layer = 0; layer < 2; layer += 1) {
    for (let track = 0; track < tracks; track += 1) {
      const cut = given.cuts[layer * tracks + track]!;
      if (layer === 1 && given.skipped[track] === true) continue;
      depths[track] = floorAtTrack(depths, reach, 0, tracks, track) + cut;
      floor = cutPass(floor, { offset: trackOffset(pattern, track), width: 2 * radius, depth: cut });
    }
  }
  const zone = given.zoneShare * (tracks - 1) * pattern.spacing;
  const shape: TrackFloorShape = { deepest: 0, shallowest: 0, width: 0 };
  readTrackFloor(depths, reach, 0, pattern, radius, zone, shape);
  return { shape, floor, zone };
}

describe('The floor in closed form', () => {
  it('is as deep as the same passes leave it on a grid', () => {
    fc.assert(
      fc.property(job, (given) => {
        const { shape, floor } = cutBothWays(given);
        expect(Math.abs(shape.deepest - Math.max(...floor.depth))).toBeLessThan(1e-9);
      }),
      RUNS,
    );
  });

  it('is as shallow in the zone as on the grid', () => {
    fc.assert(
      fc.property(job, (given) => {
        const { shape, floor, zone } = cutBothWays(given);
        const edges = [-zone / 2, zone / 2].map((at) => floorDepthAt(floor, at));
        const onGrid = Math.min(shallowestIn(floor, zone), ...edges);
        // A ridge of steep walls loses at most a wall's height over half a step between two grid points.
        const steepest = Math.max(0, ...slopes(floor)) * STEP;
        expect(onGrid - shape.shallowest).toBeGreaterThan(-1e-6 - steepest / 8);
        expect(onGrid - shape.shallowest).toBeLessThan(1e-6 + steepest);
      }),
      RUNS,
    );
  });

  it('is as wide as on the grid', () => {
    fc.assert(
      fc.property(job, (given) => {
        const { shape, floor } = cutBothWays(given);
        const first = floor.depth.findIndex((depth) => depth > 0);
        const last = floor.depth.findLastIndex((depth) => depth > 0);
        // Each edge lies less than a step outside the outermost gouged grid point.
        expect(shape.width - (last - first) * STEP).toBeGreaterThan(-1e-9);
        expect(shape.width - (last - first) * STEP).toBeLessThan(2 * STEP + 1e-9);
      }),
      RUNS,
    );
  });
});

describe('The floor under an electrode', () => {
  it('is what the grid shows there', () => {
    fc.assert(
      fc.property(job, (given) => {
        fc.pre(given.tracks > 1);
        const { tracks, radius } = given;
        const pattern: Pattern = { tracks, spacing: given.spacingShare * radius };
        const depths = Float64Array.from(given.cuts.slice(0, tracks));
        const reach = new Float64Array(tracks);
        fillReach(reach, 0, tracks, radius, pattern.spacing);
        for (let track = 0; track < tracks; track += 1) {
          const outlines = Array.from(
            depths,
            (depth, other) =>
              depth - heightAt(radius, Math.abs(trackOffset(pattern, other) - trackOffset(pattern, track))),
          );
          expect(floorAtTrack(depths, reach, 0, tracks, track)).toBeCloseTo(Math.max(...outlines), 12);
        }
      }),
      RUNS,
    );
  });
});

/** Steepness between neighbouring grid points [-]. */
function slopes(floor: Floor): number[] {
  return Array.from(
    floor.depth.subarray(1),
    (depth, index) => Math.abs(depth - floor.depth[index]!) / floor.step,
  );
}
