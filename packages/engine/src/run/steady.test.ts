import { describe, expect, it } from 'vitest';
import { noRow } from './row.ts';
import { SteadyBlocks } from './steady-blocks.ts';
import { SteadyReading } from './steady-reading.ts';

describe('blocks of a steady arc', () => {
  it('hold the median of their rows, odd or even, and where they begin', () => {
    const blocks = new SteadyBlocks('volts', 1, 0.25);
    [40, 99, 41, 42, 43, 44, 90, 45].forEach((volts, i) => {
      const before = { ...noRow(), time: i / 4, row: i, way: 2 + i / 100 };
      blocks.add(before, { ...noRow(), volts, held: 0.25 }, 2);
    });
    const { value, time, row, way } = blocks.blocksSoFar();
    expect([...value]).toEqual([41.5, 44.5]);
    expect([...time]).toEqual([0, 1]);
    expect([...row]).toEqual([0, 4]);
    expect([...way].map((at) => Number(at.toFixed(9)))).toEqual([0, 0.04]);
  });
});

describe('a reading of the arc', () => {
  const steady = (): SteadyReading => {
    const reading = new SteadyReading(800, 2000, 0);
    for (let n = 0; n < 50; n += 1) reading.clean(800 + (n % 2), false);
    return reading;
  };

  it('goes on with the value before in place of a spike, and tells of it when it is over', () => {
    const reading = steady();
    expect(reading.clean(1150, false)).toBe(801);
    expect(reading.ended).toBeUndefined();
    expect(reading.clean(802, false)).toBe(802);
    expect(reading.ended).toEqual({ value: 1150, around: 801, rows: 1 });
  });

  it('takes what stays, or has another explanation, for a new level', () => {
    const reading = steady();
    expect([1150, 1151, 1150].map((value) => reading.clean(value, false))).toEqual([801, 801, 1150]);
    expect(reading.ended).toBeUndefined();
    expect(steady().clean(1150, true)).toBe(1150);
    expect(steady().clean(1050, false)).toBe(1050);
  });

  it('is stale after as many equal rows as chance does not give', () => {
    expect(new SteadyReading(800, 2000, 0).staleRows).toBe(10);
    // 0.5 ** 40 is about 1e-12
    expect(new SteadyReading(800, 2000, 0.5).staleRows).toBe(40);
  });
});
