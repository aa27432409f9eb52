import { describe, expect, it } from 'vitest';
import type { RunExpectation } from './expectation.ts';
import { LiveWatch } from './live-watch.ts';

const EXPECTED: RunExpectation = {
  length: 1,
  girth: false,
  lossWindow: 0.4,
  current: 450,
  voltage: 40,
  voltageLeast: 38,
  voltageMost: 42,
  electrode: 10,
  wear: 1e-6,
  passes: [{ number: 1, from: 0, to: 1, travel: 0.01, dwell: 0 }],
};

interface Readings {
  readonly volts?: number;
  readonly amps?: number;
  readonly speed?: number;
  readonly bar?: number;
}

/** A rig that sends ten readings a second, one a frame; gives what is told of it after each. */
function rig() {
  const watch = new LiveWatch(EXPECTED);
  let row = 0;
  return (seconds: number, { volts = 40, amps = 450, speed = 600, bar = 6 }: Readings = {}) => {
    const kinds: string[] = [];
    for (let n = 0; n < 10 * seconds; n += 1) {
      // the noise of readings, so that none stands still
      const noise = ((row * 37) % 7) / 100;
      const frame = {
        'time [s]': row / 10,
        'arc voltage [V]': volts + noise,
        'current [A]': amps === 0 ? 0 : amps + noise,
        'travel [mm/min]': speed,
        'air pressure [bar]': bar + noise,
      };
      watch.push(Buffer.from(`${JSON.stringify(frame)}\n`));
      row += 1;
      kinds.push(
        watch
          .deviations()
          .map(({ kind }) => kind)
          .join(' '),
      );
    }
    return { kinds, last: watch.deviations(), over: watch.over() };
  };
}

describe('a run that is watched', () => {
  it('tells nothing of an arc as planned, and nothing of rows without an arc', () => {
    const run = rig();
    expect(new Set([...run(2, { amps: 0, volts: 70 }).kinds, ...run(20).kinds])).toEqual(new Set(['']));
  });

  it('tells that the arc is out at the reading with which the loss window is over, and no longer than it is', () => {
    const run = rig();
    run(10);
    const { kinds, last } = run(1, { amps: 0, volts: 70 });
    // the arc was last seen in the row before: 0.4 s later is the fifth row without it
    expect(kinds.map((each) => each !== '')).toEqual([...Array(4).fill(false), ...Array(6).fill(true)]);
    expect(last).toMatchObject([{ kind: 'arc_out' }]);
    expect(last[0]!.at).toBeCloseTo(0.1, 2);
    expect(last[0]!.duration).toBeCloseTo(0.9, 6);
    const { last: now, over } = run(1);
    expect(now).toEqual([]);
    // out from the first row without it to the first with it
    expect(over).toMatchObject([{ kind: 'arc_out', since: 10, at: last[0]!.at }]);
    expect(over[0]!.duration).toBeCloseTo(1, 6);
  });

  it.each([
    ['stall', { speed: 0 }, 0.4],
    ['low_air', { bar: 4 }, 0.5],
    ['voltage_drift', { volts: 46 }, 2],
    ['current_drift', { amps: 380 }, 2],
  ] as const)('tells %s while it lasts', (kind, readings, within) => {
    const run = rig();
    run(10);
    const { kinds, last } = run(5, readings);
    expect(kinds.findIndex((each) => each !== '') / 10).toBeLessThanOrEqual(within + 0.1);
    expect(last).toMatchObject([{ kind }]);
    expect(last[0]!.since).toBeGreaterThanOrEqual(9.5);
    const { last: now, over } = run(3);
    expect(now).toEqual([]);
    expect(over).toMatchObject([{ kind }]);
    expect(over[0]!.since).toBeCloseTo(10, 0);
    expect(over[0]!.duration).toBeGreaterThan(4);
    expect(over[0]!.duration).toBeLessThan(5.8);
    // once the pass is over the drift is an event of it, told once
    run(90);
    run(3, { amps: 0, volts: 0 });
    run(3);
    expect(run(1).over.filter((each) => each.kind === kind)).toHaveLength(1);
  });

  it('tells the last ten that are over, oldest first, and no start of the arc', () => {
    const run = rig();
    run(10);
    for (let n = 0; n < 12; n += 1) {
      run(1, { amps: 0, volts: 70 });
      run(2);
    }
    const { over } = run(1);
    expect(over.map(({ kind }) => kind)).toEqual(Array(10).fill('arc_out'));
    expect(over[0]!.since).toBeCloseTo(16, 6);
    expect(over.at(-1)!.since).toBeCloseTo(43, 6);
  });

  it('tells no arc-out where the pass is as long as planned', () => {
    const run = rig();
    run(100);
    expect(run(5, { amps: 0, volts: 0 }).last).toEqual([]);
  });

  it('takes lines that are no readings, and readings whose clock goes back', () => {
    const watch = new LiveWatch(EXPECTED);
    watch.push(Buffer.from('oops\n{"note":"a word"}\n[1]\n'));
    for (const t of [0, 1, 0.5, 2])
      watch.push(Buffer.from(`{"t":${t},"voltage [V]":40,"current [A]":450}\n`));
    expect(watch.deviations()).toEqual([]);
  });
});
