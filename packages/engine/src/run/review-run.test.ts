import { describe, expect, it } from 'vitest';
import { sentenceText } from '../quantity/index.ts';
import {
  BURNS,
  IDLE,
  logOf,
  OUT,
  type Piece,
  PLAN,
  reviewOf,
  rowsOf,
  SET,
  SHORTED,
} from './log.test-support.ts';
import type { RunEvent, RunOutcome } from './outcome.ts';
import { reviewRun } from './review-run.ts';

const START: readonly Piece[] = [
  IDLE(2),
  OUT(1, { travel_m_per_s: 0 }),
  SHORTED(0.12, { travel_m_per_s: 0 }),
];

function kinds({ events }: RunOutcome): string[] {
  return events.map(({ kind }) => kind);
}

function only(outcome: RunOutcome, kind: string): RunEvent {
  const found = outcome.events.filter((event) => event.kind === kind);
  expect(found.length, `${kinds(outcome)}`).toBe(1);
  return found[0]!;
}

describe('a run that goes as planned', () => {
  const out = reviewOf(logOf([...START, BURNS(200), IDLE(3)], 50), PLAN);

  it('is one pass with no event but the strike', () => {
    expect(kinds(out)).toEqual(['touch_down']);
    expect(out.passes).toHaveLength(1);
    expect(out.passes[0]).toMatchObject({ number: 1, planned: 1, complete: true, from: 0 });
    expect(out.passes[0]!.to).toBeCloseTo(3, 6);
  });

  it('sums arc time, energy and way', () => {
    const { arcTime, energy, voltage, current, gouged } = out.totals;
    expect(arcTime).toBeCloseTo(200, 6);
    expect(voltage).toBeCloseTo(42, 1);
    expect(current).toBeCloseTo(800, 0);
    expect(energy! / (42 * 800 * 200)).toBeCloseTo(1, 2);
    expect(gouged).toBeCloseTo(3, 3);
  });
});

describe('an arc that goes out', () => {
  it.each([10, 50, 500])('is found at its place, at %d rows per second', (rate) => {
    const out = reviewOf(logOf([...START, BURNS(100), OUT(0.9), BURNS(99.1), IDLE(3)], rate), PLAN);
    const event = only(out, 'arc_out');
    expect(event.end - event.start).toBeCloseTo(0.9, 1);
    expect(event.start).toBeCloseTo(103.1, 0.5);
    expect(event.from!).toBeCloseTo(1.5, 2);
    expect(event.to! - event.from!).toBeCloseTo(0.0135, 2);
    expect(out.totals.arcOutTime).toBeCloseTo(0.9, 1);
    expect(event.lastRow - event.firstRow + 1).toBeCloseTo(0.9 * rate, -0.5);
  });

  it('is none when it is out for less than the loss window', () => {
    const out = reviewOf(logOf([...START, BURNS(100), OUT(0.3), BURNS(99.7), IDLE(3)], 50), PLAN);
    expect(kinds(out)).toEqual(['touch_down']);
    expect(out.passes[0]!.brief).toBe(1);
  });

  it('is one when it is out for just the loss window', () => {
    const out = reviewOf(logOf([...START, BURNS(100), OUT(0.4), BURNS(99.6), IDLE(3)], 10), PLAN);
    expect(kinds(out)).toContain('arc_out');
  });

  it('is no arc-out when the logger was silent', () => {
    const whole = logOf([...START, BURNS(200), IDLE(3)], 20);
    const out = reviewOf(
      rowsOf(whole, (i) => whole.time_s[i]! < 100 || whole.time_s[i]! > 102),
      PLAN,
    );
    expect(kinds(out)).toEqual(['touch_down', 'gap']);
    // what was not seen is not counted as arc time
    expect(out.totals.arcTime).toBeCloseTo(198, 0);
  });

  it('is an electrode change when it takes long enough and an electrode is burnt', () => {
    const out = reviewOf(
      logOf([...START, BURNS(150), OUT(40, { travel_m_per_s: 0 }), SHORTED(0.1), BURNS(50), IDLE(3)], 50),
      PLAN,
    );
    expect(kinds(out)).toEqual(['touch_down', 'electrode_change', 'restart_short']);
    expect(out.totals.arcOutTime).toBe(0);
  });

  it('is still an arc-out after 40 s when little of the electrode was burnt', () => {
    const out = reviewOf(
      logOf([...START, BURNS(60), OUT(40, { travel_m_per_s: 0 }), BURNS(140), IDLE(3)], 50),
      PLAN,
    );
    expect(kinds(out)).toContain('arc_out');
  });
});

