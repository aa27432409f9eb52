import { expect, test } from 'vitest';
import { axisPlaceText, axisText, lengthAxis } from './length-axis.ts';
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

test.each([
  [6, 0.6, 'metric', '0.60 m'],
  [0.18, 0.06, 'metric', '60 mm'],
  [6, 0.5969, 'inch', '1 ft 11 1/2 in'],
  [6, 0.3048, 'inch', '1 ft'],
  [6, 0.3049, 'inch', '1 ft'],
  [6, 0.1524, 'inch', '6 in'],
  [6, 0.6096, 'inch', '2 ft'],
  [6, 0.6095, 'inch', '2 ft'],
  [6, 3, 'inch', '9 ft 10 in'],
  [0.4, 0.35, 'inch', '13 3/4 in'],
  [6, 0, 'inch', '0 in'],
] as const)('beside an axis of %d m a place at %d m reads in %s units %s', (length, place, units, text) => {
  expect(axisPlaceText(length, place, units)).toBe(text);
});
