import fc from 'fast-check';
import { expect, it } from 'vitest';
import { percentile, percentiles } from './percentile.ts';

it('goes through the order statistics', () => {
  const sorted = Float64Array.of(1, 2, 4, 8, 16);
  expect([0, 0.25, 0.5, 0.75, 1].map((share) => percentile(sorted, share))).toEqual([1, 2, 4, 8, 16]);
  expect(percentile(sorted, 0.125)).toBeCloseTo(1.5, 14);
  expect(percentile(sorted, 0.9)).toBeCloseTo(12.8, 12);
});

it('of one value is that value', () => {
  expect(percentiles(Float64Array.of(7), [0, 0.3, 1])).toEqual([7, 7, 7]);
});

it('leaves the sample as it is, and does not mind its order', () => {
  const sample = Float64Array.of(3, 1, 2);
  expect(percentiles(sample, [0.5])).toEqual([2]);
  expect([...sample]).toEqual([3, 1, 2]);
});

it('is that of the sorted sample, in whichever order the shares come', () => {
  const sample = fc.float64Array({ minLength: 1, maxLength: 80, noNaN: true, min: -9, max: 9 });
  const shares = fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 1, maxLength: 5 });
  fc.assert(
    fc.property(sample, shares, (given, wanted) => {
      const values = given.map((value) => value + 0);
      const sorted = values.slice().sort();
      expect(percentiles(values, wanted)).toEqual(wanted.map((share) => percentile(sorted, share)));
    }),
    { seed: 12, numRuns: 400 },
  );
});

it('rises with the share and stays inside the sample', () => {
  const sample = fc.float64Array({ minLength: 1, maxLength: 30, noNaN: true, min: -1e6, max: 1e6 });
  const share = fc.double({ min: 0, max: 1, noNaN: true });
  fc.assert(
    fc.property(sample, share, share, (values, a, b) => {
      const [low, high] = percentiles(values, [Math.min(a, b), Math.max(a, b)]) as [number, number];
      const slack = 1e-9 * Math.max(1, ...values.map(Math.abs));
      return low <= high + slack && low >= Math.min(...values) - slack && high <= Math.max(...values) + slack;
    }),
    { seed: 11, numRuns: 300 },
  );
});