it('an electrode begun in one pass runs out in the next', () => {
  const passes = [1, 2].map((number) => ({ ...PLAN.passes[0]!, number }));
  const change = OUT(40, { travel_m_per_s: 0 });
  const run = [...START, BURNS(200), IDLE(30), ...START, BURNS(40), change, BURNS(160), IDLE(3)];
  const out = reviewOf(logOf(run, 20), { ...PLAN, passes });
  expect(kinds(out).filter((kind) => kind !== 'touch_down')).toEqual(['electrode_change']);
});

describe('shorts', () => {
  it('are events when they last, and roughness when they do not', () => {
    const brief = Array.from({ length: 20 }, () => [BURNS(2), SHORTED(0.02)]).flat();
    const out = reviewOf(logOf([...START, ...brief, SHORTED(0.3), BURNS(159.5), IDLE(3)], 100), PLAN);
    expect(only(out, 'short').end - only(out, 'short').start).toBeCloseTo(0.32, 2);
    expect(out.passes[0]!.brief).toBe(19);
  });
});

describe('what fails while the arc burns', () => {
  const cases: readonly [string, Piece[], number][] = [
    ['stall', [BURNS(2, { travel_m_per_s: 0 })], 2],
    ['low_air', [BURNS(3, { air_pressure_Pa: 4e5 })], 3],
    ['feed_stop', [BURNS(2, { feed_m_per_s: 0 })], 2],
  ];
  it.each(cases)('%s', (kind, pieces, lasts) => {
    const good = { air_pressure_Pa: 6e5, feed_m_per_s: 0.0015 };
    const filled = [...START, BURNS(100), ...pieces, BURNS(100), IDLE(3)].map((piece) => ({
      ...good,
      ...piece,
    }));
    const out = reviewOf(logOf(filled, 50), PLAN);
    const event = only(out, kind);
    expect(event.end - event.start).toBeCloseTo(lasts, 1);
    expect(event.start).toBeCloseTo(103.1, 0.5);
  });

  it('a wheel that turns while the rail stands is slip, not stall', () => {
    const batch = logOf([...START, BURNS(100), BURNS(4), BURNS(96), IDLE(3)], 50);
    let place = 0;
    const position = batch.time_s.map((t, i) => {
      const slips = t > 103.2 && t < 107.2;
      place += ((batch.channels.travel_m_per_s![i] ?? 0) * (slips ? 0.4 : 1)) / 50;
      return place;
    });
    const out = reviewOf({ ...batch, channels: { ...batch.channels, position_m: position } }, PLAN);
    const event = only(out, 'slip');
    expect(event.end - event.start).toBeGreaterThan(3);
    expect(kinds(out)).not.toContain('stall');
    expect(sentenceText(event.says, 'metric')).toContain('60');
  });

  it('drift out of the window, and none within it', () => {
    const drifts = (volts: number) =>
      reviewOf(logOf([...START, BURNS(80), BURNS(40, { voltage_V: volts }), BURNS(80), IDLE(3)], 50), PLAN);
    const event = only(drifts(45.5), 'voltage_drift');
    expect(event.start).toBeCloseTo(83, -0.5);
    expect(event.end).toBeCloseTo(123, -0.5);
    expect(kinds(drifts(43))).not.toContain('voltage_drift');
  });

  it('a current off the plan for the whole pass', () => {
    const out = reviewOf(logOf([...START, BURNS(200, { current_A: 700 }), IDLE(3)], 20), PLAN);
    expect(sentenceText(only(out, 'current_drift').says, 'metric')).toContain('800 A');
  });

  it('a reading that stands still', () => {
    const batch = logOf([...START, BURNS(200), IDLE(3)], 50);
    const volts = batch.channels.voltage_V!.slice();
    const from = 5000;
    volts.fill(volts[from]!, from, from + 150);
    const out = reviewOf({ ...batch, channels: { ...batch.channels, voltage_V: volts } }, PLAN);
    const event = only(out, 'stale_reading');
    expect(event.firstRow).toBe(from + 2);
    expect(event.lastRow).toBe(from + 150);
  });

  it('is not told of a reading that is coarse', () => {
    const batch = logOf([...START, BURNS(200), IDLE(3)], 50);
    const coarse = batch.channels.voltage_V!.map((volts) => Math.round(volts / 5) * 5);
    expect(
      kinds(reviewOf({ ...batch, channels: { ...batch.channels, voltage_V: coarse } }, PLAN)),
    ).not.toContain('stale_reading');
  });

  it('a spike of one row, which no sum counts', () => {
    const batch = logOf([...START, BURNS(200), IDLE(3)], 50);
    const amps = batch.channels.current_A!.slice();
    amps[6000] = 1e6;
    const clean = reviewOf(batch, PLAN).totals.energy!;
    const out = reviewOf({ ...batch, channels: { ...batch.channels, current_A: amps } }, PLAN);
    expect(only(out, 'spike')).toMatchObject({ firstRow: 6001, lastRow: 6001 });
    expect(out.totals.energy! / clean).toBeCloseTo(1, 4);
  });
});

