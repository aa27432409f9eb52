import { expect, it } from 'vitest';
import { coefficientFactor, predict, type RegressionBelief, updateBelief } from './conjugate-regression.ts';
import { drawStream } from './draw-stream.ts';

const BEFORE: RegressionBelief = {
  mean: [1, -2],
  precision: [
    [2, 0.5],
    [0.5, 1],
  ],
  shape: 3,
  scale: 0.4,
};

it('stays as it is without observations', () => {
  expect(updateBelief(BEFORE, [])).toBe(BEFORE);
});

it('finds the law behind many observations, and its noise', () => {
  const stream = drawStream(12);
  const seen = Array.from({ length: 4000 }, () => {
    const x = [1, stream.normal()];
    return { x, y: 0.7 * x[0]! + 1.5 * x[1]! + 0.3 * stream.normal() };
  });
  const after = updateBelief(BEFORE, seen);
  expect(after.mean[0]).toBeCloseTo(0.7, 1);
  expect(after.mean[1]).toBeCloseTo(1.5, 1);
  expect(after.scale / (after.shape - 1)).toBeCloseTo(0.09, 2);
  expect(after.shape).toBe(BEFORE.shape + 2000);
});

it('leaves a belief that met what it expected where it was, and surer', () => {
  const { location } = predict(BEFORE, [1, 3]);
  const after = updateBelief(BEFORE, [{ x: [1, 3], y: location }]);
  expect(after.mean[0]).toBeCloseTo(BEFORE.mean[0]!, 12);
  expect(after.mean[1]).toBeCloseTo(BEFORE.mean[1]!, 12);
  expect(after.scale).toBeCloseTo(BEFORE.scale, 12);
  expect(predict(after, [1, 3]).spread).toBeLessThan(predict(BEFORE, [1, 3]).spread);
});

it('adds to the scale what surprised it: (y - x.m)^2 / (1 + x P^-1 x) / 2', () => {
  const x = [1, 3];
  const { location } = predict(BEFORE, x);
  const y = location + 2;
  // 1 + x P^-1 x, with P^-1 = [[1, -0.5], [-0.5, 2]] / 1.75.
  const leverage = 1 + (1 - 3 + 18) / 1.75;
  expect(updateBelief(BEFORE, [{ x, y }]).scale).toBeCloseTo(BEFORE.scale + 4 / leverage / 2, 12);
});

it('gives coefficient draws of the covariance P^-1', () => {
  const factor = coefficientFactor(BEFORE);
  const inverse = [
    [1 / 1.75, -0.5 / 1.75],
    [-0.5 / 1.75, 2 / 1.75],
  ];
  for (const i of [0, 1]) {
    for (const j of [0, 1]) {
      expect(factor[i]![0]! * factor[j]![0]! + factor[i]![1]! * factor[j]![1]!).toBeCloseTo(
        inverse[i]![j]!,
        12,
      );
    }
  }
  expect(factor[0]![1]).toBe(0);
});
