import fc from 'fast-check';
import { expect, it } from 'vitest';
import { drawStream } from '../../numeric/index.ts';
import { seamCorrelation } from '../../removal/index.ts';
import { conditionGaussian } from './condition-gaussian.ts';
import { fuseSeam } from './fuse-seam.ts';
import { seamStates } from './seam-states.ts';

/** Levels from a steady shop to a rough one, stations shared and apart, gauges and scans of any fineness, up to 500 readings. */
const SEAM = fc
  .record({
    family: fc.double({ min: 0, max: 0.4, noNaN: true }),
    job: fc.double({ min: 0, max: 0.12, noNaN: true }),
    pass: fc.double({ min: 0, max: 0.08, noNaN: true }),
    course: fc.double({ min: 0.005, max: 0.1, noNaN: true }),
    range: fc.double({ min: 0.05, max: 1.5, noNaN: true }),
    length: fc.double({ min: 0.3, max: 12, noNaN: true }),
    count: fc.oneof(fc.integer({ min: 0, max: 12 }), fc.integer({ min: 0, max: 500 })),
    repeats: fc.double({ min: 0, max: 0.7, noNaN: true }),
    gauges: fc.array(fc.double({ min: 0.002, max: 0.08, noNaN: true }), { minLength: 1, maxLength: 3 }),
    seed: fc.integer({ min: 1, max: 1e6 }),
  })
  .map(({ family, job, pass, course, range, length, count, repeats, gauges, seed }) => {
    const draws = drawStream(seed);
    const at: number[] = [];
    for (let i = 0; i < count; i += 1) {
      const again = i > 0 && draws.uniform() < repeats;
      at.push(again ? at[Math.floor(i * draws.uniform())]! : length * draws.uniform());
    }
    return {
      spread: { common: Math.hypot(family, job, pass), course, range },
      asked: Array.from({ length: 25 }, (_, i) => (length * i) / 24),
      readings: at.map((place) => ({
        at: place,
        value: 0.1 * draws.normal(),
        sd: gauges[Math.floor(gauges.length * draws.uniform())]!,
      })),
    };
  });

it('a seam is fused to the exact answer within rounding', () => {
  fc.assert(
    fc.property(SEAM, ({ spread, readings, asked }) => {
      const covariance = (a: number, b: number): number =>
        spread.common ** 2 + spread.course ** 2 * seamCorrelation(a - b, spread.range);
      const exact = conditionGaussian(
        {
          read: readings.map((one) => readings.map((other) => covariance(one.at, other.at))),
          across: asked.map((place) => readings.map((one) => covariance(place, one.at))),
          asked: asked.map((place) => covariance(place, place)),
        },
        readings.map(({ value }) => value),
        readings.map(({ sd }) => sd),
        'known',
      );
      const fused = fuseSeam(spread, readings, asked);
      const total = Math.hypot(spread.common, spread.course);
      asked.forEach((_, i) => {
        expect(Math.abs(fused.mean[i]! - exact.mean[i]!)).toBeLessThan(1e-8 * total);
        expect(Math.abs(fused.sd[i]! - Math.sqrt(exact.variance[i]!))).toBeLessThan(1e-8 * total);
      });
      const { lnDensity } = seamStates(spread, readings, []);
      expect(Math.abs(lnDensity - exact.lnDensity)).toBeLessThan(1e-7 * (1 + Math.abs(exact.lnDensity)));
    }),
    { seed: 12, numRuns: 40 },
  );
}, 60_000);
