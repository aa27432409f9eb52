import { type LogTrace, traceLog } from '@furrow/engine';
import { expect, it } from 'vitest';
import { laneColumns, nearestGroup } from './lane-columns.ts';

function traceOf(volts: readonly number[], times = volts.map((_, i) => i / 10)): LogTrace {
  const builder = traceLog();
  builder.push({
    time_s: Float64Array.from(times),
    row: Float64Array.from(volts, (_, i) => i + 1),
    channels: { voltage_V: Float64Array.from(volts) },
  });
  return builder.end();
}

it('shows a peak of one row at every zoom', () => {
  const volts = Array.from({ length: 20_000 }, (_, i) => (i === 12_345 ? 99 : 42));
  const trace = traceOf(volts);
  for (const width of [10, 333, 1440])
    for (const ends of [
      [0, 2000],
      [1200, 1300],
      [1234.4, 1234.6],
    ] as const) {
      const { most } = laneColumns(trace, trace.channels.voltage_V!, trace.start, ends, width);
      expect(Math.max(...most.filter((value) => !Number.isNaN(value)))).toBe(99);
    }
});

it('draws no line across a gap, and none over cells that were not read', () => {
  const times = [0, 0.1, 0.2, 0.3, 5, 5.1, 5.2, 5.3];
  const gap = traceOf([1, 1, 1, 1, 2, 2, 2, 2], times);
  const { broken, first } = laneColumns(gap, gap.channels.voltage_V!, gap.start, [0, 6], 60);
  expect(broken[50]).toBe(1);
  expect([...first].filter((value) => !Number.isNaN(value)).length).toBe(8);
  const holes = traceOf([1, 1, Number.NaN, 1, 1]);
  const columns = laneColumns(holes, holes.channels.voltage_V!, holes.start, [0, 0.5], 5);
  expect([...columns.broken]).toEqual([0, 0, 0, 1, 0]);
});

it('finds what lies nearest, and nothing off the axis', () => {
  expect(nearestGroup(Float64Array.of(Number.NaN, 1, 2, 3), 2.2)).toBe(2);
  expect(nearestGroup(Float64Array.of(Number.NaN), 2)).toBeUndefined();
});
