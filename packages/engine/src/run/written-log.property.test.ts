import fc from 'fast-check';
import { expect, it } from 'vitest';
import { LiveWatch } from './live-watch.ts';
import { BURNS, IDLE, logOf, OUT, type Piece, PLAN, reviewOf, SHORTED } from './log.test-support.ts';
import type { LogBatch } from './log-batch.ts';
import { LogReader } from './log-reader.ts';
import { type RunReview, reviewRun } from './review-run.ts';

const SEED = 20_261_128;
const RATE = 20;

const pieces = fc
  .array(
    fc.tuple(
      fc.integer({ min: 12, max: 25 }),
      fc.constantFrom<Piece>(OUT(0.9), SHORTED(0.8), BURNS(2.5, { travel_m_per_s: 0 })),
    ),
    { minLength: 1, maxLength: 3 },
  )
  .map((faults) => [
    IDLE(2),
    ...faults.flatMap(([before, fault]) => [BURNS(before), fault]),
    BURNS(20),
    IDLE(3),
  ]);

/** Clocks as loggers write them: the header, and a stamp for the elapsed time in s. */
const clocks = [
  { header: 'time [s]', stamp: (t: number) => t.toFixed(3) },
  { header: 't [ms]', stamp: (t: number) => String(Math.round(1000 * t)) },
  // counts from somewhere else, and wraps at 16 bits
  { header: 'time_ms', stamp: (t: number) => String((65_000 + Math.round(1000 * t)) % 65_536) },
  {
    header: 'time',
    stamp: (t: number) => new Date(Date.UTC(2026, 10, 27, 23, 59, 50) + 1000 * t).toISOString(),
  },
  // a time of day that passes midnight
  {
    header: 'Uhrzeit',
    stamp: (t: number) => new Date(Date.UTC(2026, 10, 27, 23, 59, 50) + 1000 * t).toISOString().slice(11, 23),
  },
  {
    header: 'date time',
    stamp: (t: number) =>
      `${new Date(Date.UTC(2026, 10, 27, 20) + 1000 * t).toISOString().slice(0, 23).replace('T', ' ')}-05:30`,
  },
] as const;

const way = fc.record({
  delimiter: fc.constantFrom(';', '\t', '|'),
  decimal: fc.constantFrom('.', ','),
  clock: fc.constantFrom(...clocks),
  volts: fc.constantFrom(['V', 1], ['mV', 1e-3], ['0.1 V', 0.1]),
  amps: fc.constantFrom(['A', 1], ['kA', 1e3]),
  speed: fc.constantFrom(
    ['mm/min', 1 / 60_000],
    ['cm/min', 1 / 6000],
    ['m/min', 1 / 60],
    ['in/min', 0.0254 / 60],
  ),
  order: fc.shuffledSubarray([0, 1, 2, 3], { minLength: 4 }),
  piece: fc.integer({ min: 100, max: 50_000 }),
});
type Way = typeof way extends fc.Arbitrary<infer W> ? W : never;

function written({ time_s, channels }: LogBatch, how: Way): Uint8Array {
  const number = (value: number, scale: number): string =>
    (value / scale).toPrecision(15).replace('.', how.decimal);
  const line = (cells: readonly string[]): string => how.order.map((at) => cells[at]).join(how.delimiter);
  const header = line([
    how.clock.header,
    `voltage [${how.volts[0]}]`,
    `current [${how.amps[0]}]`,
    `travel [${how.speed[0]}]`,
  ]);
  const rows = [...time_s].map((time, at) =>
    line([
      how.clock.header.includes('[')
        ? how.clock.stamp(time).replace('.', how.decimal)
        : how.clock.stamp(time),
      number(channels.voltage_V![at]!, Number(how.volts[1])),
      number(channels.current_A![at]!, Number(how.amps[1])),
      number(channels.travel_m_per_s![at]!, Number(how.speed[1])),
    ]),
  );
  return Buffer.from(`${header}\n${rows.join('\n')}\n`);
}

function reviewFile(bytes: Uint8Array, piece: number): ReturnType<RunReview['end']> {
  const reader = new LogReader();
  const review = reviewRun(PLAN);
  let told = 0;
  const take = (batches: readonly LogBatch[]): void => {
    const notes = reader.clockNotes.slice(told);
    told += notes.length;
    batches.forEach((batch, index) => {
      review.push(batch, index === 0 ? notes : []);
    });
  };
  for (let at = 0; at < bytes.length; at += piece) take(reader.push(bytes.subarray(at, at + piece)));
  const end = reader.end();
  if (!end.ok) throw new Error(end.issues[0]!.message);
  take(end.value.batches);
  return review.end();
}

it('events do not move with dialect, clock, units, and order of columns of the file', () => {
  fc.assert(
    fc.property(pieces, way, (run, how) => {
      const log = logOf(run, RATE);
      const direct = reviewOf(log, PLAN);
      const read = reviewFile(written(log, how), how.piece);
      const marks = ({ events }: typeof direct) =>
        events.map(({ kind, firstRow, lastRow }) => [kind, firstRow, lastRow]);
      expect(marks(read)).toEqual(marks(direct));
      direct.events.forEach(({ start, end, from, to }, at) => {
        const event = read.events[at]!;
        // clocks are written to the millisecond, ways follow from them
        expect(Math.abs(event.start - start) + Math.abs(event.end - end)).toBeLessThan(3e-3);
        expect(Math.abs(event.from! - from!) + Math.abs(event.to! - to!)).toBeLessThan(1e-3);
      });
      expect(Math.abs(read.totals.energy! / direct.totals.energy! - 1)).toBeLessThan(1e-4);
    }),
    { seed: SEED, numRuns: 20 },
  );
});

it('what is told live does not depend on how readings are cut into frames', () => {
  fc.assert(
    fc.property(
      pieces,
      fc.integer({ min: 1, max: 40 }),
      fc.integer({ min: 0, max: 2000 }),
      (run, each, stop) => {
        const { time_s, channels } = logOf(run, RATE);
        const upTo = Math.min(time_s.length, 400 + stop);
        const list = (values: Float64Array, from: number): number[] => [
          ...values.subarray(from, Math.min(upTo, from + each)),
        ];
        const whole = new LiveWatch(PLAN);
        const cut = new LiveWatch(PLAN);
        for (let at = 0; at < upTo; at += each) {
          const frame = {
            'time [s]': list(time_s, at),
            'voltage [V]': list(channels.voltage_V!, at),
            'current [A]': list(channels.current_A!, at),
            'travel [m/s]': list(channels.travel_m_per_s!, at),
          };
          cut.push(Buffer.from(`${JSON.stringify(frame)}\n`));
        }
        for (let at = 0; at < upTo; at += 1) {
          const row = {
            'time [s]': time_s[at],
            'voltage [V]': channels.voltage_V![at],
            'current [A]': channels.current_A![at],
            'travel [m/s]': channels.travel_m_per_s![at],
          };
          whole.push(Buffer.from(`${JSON.stringify(row)}\n`));
        }
        expect(cut.deviations()).toEqual(whole.deviations());
      },
    ),
    { seed: SEED, numRuns: 8 },
  );
});
