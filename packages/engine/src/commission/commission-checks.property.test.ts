import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { judgeReading } from './judge-reading.ts';
import { at, measured, testChecks, testJob, testPass, testSupply } from './shop.test-support.ts';

const SETTINGS = { seed: 20251126, numRuns: 150 };
const job = testJob('6 m');

const passes = fc.record({
  current: fc.double({ min: 100, max: 2000, noNaN: true }),
  voltage: fc.double({ min: 25, max: 60, noNaN: true }),
  pushAngle: fc.double({ min: 0.35, max: 1.4, noNaN: true }),
  travel: fc.double({ min: 2e-4, max: 0.17, noNaN: true }),
  dwell: fc.double({ min: 0, max: 10, noNaN: true }),
});
const resistances = fc.double({ min: 0, max: 0.05, noNaN: true });
const pressures = fc.double({ min: 0, max: 1.5e6, noNaN: true });

function withResistance(resistance: number) {
  return testSupply({ items: testSupply().items.map((item) => ({ ...item, resistance })) });
}

describe('whatever the plan and the supply', () => {
  it('every band is a span of finite numbers with the expected reading in it, which is judged to be in band', () => {
    fc.assert(
      fc.property(
        passes,
        resistances,
        pressures,
        pressures,
        (pass, resistance, staticPressure, flowingPressure) => {
          const airPoints = [
            {
              name: 'torch',
              staticPressure: at(staticPressure),
              flowingPressure: at(flowingPressure),
              atTorch: true,
            },
          ];
          const supply = { ...withResistance(resistance), airPoints };
          for (const check of testChecks({ passes: [testPass(pass)] }, supply, {}, job)) {
            if (check.kind !== 'measure') continue;
            expect([check.least, check.expected, check.most].every(Number.isFinite), check.id).toBe(true);
            expect(check.least, check.id).toBeLessThanOrEqual(check.expected);
            expect(check.most, check.id).toBeGreaterThanOrEqual(check.expected);
            expect(judgeReading(check, check.expected).verdict, check.id).toBe('in_band');
            const width = check.most - check.least;
            expect(judgeReading(check, check.most + width + 1).verdict).toBe('high');
            expect(judgeReading(check, check.least - width - 1).verdict).toBe('low');
          }
        },
      ),
      SETTINGS,
    );
  });

  it('more resistance never asks fewer volts of the source', () => {
    fc.assert(
      fc.property(passes, resistances, resistances, (pass, one, other) => {
        const volts = (resistance: number) =>
          measured(testChecks({ passes: [testPass(pass)] }, withResistance(resistance)), 'loaded_source_1')
            .expected;
        expect(volts(Math.max(one, other))).toBeGreaterThanOrEqual(volts(Math.min(one, other)));
      }),
      SETTINGS,
    );
  });

  it('the volts of the source are the arc’s and those of every item in series', () => {
    fc.assert(
      fc.property(passes, resistances, (pass, resistance) => {
        const checks = testChecks({ passes: [testPass(pass)] }, withResistance(resistance));
        const lost = 4 * resistance * pass.current;
        expect(measured(checks, 'loaded_source_1').expected).toBeCloseTo(pass.voltage + lost, 6);
      }),
      SETTINGS,
    );
  });
});
