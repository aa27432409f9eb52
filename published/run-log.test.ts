import { type LogBatch, type RunOutcome, reviewRun } from '@furrow/engine';
import { describe, expect, it } from 'vitest';

/** The review of a log given as arrays. */
function reviewed(
  time: readonly number[],
  channels: Readonly<Record<string, readonly number[]>>,
): RunOutcome {
  const review = reviewRun();
  review.push({
    time_s: Float64Array.from(time),
    row: Float64Array.from(time, (_, i) => i + 1),
    channels: Object.fromEntries(
      Object.entries(channels).map(([name, values]) => [name, Float64Array.from(values)]),
    ) as LogBatch['channels'],
  });
  return review.end();
}

describe('charge and energy by the trapezoid rule', () => {
  /** Volts 0 40 42 0 and amps 0 500 500 0 at 0 to 3 s: 41 000 J; the product of the means gives half of it. */
  it('takes the product first and then integrates', () => {
    const { totals } = reviewed([0, 1, 2, 3], {
      voltage_V: [0, 40, 42, 0],
      current_A: [0, 500, 500, 0],
    });
    expect(totals.energy).toBeCloseTo(41_000, 8);
    expect(totals.charge).toBeCloseTo(1000, 8);
  });

  /**
   * P = (U0 + u sin wt)(I0 + i sin(wt + f)): the mean is U0 I0 + u i cos(f) / 2. Closed form; 20 samples of each period
   * over whole periods give it without error.
   */
  it.each([0, 1, Math.PI])('meets the closed form of rippled current, phase %d', (phase) => {
    const [rate, frequency, count] = [6000, 300, 60_001];
    const time = Array.from({ length: count }, (_, n) => n / rate);
    const wave = (n: number, shift: number): number => Math.sin((2 * Math.PI * frequency * n) / rate + shift);
    const { totals } = reviewed(time, {
      voltage_V: time.map((_, n) => 40 + 6 * wave(n, 0)),
      current_A: time.map((_, n) => 500 + 120 * wave(n, phase)),
    });
    const power = 40 * 500 + (6 * 120 * Math.cos(phase)) / 2;
    // the last row holds for one interval more, which the trapezoid rule leaves out
    expect(totals.energy! / ((count - 1) / rate)).toBeCloseTo(power, 6);
    expect(totals.voltage).toBeCloseTo(40, 8);
    expect(totals.current).toBeCloseTo(500, 8);
  });
});
