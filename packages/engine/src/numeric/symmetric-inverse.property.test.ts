import fc from 'fast-check';
import { expect, it } from 'vitest';
import { symmetricInverse } from './symmetric-inverse.ts';

/** A random matrix B'B + I / 10: symmetric and positive definite. */
const definite = fc.integer({ min: 1, max: 5 }).chain((size) =>
  fc
    .array(fc.array(fc.double({ min: -3, max: 3, noNaN: true }), { minLength: size, maxLength: size }), {
      minLength: size,
      maxLength: size,
    })
    .map((b) =>
      b.map((_, i) => b.map((_, j) => b.reduce((sum, row) => sum + row[i]! * row[j]!, i === j ? 0.1 : 0))),
    ),
);

it('times the matrix is one, and is symmetric to the last bit', () => {
  fc.assert(
    fc.property(definite, (matrix) => {
      const inverse = symmetricInverse(matrix);
      matrix.forEach((row, i) => {
        matrix.forEach((_, j) => {
          expect(inverse[i]![j]).toBe(inverse[j]![i]);
          const product = row.reduce((sum, value, k) => sum + value * inverse[k]![j]!, 0);
          expect(Math.abs(product - (i === j ? 1 : 0))).toBeLessThan(1e-7);
        });
      });
    }),
    { seed: 31, numRuns: 200 },
  );
});
