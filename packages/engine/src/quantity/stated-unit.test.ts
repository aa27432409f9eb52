import { expect, it } from 'vitest';
import { type EdgeUnit, inUnit } from './stated-unit.ts';

it.each<[number, EdgeUnit, number]>([
  [0.0095, 'mm', 9.5],
  [0.71 / 60, 'mm_per_min', 710],
  [0.0001, 'mm3_per_mm', 100],
  [(60 * Math.PI) / 180, 'deg', 60],
  [90, 'min', 1.5],
  [1.2e6, 'kJ_per_mm', 1.2],
  [10.5e9, 'J_per_mm3', 10.5],
  [620000, 'bar', 6.2],
])('%s in SI is %s: %s', (si, unit, expected) => {
  expect(inUnit(si, unit)).toBeCloseTo(expected, 12);
});
