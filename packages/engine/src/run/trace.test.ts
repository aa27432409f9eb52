import { expect, it } from 'vitest';
import type { LogBatch } from './log-batch.ts';
import { traceLog } from './trace.ts';

function rows(count: number, from: number, values: (row: number) => number): LogBatch {
  const all = Float64Array.from({ length: count }, (_, i) => from + i);
  return {
    time_s: all.map((row) => row / 1000),
    row: all.map((row) => row + 1),
    channels: { voltage_V: all.map(values) },
  };
}

it('shows a peak of one row of a million, at its time', () => {
  const trace = traceLog();
  const spike = 612_345;
  for (let from = 0; from < 1_000_000; from += 50_000)
    trace.push(rows(50_000, from, (row) => (row === spike ? 99 : 42 + Math.sin(row))));
  const { rowsEach, start, end, channels, silent } = trace.end();
  expect(rowsEach).toBe(8);
  const { most, least } = channels.voltage_V!;
  const at = most.indexOf(99);
  expect(start[at]! * 1000).toBeLessThanOrEqual(spike);
  expect(end[at]! * 1000).toBeGreaterThanOrEqual(spike);
  expect(most.filter((value) => value > 43.1).length).toBe(1);
  expect(least.every((value) => value > 40.9)).toBe(true);
  expect(silent.some((flag) => flag === 1)).toBe(false);
});

it('keeps a gap a gap, and leaves cells that were not read out', () => {
  const trace = traceLog();
  trace.push(rows(100, 0, (row) => (row === 7 ? Number.NaN : row)));
  trace.push(rows(100, 5000, (row) => row));
  const { silent, channels, start } = trace.end();
  expect([...silent].flatMap((flag, i) => (flag === 1 ? [start[i]] : []))).toEqual([5]);
  expect(channels.voltage_V!.first[7]).toBeNaN();
  expect(channels.voltage_V!.first[8]).toBe(8);
});

it('puts first and last of a group in their order', () => {
  const trace = traceLog();
  for (let from = 0; from < 300_000; from += 100_000) trace.push(rows(100_000, from, (row) => -row));
  const { channels, rowsEach } = trace.end();
  const { first, last, least, most } = channels.voltage_V!;
  expect(rowsEach).toBe(4);
  expect([first[10], last[10], least[10], most[10]]).toEqual([-40, -43, -43, -40]);
});
