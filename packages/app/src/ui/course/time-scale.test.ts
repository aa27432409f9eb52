import { expect, it } from 'vitest';
import { timeScale } from './time-scale.ts';

it('keeps the numbers of a time axis short', () => {
  expect([60, 180, 181, 10_800, 10_801].map((time) => timeScale(time).unit)).toEqual([
    's',
    's',
    'min',
    'min',
    'h',
  ]);
});
