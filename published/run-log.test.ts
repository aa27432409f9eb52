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

describe('the arc by hysteresis, bridging and least length', () => {
  /**
   * Own derivation: on at 300 A, off below 150 A, breaks shorter than two rows bridged, then what is shorter than two rows
   * dropped. Amps 0 0 480 505 498 120 510 502 0 0 0 495 490 0 at 0.1 s: rows 2 to 8 and 11 to 13 burn, half open.
   */
  const AMPS = [0, 0, 480, 505, 498, 120, 510, 502, 0, 0, 0, 495, 490, 0];

  it('finds the arc where the rows have it, and the break of one row inside it brief', () => {
    // ten rows to one, so that a try of 0.2 s is a pass of its own and the rows tell where it lies
    const slow = 20;
    const amps = AMPS.flatMap((value) => Array<number>(slow).fill(value));
    const { totals, passes } = reviewed(
      amps.map((_, i) => 0.1 * i),
      { current_A: amps },
    );
    const [first] = passes;
    expect(first!.start).toBeCloseTo(0.1 * slow * 2, 0);
    // 5 + 2 blocks burn of the first, 2 of the second; the break of one block is no arc
    expect(totals.arcTime).toBeCloseTo(0.1 * slow * (3 + 2 + 2), 0);
  });
});

describe('mean and root mean square of rippled current', () => {
  /** I_rms^2 = I_mean^2 + sd^2: 480 520 480 520 A have a mean of 500 A and 500.3998401 A root mean square. */
  it('tells the mean: energy comes from the product of instants, not from a root mean square', () => {
    const time = Array.from({ length: 4001 }, (_, n) => n / 1000);
    const amps = time.map((_, n) => (n % 2 === 0 ? 480 : 520));
    const { totals } = reviewed(time, { voltage_V: time.map(() => 40), current_A: amps });
    expect(totals.current).toBeCloseTo(500, 1);
    expect(totals.energy! / 4).toBeCloseTo(40 * 500, 0);
    expect(Math.sqrt((480 ** 2 + 520 ** 2) / 2)).toBeCloseTo(500.3998401, 6);
  });
});

describe('means of large and close values', () => {
  /** NIST StRD NumAcc4: 10000000.2 once, then 500 pairs of 10000000.1 and 10000000.3; mean 10000000.2 exactly. */
  it('keep their digits', () => {
    const values = [
      10_000_000.2,
      ...Array.from({ length: 1000 }, (_, i) => (i % 2 === 0 ? 10_000_000.1 : 10_000_000.3)),
    ];
    // the volts of an arc, with the digits that are left of such values
    const volts = values.map((value) => value - 10_000_000 + 40);
    const { totals } = reviewed(
      values.map((_, i) => i / 10),
      { voltage_V: volts, current_A: values.map(() => 450) },
    );
    // by the trapezoid rule the first and the last value weigh half: (20.1 + 500 * 40.1 + 499 * 40.3 + 20.15) / 1000
    expect(totals.voltage).toBeCloseTo(40.19995, 8);
  });
});
