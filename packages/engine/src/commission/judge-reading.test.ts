import { describe, expect, it } from 'vitest';
import { FAULT_MODEL, rankFaults } from '../faults/index.ts';
import { evidenceOf, judgeReading } from './judge-reading.ts';
import { readReading } from './read-reading.ts';
import { recordReading } from './record-reading.ts';
import { measured, testChecks } from './shop.test-support.ts';

const checks = testChecks();
const flowing = measured(checks, 'flowing_pressure_2');
const polarity = checks.find(({ id }) => id === 'polarity')!;

function recorded(id: string, typed: string) {
  const outcome = recordReading(checks.find((check) => check.id === id)!, typed, 'metric');
  if (!outcome.ok) throw new Error(outcome.issues[0]!.message);
  return outcome.value;
}

describe('a reading', () => {
  it('in its band is told so, ends included', () => {
    for (const value of [flowing.expected, flowing.least, flowing.most])
      expect(judgeReading(flowing, value, 'metric')).toMatchObject({ verdict: 'in_band', faults: [] });
    expect(judgeReading(flowing, 550, 'metric').words).toBe('5.5 bar is in the band of 5.2 bar to 5.8 bar.');
  });

  it('outside it is told which way, against which band, and what explains it', () => {
    const low = judgeReading(flowing, 300, 'inch');
    expect(low.verdict).toBe('low');
    expect(low.words).toMatch(
      /^44 psi is below the band of \d\d psi to \d\d psi\. It can come from: Too little air/,
    );
    expect(low.faults[0]!.cause).toBe('low_air');
    expect(judgeReading(flowing, 700, 'metric')).toMatchObject({ verdict: 'high' });
    expect(judgeReading(measured(checks, 'loss_window'), 9, 'metric').words).toContain(
      'The window is set longer',
    );
  });

  it('met or not is told with its causes', () => {
    expect(judgeReading(polarity, true, 'metric')).toMatchObject({
      verdict: 'met',
      evidence: { outcome: 'no' },
    });
    const wrong = judgeReading(polarity, false, 'metric');
    expect(wrong).toMatchObject({ verdict: 'not_met', evidence: { outcome: 'yes' } });
    expect(wrong.words).toContain('Electrode on the wrong pole');
  });

  it('that is no number, or of the wrong kind, is a bug of the caller', () => {
    expect(() => judgeReading(flowing, Number.NaN, 'metric')).toThrow(RangeError);
    expect(() => judgeReading(flowing, true, 'metric')).toThrow(RangeError);
    expect(() => judgeReading(polarity, 1, 'metric')).toThrow(RangeError);
  });
});

describe('what is typed', () => {
  it.each([
    ['flowing_pressure_2', '90 psi', 620.528],
    ['joint_clamp', '0.45 V', 450],
    ['joint_clamp', '450 mV', 450],
    ['stick_out', '4 in', 101.6],
    ['push_angle_1', '44 deg', 44],
    ['travel_time_1', '20.5 s', 20.5],
    ['gauge_zero', '-0.3 mm', -0.3],
  ])('at %s, "%s", is read in the unit of the check', (id, text, value) => {
    const read = readReading(measured(checks, id), text);
    expect(read.ok && read.value).toBeCloseTo(value, 2);
  });

  it.each(['90', '90 V', 'plenty', ''])('at a pressure, "%s", is refused with what is accepted', (text) => {
    const read = readReading(flowing, text);
    expect(read.ok ? [] : read.issues[0]!.accepted).toContain('a pressure');
  });

  it('at a check that is met or not takes yes and no', () => {
    expect(readReading(polarity, ' Yes ')).toEqual({ ok: true, value: true });
    expect(readReading(polarity, 'n')).toEqual({ ok: true, value: false });
    const read = readReading(polarity, 'maybe');
    expect(read.ok ? '' : read.issues[0]!.code).toBe('COMMISSION_READING');
  });

  it('is kept as typed beside what it means', () => {
    expect(recorded('current', '1.2 kA')).toMatchObject({
      check: 'current',
      typed: '1.2 kA',
      value: 1200,
      unit: 'A',
      judgement: { verdict: 'high' },
    });
  });
});

describe('the readings together', () => {
  it('rank the fault that explains them first', () => {
    const readings = [
      recorded('joint_station_joint', '480 mV'),
      recorded('joint_clamp', '2.4 V'),
      recorded('flowing_pressure_2', '550 kPa'),
      recorded('emergency_stop', 'yes'),
    ];
    const evidence = evidenceOf(readings.map(({ judgement }) => judgement));
    expect(evidence).toEqual({ joint_millivolts: 'high', flowing_pressure: 'in' });
    const ranked = rankFaults(FAULT_MODEL, evidence);
    expect(ranked.ok && ranked.value[0]!.cause).toBe('loose_joint');
  });

  it('keep one out of its band whatever comes after it', () => {
    const high = recorded('joint_clamp', '2.4 V').judgement;
    const good = recorded('joint_station_joint', '480 mV').judgement;
    expect(evidenceOf([high, good])).toEqual(evidenceOf([good, high]));
  });
});
