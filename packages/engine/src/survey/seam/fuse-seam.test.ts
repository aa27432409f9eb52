import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { drawStream } from '../../numeric/index.ts';
import { seamCorrelation } from '../../removal/index.ts';
import { conditionGaussian } from './condition-gaussian.ts';
import { fuseSeam } from './fuse-seam.ts';
import { seamStates } from './seam-states.ts';

const SPREAD = { common: 0.25, course: 0.045, range: 0.25 };

function readingsOf(count: number, length: number) {
  const draws = drawStream(5);
  return Array.from({ length: count }, () => ({
    at: length * draws.uniform(),
    value: 0.1 * draws.normal(),
    sd: 0.02 + 0.03 * draws.uniform(),
  }));
}

const AT = Array.from({ length: 61 }, (_, i) => i * 0.1);

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

describe('fusing along a seam', () => {
  it('is the exact answer within rounding', () => {
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

  it('is the prediction without readings, and far from them in its course alone', () => {
    const none = fuseSeam(SPREAD, [], [1, 2]);
    expect(none.mean).toEqual([0, 0]);
    expect(none.sd[0]).toBeCloseTo(Math.hypot(0.25, 0.045), 12);
    const far = fuseSeam(SPREAD, [{ at: 0, value: 0.3, sd: 1e-3 }], [0, 5.9]);
    expect(far.mean[0]).toBeCloseTo(0.3, 4);
    // the reading tells common part and course together; the course has forgotten it 5.9 m on
    expect(far.mean[1]).toBeCloseTo((0.3 * 0.25 ** 2) / (0.25 ** 2 + 0.045 ** 2), 4);
  });
});

describe('covariances and draws of the states', () => {
  it('agree with each other and with the variances', () => {
    const fused = fuseSeam(SPREAD, readingsOf(8, 6), AT);
    const stream = drawStream(11);
    const count = 4000;
    const sums = new Float64Array(AT.length);
    const products = new Float64Array(AT.length);
    const pivot = 20;
    for (let k = 0; k < count; k += 1) {
      const course = fused.draw(stream);
      for (let i = 0; i < AT.length; i += 1) {
        sums[i]! += course[i]! - fused.mean[i]!;
        products[i]! += (course[i]! - fused.mean[i]!) * (course[pivot]! - fused.mean[pivot]!);
      }
    }
    const covariance = fused.covarianceWith(pivot);
    expect(covariance[pivot]).toBeCloseTo(fused.sd[pivot]! ** 2, 10);
    for (let i = 0; i < AT.length; i += 1) {
      const scale = fused.sd[i]! * fused.sd[pivot]!;
      expect(Math.abs(products[i]! / count - covariance[i]!) / scale).toBeLessThan(0.08);
      expect(Math.abs(sums[i]! / count) / fused.sd[i]!).toBeLessThan(0.08);
    }
  });
});
