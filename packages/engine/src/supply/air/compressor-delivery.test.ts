import { describe, expect, it } from 'vitest';
import { freeAirDelivered } from './compressor-delivery.ts';

describe('freeAirDelivered', () => {
  const curve = {
    delivery: [
      { pressure: 5e5, freeAir: 0.022 },
      { pressure: 7e5, freeAir: 0.02 },
      { pressure: 9e5, freeAir: 0.015 },
    ],
  };

  it.each([
    [0, 0.022],
    [5e5, 0.022],
    [6e5, 0.021],
    [8e5, 0.0175],
    [9e5, 0.015],
    [9.001e5, 0],
  ])('at %s Pa', (pressure, expected) => {
    expect(freeAirDelivered(curve, pressure)).toBeCloseTo(expected, 12);
  });
});
