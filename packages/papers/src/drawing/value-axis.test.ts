import { describe, expect, it } from 'vitest';
import { axisShare, tickText, valueAxis } from './value-axis.ts';

describe('valueAxis', () => {
  it('begins and ends on ticks around all values', () => {
    const axis = valueAxis([30.2, 83.8, 85], 4);
    expect(axis).toMatchObject({ from: 20, to: 100, ticks: [20, 40, 60, 80, 100], decimals: 0 });
    expect(axisShare(axis, 60)).toBe(0.5);
    expect(axisShare(axis, 500)).toBe(1);
  });

  it('tells neighbouring ticks apart', () => {
    const axis = valueAxis([5.9, 6.4], 3);
    expect(axis.ticks.map((tick) => tickText(axis, tick))).toEqual(['5.8', '6.0', '6.2', '6.4']);
  });

  it('stands one value, none, and what is no number', () => {
    for (const values of [[], [7], [0, 0], [Number.NaN]]) {
      const { from, to } = valueAxis(values, 4);
      expect(to).toBeGreaterThan(from);
    }
  });
});