describe('what a log lacks', () => {
  const whole = logOf([...START, BURNS(100), OUT(0.9), BURNS(99.1), IDLE(3)], 50);
  const with_ = (...names: ('voltage_V' | 'current_A' | 'travel_m_per_s')[]) => ({
    ...whole,
    channels: Object.fromEntries(names.map((name) => [name, whole.channels[name]!])),
  });

  it('is not made up: no current, no energy', () => {
    const { totals } = reviewOf(with_('voltage_V'), PLAN);
    expect(totals).toMatchObject({
      current: undefined,
      energy: undefined,
      charge: undefined,
      fed: undefined,
    });
    expect(totals.voltage).toBeCloseTo(42, 1);
  });

  it('finds the arc by voltage alone and by current alone', () => {
    for (const name of ['voltage_V', 'current_A'] as const) {
      const event = only(reviewOf(with_(name), PLAN), 'arc_out');
      expect(event.end - event.start).toBeCloseTo(0.9, 1);
      expect(event.from!).toBeCloseTo(1.5, 1);
    }
  });

  it('has no place without travel, position or plan', () => {
    const out = reviewOf(with_('voltage_V', 'current_A'));
    expect(out.way).toBe('none');
    expect(out.passes[0]).toMatchObject({ from: undefined, to: undefined, course: undefined });
    expect(out.events.every(({ from, placeSd }) => from === undefined && placeSd === undefined)).toBe(true);
    expect(out.totals.travelled).toBeUndefined();
  });

  it('gives the place more surely the more the log tells', () => {
    const sd = (out: RunOutcome): number => only(out, 'arc_out').placeSd!;
    expect(sd(reviewOf(with_('voltage_V', 'current_A', 'travel_m_per_s'), PLAN))).toBeLessThan(
      sd(reviewOf(with_('voltage_V', 'current_A'), PLAN)),
    );
  });
});

describe('bad rows', () => {
  it('an empty log, and one that never burns', () => {
    expect(reviewRun(PLAN).end()).toMatchObject({ rows: 0, passes: [], events: [] });
    const idle = reviewOf(logOf([IDLE(60)], 10), PLAN);
    expect(idle.passes).toEqual([]);
    expect(idle.totals).toMatchObject({ arcTime: 0, energy: undefined, voltage: undefined });
  });

  it('cells that could not be read do not end the arc', () => {
    const batch = logOf([...START, BURNS(200), IDLE(3)], 50);
    const holes = batch.channels.current_A!.map((amps, i) => (i % 7 === 0 ? Number.NaN : amps));
    const out = reviewOf({ ...batch, channels: { ...batch.channels, current_A: holes } }, PLAN);
    expect(out.passes).toHaveLength(1);
    expect(out.totals.arcTime).toBeCloseTo(200, 3);
  });

  it('times that stand still or run back count no time', () => {
    const batch = logOf([...START, BURNS(200), IDLE(3)], 50);
    const time = batch.time_s.map((t, i) => (i > 5000 ? t - 2 : t));
    const out = reviewOf({ ...batch, time_s: time }, PLAN);
    expect(kinds(out)).toContain('clock_step');
    expect(out.totals.arcTime).toBeCloseTo(200, 0);
  });

  it('a log full of events keeps a fixed number of them and counts the rest', () => {
    const pieces = Array.from({ length: 2600 }, () => [BURNS(0.6), OUT(0.5)]).flat();
    const out = reviewOf(logOf([...START, BURNS(10), ...pieces, BURNS(5)], 20));
    expect(out.events.filter(({ kind }) => kind === 'arc_out').length).toBe(2000);
    expect(out.notListed.arc_out).toBe(600);
  });
});

it('several passes on one seam, told apart by known length', () => {
  const pass = [...START, BURNS(200, SET), IDLE(30)];
  const passes = [1, 2].map((number) => ({ ...PLAN.passes[0]!, number }));
  const out = reviewOf(logOf([...pass, ...pass], 20), { ...PLAN, passes });
  expect(out.passes.map(({ number, planned, complete }) => [number, planned, complete])).toEqual([
    [1, 1, true],
    [2, 2, true],
  ]);
});
