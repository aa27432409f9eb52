import { expect, it } from 'vitest';
import { evenAxis } from './axis.ts';
import { widthPast } from './width-past.ts';

it('counts straight between middles, up to the groove’s edge, both sides together', () => {
  const across = evenAxis(0, 8, 8);
  const row = [0, 100, 200, Number.NaN, Number.NaN, 300, 100, 0];
  // left: from 150 to 200 half a cell, and the half cell by the groove; right: half a cell by the groove and 3/4 on
  expect(widthPast(across, (cell) => row[cell]!, 150)).toBeCloseTo(0.5 + 0.5 + 0.5 + 0.75, 12);
  expect(widthPast(across, (cell) => row[cell]!, 400)).toBe(0);
  expect(widthPast(across, () => 500, 400)).toBeCloseTo(7, 12);
});
