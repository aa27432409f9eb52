import { describe, expect, it } from 'vitest';
import { FAULT_MODEL, rankFaults } from '../faults/index.ts';
import { sentenceText } from '../quantity/index.ts';
import { evidenceOf, judgeReading } from './judge-reading.ts';
import { readReading } from './read-reading.ts';
import { measured, testChecks } from './shop.test-support.ts';

const checks = testChecks();
const flowing = measured(checks, 'flowing_pressure_2');
const polarity = checks.find(({ id }) => id === 'polarity')!;

function judged(id: string, typed: string) {
  const check = checks.find((each) => each.id === id)!;
  const read = readReading(check, typed);
  if (!read.ok) throw new Error(read.issues[0]!.message);
  return judgeReading(check, read.value);
}

describe('a reading', () => {
  it('in its band is told so, ends included', () => {
    for (const value of [flowing.expected, flowing.least, flowing.most])
      expect(judgeReading(flowing, value)).toMatchObject({ verdict: 'in_band', faults: [] });
    expect(sentenceText(judgeReading(flowing, 550).says, 'metric')).toBe(
      '5.5 bar is in the band of 5.2 bar to 5.8 bar.',
    );
  });

  it('outside it is told which way, against which band, and what explains it', () => {
    const low = judgeReading(flowing, 300);
    expect(low.verdict).toBe('low');
    expect(sentenceText(low.says, 'inch')).toMatch(/^44 psi is below the band of \d\d psi to \d\d psi\.$/);
    expect(low.faults[0]!.cause).toBe('low_air');
    expect(judgeReading(flowing, 700)).toMatchObject({ verdict: 'high' });
    expect(measured(checks, 'loss_window').hints.high).toContain('The window is set longer');
  });

  it('met or not is told with its causes', () => {
    expect(judgeReading(polarity, true)).toMatchObject({
      verdict: 'met',
      evidence: { outcome: 'no' },
    });
    const wrong = judgeReading(polarity, false);
    expect(wrong).toMatchObject({ verdict: 'not_met', evidence: { outcome: 'yes' } });
    expect(wrong.faults[0]!.title).toBe('Electrode on the wrong pole');
  });

  it('that is no number, or of the wrong kind, is a bug of the caller', () => {
    expect(() => judgeReading(flowing, Number.NaN)).toThrow(RangeError);
    expect(() => judgeReading(flowing, true)).toThrow(RangeError);
    expect(() => judgeReading(polarity, 1)).toThrow(RangeError);
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
});

describe('the readings together', () => {
  it('rank the fault that explains them first', () => {
    const readings = [
      judged('joint_station_joint', '480 mV'),
      judged('joint_clamp', '2.4 V'),
      judged('flowing_pressure_2', '550 kPa'),
      judged('emergency_stop', 'yes'),
    ];
    const evidence = evidenceOf(readings);
    expect(evidence).toEqual({ joint_millivolts: 'high', flowing_pressure: 'in' });
    const ranked = rankFaults(FAULT_MODEL, evidence);
    expect(ranked.ok && ranked.value[0]!.cause).toBe('loose_joint');
  });

  it('keep one out of its band whatever comes after it', () => {
    const high = judged('joint_clamp', '2.4 V');
    const good = judged('joint_station_joint', '480 mV');
    expect(evidenceOf([high, good])).toEqual(evidenceOf([good, high]));
  });
});
