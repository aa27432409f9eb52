import type { RunExpectation } from './expectation.ts';
import type { Channel, LogBatch } from './log-batch.ts';
import type { RunOutcome } from './outcome.ts';
import { reviewRun } from './review-run.ts';

/** A stretch of a made-up log: how long, and what each reading says meanwhile. */
export interface Piece extends Partial<Record<Channel, number>> {
  readonly lasts: number;
}

/** Set points of the made-up rig. */
export const SET = { voltage_V: 42, current_A: 800, travel_m_per_s: 0.015 } as const;
export const BURNS = (lasts: number, other: Partial<Record<Channel, number>> = {}): Piece => ({
  lasts,
  ...SET,
  ...other,
});
export const OUT = (lasts: number, other: Partial<Record<Channel, number>> = {}): Piece => ({
  lasts,
  voltage_V: 75,
  current_A: 0,
  travel_m_per_s: 0.015,
  ...other,
});
export const SHORTED = (lasts: number, other: Partial<Record<Channel, number>> = {}): Piece => ({
  lasts,
  voltage_V: 9,
  current_A: 1000,
  travel_m_per_s: 0.015,
  ...other,
});
export const IDLE = (lasts: number): Piece => ({ lasts, voltage_V: 0, current_A: 0, travel_m_per_s: 0 });

/** A plan of one pass of 3 m. */
export const PLAN: RunExpectation = {
  length: 3,
  girth: false,
  lossWindow: 0.4,
  current: 800,
  voltage: 42,
  voltageLeast: 40,
  voltageMost: 44,
  electrode: 0.4,
  wear: 2e-6,
  passes: [{ number: 1, from: 0, to: 3, travel: 0.015, dwell: 0 }],
};

/** Rows of the pieces at a rate, with a little even noise so that no reading stands still. */
export function logOf(pieces: readonly Piece[], rate: number): LogBatch {
  const names = [...new Set(pieces.flatMap((piece) => Object.keys(piece)))].filter(
    (name) => name !== 'lasts',
  ) as Channel[];
  const values = new Map<Channel, number[]>(names.map((name) => [name, []]));
  let count = 0;
  let end = 0;
  for (const piece of pieces) {
    end += piece.lasts;
    while (count / rate < end - 1e-9) {
      for (const name of names) {
        const wobble = 1 + 0.01 * Math.sin(1.7 * count + 3 * names.indexOf(name));
        values.get(name)!.push((piece[name] ?? Number.NaN) * wobble);
      }
      count += 1;
    }
  }
  return {
    time_s: Float64Array.from({ length: count }, (_, i) => i / rate),
    row: Float64Array.from({ length: count }, (_, i) => i + 1),
    channels: Object.fromEntries(names.map((name) => [name, Float64Array.from(values.get(name)!)])),
  };
}

/** The review of one batch. */
export function reviewOf(batch: LogBatch, expected?: RunExpectation): RunOutcome {
  const review = reviewRun(expected);
  review.push(batch);
  return review.end();
}

/** The rows of a batch that a rule keeps. */
export function rowsOf(batch: LogBatch, keeps: (index: number) => boolean): LogBatch {
  const pick = (list: Float64Array): Float64Array => list.filter((_, i) => keeps(i));
  return {
    time_s: pick(batch.time_s),
    row: pick(batch.row),
    channels: Object.fromEntries(Object.entries(batch.channels).map(([name, list]) => [name, pick(list)])),
  };
}
