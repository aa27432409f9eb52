import { describe, expect, it } from 'vitest';
import { commissionChecks } from './commission-checks.ts';
import { RIG_CHANGES, roundOf } from './round.ts';
import { testJob, testPass, testSupply } from './shop.test-support.ts';

const outcome = commissionChecks(
  { passes: [1, 2, 3, 4, 5].map((number) => testPass({ number, travel: 0.008 + number / 1000 })) },
  testJob(),
  testSupply(),
);
const CHECKS = outcome.ok ? outcome.value : [];
const ids = (round: ReturnType<typeof roundOf>): string[] => round.checks.map(({ id }) => id);

describe('roundOf', () => {
  it('takes every check the first time', () => {
    const round = roundOf(CHECKS, 'first');
    expect(round.checks).toEqual(CHECKS);
    expect(round.left_out).toEqual([]);
  });

  it('takes ten or fewer every day, however many passes, and tells the rest by title', () => {
    const round = roundOf(CHECKS, 'daily');
    expect(CHECKS.length).toBeGreaterThan(25);
    expect(round.checks.length).toBeLessThanOrEqual(10);
    expect(round.checks.length).toBeGreaterThanOrEqual(8);
    expect(ids(round)).toContain('emergency_stop');
    expect(ids(round).filter((id) => id.startsWith('travel_time'))).toEqual(['travel_time_1']);
    expect(round.checks.length + round.left_out.length).toBe(CHECKS.length);
    expect(ids(round).some((id) => id.startsWith('emergency_stop_volts'))).toBe(false);
  });

  it('takes the pressure at the torch of all places, which shows what is lost before it', () => {
    const many = [0, 1, 2].map((place) => ({
      ...CHECKS.find(({ kind }) => kind === 'measure')!,
      id: `flowing_pressure_${place + 1}`,
    }));
    expect(ids(roundOf(many, 'daily'))).toEqual(['flowing_pressure_3']);
  });

  it('takes after a change what it can have put out, and more after two', () => {
    expect(ids(roundOf(CHECKS, 'change', ['gauge']))).toEqual(['gauge_zero']);
    const leads = ids(roundOf(CHECKS, 'change', ['leads']));
    expect(leads).toContain('polarity');
    expect(leads.some((id) => id.startsWith('joint_'))).toBe(true);
    expect(leads).not.toContain('stick_out');
    const both = ids(roundOf(CHECKS, 'change', ['leads', 'gauge']));
    expect(both).toHaveLength(leads.length + 1);
    expect(roundOf(CHECKS, 'change').checks).toEqual([]);
  });

  it('knows each check of a rig: every one is made after some change', () => {
    const known = new Set(RIG_CHANGES.flatMap((change) => ids(roundOf(CHECKS, 'change', [change]))));
    expect(CHECKS.filter(({ id }) => !known.has(id))).toEqual([]);
    const strange = { ...CHECKS[0]!, id: 'never_heard_of' };
    expect(ids(roundOf([strange], 'change', ['gauge']))).toEqual(['never_heard_of']);
    expect(ids(roundOf([strange], 'daily'))).toEqual([]);
  });
});
