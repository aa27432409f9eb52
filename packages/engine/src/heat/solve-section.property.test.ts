import fc from 'fast-check';
import { expect, it } from 'vitest';
import { thermalOf } from '../material/index.ts';
import { roundFloor, runOut } from './constant-metal.test-support.ts';
import { solveSection } from './solve-section.ts';

const METALS = ['carbon_steel', 'austenitic_stainless', 'copper_alloy', 'cast_iron'] as const;

const jobs = fc.record({
  family: fc.constantFrom(...METALS),
  thickness: fc.double({ min: 0.012, max: 0.08, noNaN: true }),
  radius: fc.double({ min: 0.004, max: 0.012, noNaN: true }),
  layers: fc.integer({ min: 1, max: 3 }),
  depth: fc.double({ min: 0.002, max: 0.009, noNaN: true }),
  kept: fc.double({ min: 5e4, max: 1.5e6, noNaN: true }),
  start: fc.double({ min: 263, max: 480, noNaN: true }),
  ambient: fc.double({ min: 253, max: 313, noNaN: true }),
  losses: fc.constantFrom('film_and_radiation' as const, 'none' as const),
  interpass: fc.option(fc.double({ min: 350, max: 600, noNaN: true }), { nil: undefined }),
});

it('accounts for every joule, and is nowhere colder than what it began with', () => {
  fc.assert(
    fc.property(jobs, (job) => {
      const passes = Array.from({ length: job.layers }, (_, layer) => ({
        at: 40 * layer,
        duration: 1.5,
        floor: roundFloor(job.radius, ((layer + 1) * job.depth) / 1.5),
        keptPerLength: job.kept,
      }));
      const { value } = runOut(
        solveSection({
          ...job,
          metal: thermalOf(job.family),
          passes,
          interpassMost: job.interpass,
          until: 200,
          frameTimes: [0, 1, 50, 199],
          quality: 'quick',
        }),
      );
      const { given, cutOut, lost, stored, error } = value.balance;
      expect(error).toBeLessThan(1e-6);
      expect(Math.abs(given - cutOut - lost - stored)).toBeLessThan(1e-6 * Math.max(given, Math.abs(lost)));
      expect(given).toBeCloseTo(job.layers * job.kept, 3);
      expect(value.frames.length).toBeGreaterThanOrEqual(4);
      const coldest = Math.min(job.start, job.losses === 'none' ? job.start : job.ambient);
      for (const frame of value.frames) {
        for (const hot of frame.temperature)
          if (!Number.isNaN(hot)) expect(hot).toBeGreaterThan(coldest - 0.5);
      }
      expect(value.backFacePeak).toBeGreaterThanOrEqual(job.start - 1e-3);
    }),
    { seed: 41, numRuns: 25 },
  );
});

it('is hotter everywhere when more heat is kept', () => {
  fc.assert(
    fc.property(jobs, fc.double({ min: 1.2, max: 2, noNaN: true }), (job, more) => {
      const solve = (kept: number) =>
        runOut(
          solveSection({
            metal: thermalOf(job.family),
            thickness: job.thickness,
            ambient: job.ambient,
            start: job.start,
            losses: job.losses,
            passes: [{ at: 0, duration: 1.5, floor: roundFloor(job.radius, job.depth), keptPerLength: kept }],
            until: 60,
            frameTimes: [],
            quality: 'quick',
          }),
        ).value;
      const [less, much] = [solve(job.kept), solve(job.kept * more)];
      expect(much.backFacePeak).toBeGreaterThanOrEqual(less.backFacePeak);
      much.peak.forEach((hot, cell) => {
        if (!Number.isNaN(hot)) expect(hot).toBeGreaterThan(less.peak[cell]! - 1);
      });
    }),
    { seed: 42, numRuns: 8 },
  );
});
