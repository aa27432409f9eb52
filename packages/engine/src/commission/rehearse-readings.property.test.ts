import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { commissionChecks } from './commission-checks.ts';
import { judgeReading } from './judge-reading.ts';
import { rehearseReadings } from './rehearse-readings.ts';
import { testJob, testPass, testSupply } from './shop.test-support.ts';

const outcome = commissionChecks({ passes: [testPass()] }, testJob(), testSupply());
const CHECKS = outcome.ok ? outcome.value : [];

describe('rehearseReadings', () => {
  it('gives one reading for each check, each as it should be, whatever the seed', () => {
    expect(CHECKS.length).toBeGreaterThan(10);
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 2 ** 31 - 1 }), (seed) => {
        const readings = rehearseReadings(CHECKS, seed);
        expect(readings.map(({ check }) => check)).toEqual(CHECKS.map(({ id }) => id));
        for (const [index, check] of CHECKS.entries())
          expect(judgeReading(check, readings[index]!.value).verdict).toMatch(/^(in_band|met)$/u);
      }),
      { numRuns: 30, seed: 1 },
    );
  });

  it('tells the same again for the same seed, and another for another', () => {
    expect(rehearseReadings(CHECKS, 3)).toEqual(rehearseReadings(CHECKS, 3));
    expect(rehearseReadings(CHECKS, 4)).not.toEqual(rehearseReadings(CHECKS, 3));
  });
});
