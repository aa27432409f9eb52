import fc from 'fast-check';
import { expect, it } from 'vitest';
import { type Observation, predict, type RegressionBelief, updateBelief } from './conjugate-regression.ts';

const value = fc.double({ min: -5, max: 5, noNaN: true });
const observation: fc.Arbitrary<Observation> = fc.record({
  x: fc.tuple(fc.constant(1), value, value).map((x) => [...x]),
  y: value,
});
const several = fc.array(observation, { minLength: 1, maxLength: 12 });
const belief: fc.Arbitrary<RegressionBelief> = fc.record({
  mean: fc.tuple(value, value, value).map((mean) => [...mean]),
  precision: fc
    .tuple(fc.double({ min: 0.1, max: 10, noNaN: true }), fc.double({ min: 0.1, max: 10, noNaN: true }))
    .map(([a, b]) => [
      [a, 0.1 * a, 0],
      [0.1 * a, a + b, 0],
      [0, 0, b],
    ]),
  shape: fc.double({ min: 1, max: 20, noNaN: true }),
  scale: fc.double({ min: 0.01, max: 5, noNaN: true }),
});

function expectSame(a: RegressionBelief, b: RegressionBelief): void {
  const numbers = (one: RegressionBelief): number[] => [
    ...one.mean,
    ...one.precision.flat(),
    one.shape,
    one.scale,
  ];
  const other = numbers(b);
  numbers(a).forEach((number, i) => {
    expect(Math.abs(number - other[i]!)).toBeLessThan(1e-8 * Math.max(1, Math.abs(number)));
  });
}

const RUNS = { seed: 41, numRuns: 250 };

it('does not mind the order of observations', () => {
  fc.assert(
    fc.property(belief, several, fc.infiniteStream(fc.nat()), (before, seen, random) => {
      const shuffled = seen
        .map((one) => ({ one, key: random.next().value as number }))
        .sort((a, b) => a.key - b.key)
        .map(({ one }) => one);
      expectSame(updateBelief(before, seen), updateBelief(before, shuffled));
    }),
    RUNS,
  );
});

it('comes to the same one by one as all at once', () => {
  fc.assert(
    fc.property(belief, several, (before, seen) => {
      const stepwise = seen.reduce((known, one) => updateBelief(known, [one]), before);
      expectSame(updateBelief(before, seen), stepwise);
    }),
    RUNS,
  );
});

it('never loses precision, and its scale never falls', () => {
  fc.assert(
    fc.property(belief, several, observation, (before, seen, { x }) => {
      const after = updateBelief(before, seen);
      expect(after.scale).toBeGreaterThanOrEqual(before.scale);
      expect(after.shape).toBeCloseTo(before.shape + seen.length / 2, 9);
      const leverage = (known: RegressionBelief): number => {
        const { spread } = predict(known, x);
        return (spread * spread * known.shape) / known.scale - 1;
      };
      expect(leverage(after)).toBeLessThanOrEqual(leverage(before) * (1 + 1e-9) + 1e-9);
    }),
    RUNS,
  );
});
