import { describe, expect, it } from 'vitest';
import { permissibleMinutes, permittedCurrent, ratedMaximum } from './rating.ts';

const plate = {
  rating: [
    { current: 1000, duty: 0.6 },
    { current: 800, duty: 1 },
    { current: 1200, duty: 0.3 },
  ],
};

describe('several rating points', () => {
  it.each([
    [400, 10],
    [800, 10],
    [1000, 6],
    [1200, 3],
    [1200.1, 0],
  ])('at %s A allow %s minutes in ten', (current, minutes) => {
    expect(permissibleMinutes(plate, current)).toBeCloseTo(minutes, 10);
  });

  it('between two points lie between them, and steeper than the square law if the plate is', () => {
    const between = permissibleMinutes(plate, 1100);
    expect(between).toBeLessThan(6 * (1000 / 1100) ** 2);
    expect(between).toBeGreaterThan(3);
  });

  it.each([10, 8, 6, 4, 3, 2])('permit for %s minutes the current that has those minutes', (minutes) => {
    const current = permittedCurrent(plate, minutes);
    if (minutes < 3) expect(current).toBe(ratedMaximum(plate));
    else expect(permissibleMinutes(plate, current * (1 - 1e-12))).toBeCloseTo(minutes, 8);
  });
});

it('one point below 100 % is scaled both ways, down to none beyond the maximum', () => {
  const one = { rating: [{ current: 600, duty: 0.4 }], current_most: 700 };
  expect(permissibleMinutes(one, 700)).toBeCloseTo(4 * (600 / 700) ** 2, 10);
  expect(permissibleMinutes(one, 701)).toBe(0);
  expect(permissibleMinutes(one, 0)).toBe(10);
  expect(permittedCurrent(one, 10)).toBeCloseTo(600 * Math.sqrt(0.4), 10);
});
