import { expect, it } from 'vitest';
import { lossLength, startDwell } from './start-and-loss.ts';

it('dwells as long as travel takes over the inclined face', () => {
  // At 90 degrees the face is as long as the electrode is thick, less the half already under it.
  expect(startDwell(0.0127, Math.PI / 2, 0.0127)).toBeCloseTo(0.5, 12);
  expect(startDwell(0.0127, Math.PI / 6, 0.0127)).toBeCloseTo(1, 12);
});

it('dwells longer with a thicker or flatter electrode, shorter with more travel', () => {
  const dwell = startDwell(0.0127, Math.PI / 4, 0.0148);
  expect(startDwell(0.0159, Math.PI / 4, 0.0148)).toBeGreaterThan(dwell);
  expect(startDwell(0.0127, Math.PI / 6, 0.0148)).toBeGreaterThan(dwell);
  expect(startDwell(0.0127, Math.PI / 4, 0.02)).toBeLessThan(dwell);
});

it('leaves nothing ungouged at rest or with no window', () => {
  expect(lossLength(0, 0.4)).toBe(0);
  expect(lossLength(0.0148, 0)).toBe(0);
});
