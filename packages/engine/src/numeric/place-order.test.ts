import fc from 'fast-check';
import { expect, it } from 'vitest';
import { placeOrder } from './place-order.ts';

const sample = fc.float64Array({ minLength: 1, maxLength: 60, noNaN: true, min: -4, max: 4 });

it('puts the value of the order into its place, and splits the others about it', () => {
  fc.assert(
    fc.property(sample, fc.nat(), fc.boolean(), (given, draw, whole) => {
      // Whole numbers have many equals among them; the two zeros are one value.
      const values = given.map((value) => (whole ? Math.round(value) : value) + 0);
      const sorted = values.slice().sort();
      const order = draw % values.length;
      placeOrder(values, order, 0, values.length - 1);
      expect(values[order]).toBe(sorted[order]);
      values.forEach((value, index) => {
        if (index < order) expect(value).toBeLessThanOrEqual(values[order]!);
        else expect(value).toBeGreaterThanOrEqual(values[order]!);
      });
      expect(values.slice().sort()).toEqual(sorted);
    }),
    { seed: 5, numRuns: 400 },
  );
});

it('leaves what lies outside the bounds alone', () => {
  const values = Float64Array.of(9, 5, 3, 4, 0);
  placeOrder(values, 2, 1, 3);
  expect([values[0], values[2], values[4]]).toEqual([9, 4, 0]);
});

it('sorts what is left of a sample that defeats the choice of pivots', () => {
  // The pivot is always the least of what is left, so every partition takes off one value.
  const count = 400;
  const values = new Float64Array(count);
  const places = Array.from({ length: count }, (_, index) => index);
  const order = count - 1;
  for (let rank = 0; rank < count; rank += 1) {
    values[places[order]!] = rank;
    [places[rank], places[order]] = [places[order]!, places[rank]!];
  }
  const sorted = values.slice().sort();
  placeOrder(values, order, 0, count - 1);
  expect(values[order]).toBe(sorted[order]);
});
