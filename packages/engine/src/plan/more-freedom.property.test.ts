import fc from 'fast-check';
import { expect, it } from 'vitest';
import { eased, type Freedom, freeJobs, meritOf } from './more-freedom.test-support.ts';

/** What more freedom may cost at most: rounding of the solving [-]. */
const NEVER_MORE = 0.005;
/** Cases tried; more of them by the environment. */
const CASES = Number(process.env['FURROW_FREEDOMS'] ?? 12);

/**
 * Freedoms that hold. Not among them are more stations: of 90 jobs four came out worse, by 2 to 15 %, all of them jobs that
 * hardly hold. More ways then fail before one that holds is met, and its line is given up or what holds at last has them all.
 */
const HELD: readonly Freedom[] = [
  'tolerance_above',
  'tolerance_below',
  'width',
  'assurance',
  'electrode',
  'current',
  'layers',
  'tracks',
];

it('more freedom never makes a small job worse, whatever the job', { timeout: 60_000 + 5000 * CASES }, () => {
  let plans = 0;
  fc.assert(
    fc.property(freeJobs, fc.constantFrom(...HELD), (job, freedom) => {
      const before = meritOf(job);
      if (Number.isFinite(before)) plans += 1;
      expect(meritOf(eased(job, freedom)), freedom).toBeLessThanOrEqual(before * (1 + NEVER_MORE));
    }),
    { seed: 20_261_128, numRuns: CASES, endOnFailure: true },
  );
  expect(plans).toBeGreaterThan(CASES / 2);
});
