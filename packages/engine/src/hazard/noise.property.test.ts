import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dailyExposureLevel, nioshAverage, nioshDose, nioshDuration } from './equal-energy-rule.ts';
import { oshaAverage, oshaDose, oshaDuration } from './five-decibel-rule.ts';
import { hearingAttenuation } from './hearing-protection.ts';
import { distanceToLevel, levelAtDistance, levelOfAll } from './sound-level.ts';

const RUNS = { seed: 20261125, numRuns: 300 };
const level = fc.double({ min: 80, max: 130, noNaN: true });
const task = fc.record({ level, time: fc.double({ min: 1, max: 30_000, noNaN: true }) });
const tasks = fc.array(task, { minLength: 1, maxLength: 8 });

describe('doses', () => {
  it('add up over the spells of a shift, and over the parts of one spell', () => {
    fc.assert(
      fc.property(tasks, tasks, fc.double({ min: 0, max: 1, noNaN: true }), (some, others, share) => {
        for (const dose of [(all: typeof some) => oshaDose(all, 80), nioshDose]) {
          expect(dose([...some, ...others])).toBeCloseTo(dose(some) + dose(others), 6);
          const parts = some.flatMap(({ level: at, time }) => [
            { level: at, time: share * time },
            { level: at, time: (1 - share) * time },
          ]);
          expect(dose(parts) / dose(some)).toBeCloseTo(1, 9);
        }
      }),
      RUNS,
    );
  });

  it('never count less with the lower threshold, and agree from 90 dBA on', () => {
    fc.assert(
      fc.property(tasks, (all) => {
        expect(oshaDose(all, 80)).toBeGreaterThanOrEqual(oshaDose(all, 90));
        const loud = all.filter(({ level: at }) => at >= 90);
        expect(oshaDose(loud, 80)).toBe(oshaDose(all, 90));
      }),
      RUNS,
    );
  });

  it('give eight hours at one level that level as average, by every rule', () => {
    fc.assert(
      fc.property(level, (at) => {
        const day = [{ level: at, time: 8 * 3600 }];
        expect(oshaAverage(oshaDose(day, 80))).toBeCloseTo(at, 2);
        expect(dailyExposureLevel(day)).toBeCloseTo(at, 9);
        // 3 dB stands for 10 log10(2), so it strays by half a per cent of the distance from 85
        expect(Math.abs(nioshAverage(nioshDose(day)) - at)).toBeLessThanOrEqual(
          0.004 * Math.abs(at - 85) + 1e-9,
        );
      }),
      RUNS,
    );
  });
});

describe('permitted time', () => {
  it('falls with the level, quicker by the 3 dB rule, which is never the laxer from 85 dBA on', () => {
    fc.assert(
      fc.property(level, fc.double({ min: 0.01, max: 20, noNaN: true }), (at, rise) => {
        expect(oshaDuration(at + rise)).toBeLessThan(oshaDuration(at));
        expect(nioshDuration(at + rise) / nioshDuration(at)).toBeLessThan(
          oshaDuration(at + rise) / oshaDuration(at),
        );
        if (at >= 85) expect(nioshDuration(at)).toBeLessThanOrEqual(oshaDuration(at));
      }),
      RUNS,
    );
  });
});

describe('levels', () => {
  it('of several noises lie above the loudest and below it by at most 10 log10(n)', () => {
    fc.assert(
      fc.property(fc.array(level, { minLength: 1, maxLength: 10 }), (levels) => {
        const all = levelOfAll(levels);
        const loudest = Math.max(...levels);
        expect(all).toBeGreaterThanOrEqual(loudest - 1e-9);
        expect(all).toBeLessThanOrEqual(loudest + 10 * Math.log10(levels.length) + 1e-9);
      }),
      RUNS,
    );
  });

  it('at the distance that is found are the level that was asked for', () => {
    fc.assert(
      fc.property(level, fc.double({ min: 60, max: 140, noNaN: true }), (power, wanted) => {
        expect(levelAtDistance(power, distanceToLevel(power, wanted))).toBeCloseTo(wanted, 9);
      }),
      RUNS,
    );
  });
});

describe('hearing protection', () => {
  const rating = fc.double({ min: 0, max: 40, noNaN: true });
  it('of two protectors is 5 dB more than of the better one, never the sum, and never below nothing', () => {
    fc.assert(
      fc.property(
        rating,
        rating,
        fc.boolean(),
        fc.constantFrom('rated', 'half', 'niosh'),
        (plug, muff, formable, derating) => {
          const both = hearingAttenuation({ plug, muff, formable }, derating)!;
          const one = hearingAttenuation({ plug, muff: null, formable }, derating)!;
          const other = hearingAttenuation({ plug: null, muff, formable }, derating)!;
          expect(both).toBe(Math.max(one, other) + 5);
          expect(Math.min(one, other)).toBeGreaterThanOrEqual(0);
        },
      ),
      RUNS,
    );
  });

  it('is unknown where nothing is worn', () => {
    expect(hearingAttenuation({ plug: null, muff: null, formable: true }, 'half')).toBeNull();
  });
});
