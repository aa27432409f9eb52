import { expect, it } from 'vitest';
import { drawnLength, drawnNumber, drawnTolerance } from './length-text.ts';

const INCH = 0.0254;

it('keeps the fractions that a drawing is dimensioned in', () => {
  expect(drawnLength((3 / 8) * INCH, 'inch')).toBe('3/8 in');
  expect(drawnNumber((1 / 16) * INCH, 'inch')).toBe('1/16');
  expect(drawnNumber((5 / 64) * INCH, 'inch')).toBe('5/64');
  expect(drawnLength(1.25 * INCH, 'inch')).toBe('1 1/4 in');
});

it('writes what was not stated so as a gauge reads it, and never rounds to a fraction', () => {
  expect(drawnLength(0.012, 'inch')).toBe('0.47 in');
  expect(drawnLength(0, 'inch')).toBe('0.00 in');
  expect(drawnLength((21 / 64) * INCH, 'inch')).toBe('0.33 in');
  expect(drawnLength((3 / 8) * INCH, 'metric')).toBe('9.5 mm');
});

it('writes no tolerance as a plain 0 beside a fraction, and in the same figures beside a reading', () => {
  expect(drawnTolerance((1 / 8) * INCH, 0, 'inch')).toBe('+1/8 −0');
  expect(drawnTolerance((1 / 8) * INCH, (1 / 16) * INCH, 'inch')).toBe('+1/8 −1/16');
  expect(drawnTolerance(0.006, 0, 'inch')).toBe('+0.24 −0.00');
  expect(drawnTolerance(0.006, 0, 'metric')).toBe('+6.0 −0.0');
});
