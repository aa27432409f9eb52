import { expect, test } from 'vitest';
import { axisText, lengthAxis } from './length-axis.ts';
import { niceStep } from './nice-step.ts';

test.each([
  [0.7, 1],
  [1, 1],
  [1.2, 2],
  [3, 5],
  [6, 10],
  [0.03, 0.05],
])('least step %d becomes %d', (least, step) => {
  expect(niceStep(least)).toBeCloseTo(step, 12);
});

test('marks a long seam in metres or feet and a short one in millimetres or inches', () => {
  expect(lengthAxis(6, 10, 'metric')).toMatchObject({ unit: 'm', step: 1, decimals: 0 });
  expect(lengthAxis(0.18, 10, 'metric')).toMatchObject({ unit: 'mm', decimals: 0 });
  expect(lengthAxis(6, 10, 'inch').unit).toBe('ft');
  expect(lengthAxis(0.18, 10, 'inch').unit).toBe('in');
});

test('writes enough decimals to tell neighbouring ticks apart', () => {
  const axis = lengthAxis(3, 20, 'metric');
  expect(axis.step).toBeCloseTo(0.2, 12);
  expect([0, axis.step, -axis.step].map((place) => axisText(axis, place))).toEqual(['0', '0.2', '−0.2']);
});
