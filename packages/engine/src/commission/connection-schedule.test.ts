import { describe, expect, it } from 'vitest';
import { amountOf, say } from '../quantity/index.ts';
import { connectionSchedule } from './connection-schedule.ts';
import { testSupply } from './shop.test-support.ts';

function rows(change: Parameters<typeof testSupply>[0] = {}) {
  const outcome = connectionSchedule(testSupply(change));
  if (!outcome.ok) throw new Error(outcome.issues[0]!.message);
  return outcome.value;
}

describe('connectionSchedule', () => {
  it('lists the loop, the sense wire and the air, numbered', () => {
    expect(rows().map(({ number, kind, name }) => [number, kind, name])).toEqual([
      [1, 'lead', 'electrode_lead'],
      [2, 'joint', 'station_joint'],
      [3, 'joint', 'clamp'],
      [4, 'lead', 'work_lead'],
      [5, 'sense_wire', 'Sense wire'],
      [6, 'air', 'Hose 1'],
    ]);
  });

  it('says from where to where, size, parallels, length, pole and volts', () => {
    expect(rows()[0]).toMatchObject({
      from: 'A plus',
      to: 'station',
      size: '95 mm2',
      parallels: 2,
      length_mm: 30_000,
      polarity: 'positive',
    });
    expect(rows()[0]!.voltage_V).toBeCloseTo(3.575748, 9);
    expect(rows()[5]).toMatchObject({
      size: say`${amountOf(0.019, 'bore')} bore`,
      length_mm: 15_000,
      polarity: null,
      voltage_V: null,
    });
    for (const { tightness } of rows()) expect(tightness).not.toBe('');
  });

  it('turns the poles with the polarity', () => {
    const poles = (polarity: 'electrode_positive' | 'electrode_negative') =>
      rows({ polarity }).map((row) => row.polarity);
    expect(poles('electrode_positive')).toEqual([
      'positive',
      'positive',
      'negative',
      'negative',
      'negative',
      null,
    ]);
    expect(poles('electrode_negative')).toEqual([
      'negative',
      'negative',
      'positive',
      'positive',
      'positive',
      null,
    ]);
  });

  it('refuses what cannot be worked with', () => {
    expect(connectionSchedule(testSupply({ setCurrent: Number.NaN })).ok).toBe(false);
    expect(connectionSchedule(testSupply({ items: [] })).ok).toBe(false);
  });
});
