import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { airOfKit, electricOfKit, type Kit, readKit } from '../kit/index.ts';
import { sentenceText } from '../quantity/index.ts';
import { airPoint, type ElectricLoop, solveLoop } from '../supply/index.ts';
import { judgeReading } from './judge-reading.ts';
import { at, measured, testChecks, testJob, testPass, testSupply } from './shop.test-support.ts';
import { commissionSupplyOf } from './supply-of-kit.ts';

const read = readKit(readFileSync(new URL('../../../../examples/yard-kit.yaml', import.meta.url), 'utf8'));
if (!read.ok) throw new Error(read.issues[0]!.message);
const kit: Kit = read.value.kit;
const pass = testPass({ current: 1000, voltage: 42 });
const duty = [{ arc: true, duration: 900 }];
const loop: ElectricLoop = {
  ...electricOfKit(kit).electric,
  arc: { holds: 'current', current: 1000, voltage: 42 },
  duty,
};
const checks = testChecks({ passes: [pass] }, commissionSupplyOf(kit, 'electrode_positive', loop));

describe('a sound rig is judged as it is at the check', () => {
  const supply = airOfKit(kit);

  it.each([
    supply.receiver.cutIn,
    (supply.receiver.cutIn + supply.receiver.cutOut) / 2,
    supply.receiver.cutOut,
  ])('with %d Pa in the receiver every pressure is in its band', (receiver) => {
    const point = airPoint(supply, receiver);
    if (!point.ok) throw new Error(point.issues[0]!.message);
    const { regulator, torch } = point.value;
    for (const [id, pressure] of [
      ['flowing_pressure_1', regulator],
      ['flowing_pressure_2', torch],
      ['receiver_pressure', receiver],
    ] as const)
      expect(judgeReading(measured(checks, id), pressure / 1000).verdict, id).toBe('in_band');
  });

  it('with cold leads and a current anywhere in its own band, the volts lost are in theirs', () => {
    const { duty: _duty, ...atOnce } = loop;
    const amps = measured(checks, 'current');
    for (const current of [amps.least, amps.expected, amps.most]) {
      const cold = solveLoop({
        ...atOnce,
        arc: { holds: 'current', current, voltage: 42 },
        lead_temperature: kit.ambient.temperature,
      });
      if (!cold.ok || cold.value.kind !== 'operating_point') throw new Error('no working point');
      const { needed_V, leads } = cold.value;
      const check = measured(checks, 'loaded_source_1');
      expect(judgeReading(check, needed_V).verdict).toBe('in_band');
      const back = leads.find(({ side }) => side === 'work')!;
      const lost = checks.find(
        ({ id, title }) => id.startsWith('loaded_work') && title.includes('negative'),
      )!;
      expect(judgeReading(lost, back.drop_V).verdict).toBe('in_band');
    }
  });

  it('expects what cold leads lose, less than hot ones', () => {
    const hot = solveLoop(loop);
    if (!hot.ok || hot.value.kind !== 'operating_point') throw new Error('no working point');
    expect(measured(checks, 'loaded_source_1').expected).toBeLessThan(hot.value.needed_V - 0.3);
  });
});

describe('the plate before the first arc', () => {
  const plate = (heat: Record<string, string>) => {
    const job = testJob();
    return measured(
      testChecks(undefined, undefined, undefined, {
        ...job,
        heat: {
          ...job.heat,
          ...Object.fromEntries(Object.entries(heat).map(([key, c]) => [key, Number(c) + 273.15])),
        },
      }),
      'plate_temperature',
    );
  };

  it('is to be at the preheat stated, and below the interpass temperature', () => {
    const check = plate({ preheat: '100', interpass_most: '150' });
    expect(check).toMatchObject({ unit: 'degC', quantity: 'temperature' });
    expect(check.expected).toBeCloseTo(100, 9);
    expect(check.least).toBeCloseTo(100, 9);
    expect(check.most).toBeCloseTo(150, 9);
    expect(judgeReading(check, 90)).toMatchObject({ verdict: 'low' });
    expect(sentenceText(judgeReading(check, 90).says, 'inch')).toContain(
      '194 °F is below the band of 212 °F to 302 °F',
    );
    expect(sentenceText(check.ask, 'metric')).toContain('At least 100 °C, at most 150 °C');
  });

  it('never tells a stated limit on its dangerous side, in degrees of either scale', () => {
    for (let celsius = 20; celsius < 140; celsius += 1.3) {
      const check = plate({ preheat: String(celsius), interpass_most: String(celsius + 100.7) });
      const says = sentenceText(judgeReading(check, celsius - 9).says, 'inch');
      const [, least, most] = /below the band of ([\d.]+) °F to ([\d.]+) °F/u.exec(says)!;
      expect(Number(least), says).toBeGreaterThanOrEqual(celsius * 1.8 + 32 - 1e-9);
      expect(Number(most), says).toBeLessThanOrEqual((celsius + 100.7) * 1.8 + 32 + 1e-9);
      expect(sentenceText(check.ask, 'inch')).toContain(`At least ${least} °F, at most ${most} °F`);
    }
  });

  it('tells what the figures assume where none is stated', () => {
    expect(sentenceText(plate({}).ask, 'metric')).toMatch(/None is stated; the figures assume \d+ °C/);
  });
});

describe('a reading at the edge of its band', () => {
  const points = [{ name: 'x', staticPressure: at(600e3), flowingPressure: at(600e3), atTorch: false }];
  const check = measured(testChecks(undefined, testSupply({ airPoints: points })), 'static_pressure_1');

  it('is never told to lie beyond a figure that reads the same', () => {
    for (const beyond of [0.01, 0.1, 1, 3, 10]) {
      const high = sentenceText(judgeReading(check, check.most + beyond).says, 'metric');
      const [, value, end] = /^([\d.]+) bar is above the band of .* to ([\d.]+) bar/u.exec(high)!;
      expect(Number(value), high).toBeGreaterThan(Number(end));
      const low = sentenceText(judgeReading(check, check.least - beyond).says, 'metric');
      const [, under, least] = /^([\d.]+) bar is below the band of ([\d.]+) bar/u.exec(low)!;
      expect(Number(under), low).toBeLessThan(Number(least));
    }
  });
});
