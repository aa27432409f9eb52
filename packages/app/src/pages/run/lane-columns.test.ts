import { type LogTrace, traceLog } from '@furrow/engine';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { type LaneColumns, laneColumns } from './lane-columns.ts';
import { channelPyramid, type GroupPlaces, nearestGroup, placePyramid } from './trace-pyramid.ts';

function traceOf(volts: readonly number[], times = volts.map((_, i) => i / 10)): LogTrace {
  const builder = traceLog();
  builder.push({
    time_s: Float64Array.from(times),
    row: Float64Array.from(volts, (_, i) => i + 1),
    channels: { voltage_V: Float64Array.from(volts) },
  });
  return builder.end();
}

function voltsOf(
  trace: LogTrace,
  places: GroupPlaces,
  ends: readonly [number, number],
  width: number,
): LaneColumns {
  const levels = channelPyramid(trace.channels.voltage_V!, trace.silent);
  return laneColumns(levels, placePyramid(places), ends, width);
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
      const { most } = voltsOf(trace, trace.start, ends, width);
      expect(Math.max(...most.filter((value) => !Number.isNaN(value)))).toBe(99);
    }
});

it('draws no line across a gap, and none over cells that were not read', () => {
  const times = [0, 0.1, 0.2, 0.3, 5, 5.1, 5.2, 5.3];
  const gap = traceOf([1, 1, 1, 1, 2, 2, 2, 2], times);
  const { broken, first } = voltsOf(gap, gap.start, [0, 6], 60);
  expect(broken[50]).toBe(1);
  expect([...first].filter((value) => !Number.isNaN(value)).length).toBe(8);
  const holes = traceOf([1, 1, Number.NaN, 1, 1]);
  const columns = voltsOf(holes, holes.start, [0, 0.5], 5);
  expect([...columns.broken]).toEqual([0, 0, 0, 1, 0]);
});

it('finds what lies nearest, and nothing off the axis', () => {
  expect(nearestGroup(placePyramid(Float64Array.of(Number.NaN, 1, 2, 3)), 2.2)).toBe(2);
  expect(nearestGroup(placePyramid(Float64Array.of(Number.NaN)), 2)).toBeUndefined();
  expect(nearestGroup(placePyramid(new Float64Array(0)), 2)).toBeUndefined();
});

/** Every group by itself into its column: slow, and plainly right. */
function byGroup(trace: LogTrace, places: GroupPlaces, [from, to]: readonly [number, number], width: number) {
  const { least, most } = trace.channels.voltage_V!;
  const low = new Float64Array(width).fill(Number.POSITIVE_INFINITY);
  const high = new Float64Array(width).fill(Number.NEGATIVE_INFINITY);
  places.forEach((place, group) => {
    if (!(place >= from && place <= to) || Number.isNaN(least[group]!)) return;
    const at = Math.min(width - 1, Math.floor(((place - from) / (to - from)) * width));
    low[at] = Math.min(low[at]!, least[group]!);
    high[at] = Math.max(high[at]!, most[group]!);
  });
  return { low, high };
}

it('shows what every group by itself would, within half a column, also of a carriage that runs back', () => {
  fc.assert(
    fc.property(
      fc.array(fc.oneof({ weight: 9, arbitrary: fc.integer({ min: 0, max: 99 }) }, fc.constant(Number.NaN)), {
        minLength: 1,
        maxLength: 400,
      }),
      fc.array(fc.oneof({ weight: 9, arbitrary: fc.integer({ min: -1, max: 3 }) }, fc.constant(Number.NaN)), {
        minLength: 400,
        maxLength: 400,
      }),
      fc.tuple(fc.double({ min: 0, max: 200, noNaN: true }), fc.double({ min: 0.5, max: 400, noNaN: true })),
      fc.integer({ min: 1, max: 60 }),
      (volts, steps, [from, span], width) => {
        const trace = traceOf(volts);
        let at = 0;
        const places = Float64Array.from(volts, (_, i) => {
          if (!Number.isNaN(steps[i]!)) at += steps[i]!;
          return Number.isNaN(steps[i]!) ? Number.NaN : at;
        });
        const ends = [from, from + span] as const;
        const seen = voltsOf(trace, places, ends, width);
        const exact = byGroup(trace, places, ends, width);
        const near = (values: Float64Array, i: number, pick: (...all: number[]) => number): number =>
          pick(...[i - 1, i, i + 1].map((k) => values[k] ?? Number.NaN).filter((v) => !Number.isNaN(v)));
        for (let i = 0; i < width; i += 1) {
          if (exact.high[i]! < exact.low[i]!) continue;
          expect(near(seen.most, i, Math.max)).toBeGreaterThanOrEqual(exact.high[i]!);
          expect(near(seen.least, i, Math.min)).toBeLessThanOrEqual(exact.low[i]!);
        }
        const all = (values: Float64Array): number[] => [...values].filter((v) => Number.isFinite(v));
        // nothing is shown that lies off the axis by more than what is drawn as one
        const half = (0.5 * span) / width;
        const wider = byGroup(trace, places, [from - half, from + span + half], 1);
        expect(Math.max(...all(seen.most), -1)).toBeLessThanOrEqual(Math.max(...all(wider.high), -1));
      },
    ),
    { numRuns: 300, seed: 8 },
  );
});
