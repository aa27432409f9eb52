import { describe, expect, it } from 'vitest';
import { passArea } from '../groove/index.ts';
import type { Job, KitElectrode } from '../job/index.ts';
import type { Candidate, Limit } from '../limit/index.ts';
import { PASS_DEPTH_MOST, processLimits, REMOVAL_SHARE_MOST } from './process-limits.ts';

const MELTING_ENERGY = 10e9;
const JOB = {
  kit: {
    current: { least: 200, most: 1000 },
    travel: { least: 0.15 / 60, most: 2.5 / 60 },
    arc_voltage: { least: 40, most: 44, set: 42 },
  },
} as unknown as Job;
const CANDIDATE: Candidate = {
  electrode: { diameter: 0.0127 } as KitElectrode,
  current: 850,
  voltage: 42,
  pushAngle: Math.PI / 4,
  travel: 0.9 / 60,
  tracks: 1,
  layers: 1,
  passLength: 1,
  passDepth: 0.009,
  passWidth: 0.016,
};

function limits(changed: Partial<Candidate> = {}): Map<string, Limit> {
  const all = processLimits(MELTING_ENERGY)({ ...CANDIDATE, ...changed }, JOB);
  const byId = new Map(all.map((limit) => [limit.id, limit]));
  expect(byId.size).toBe(all.length);
  return byId;
}

const failing = (changed: Partial<Candidate>): string[] =>
  [...limits(changed).values()].filter(({ verdict }) => verdict === 'fails').map(({ id }) => id);

describe('processLimits', () => {
  it('holds for an ordinary setting, and every limit has source, unit and remedy', () => {
    for (const limit of limits().values()) {
      expect(limit.verdict, limit.id).not.toBe('fails');
      expect(limit.hard, limit.id).toBe(true);
      for (const text of [limit.title, limit.unit, limit.remedy, limit.source.text])
        expect(text, limit.id).not.toBe('');
    }
    expect([...limits().keys()]).toEqual([
      'electrode_current_least',
      'electrode_current_most',
      'source_current_least',
      'source_current_most',
      'travel_least',
      'travel_most',
      'arc_voltage_least',
      'arc_voltage_most',
      'removal_power',
      'depth_per_pass',
    ]);
  });

  it.each<[Partial<Candidate>, string[]]>([
    [{ current: 599 }, ['electrode_current_least']],
    [{ current: 1001 }, ['electrode_current_most', 'source_current_most']],
    [
      { electrode: { diameter: 0.00635 } as KitElectrode, current: 199, passDepth: 0.002 },
      ['electrode_current_least', 'source_current_least'],
    ],
    [{ travel: 0.149 / 60 }, ['travel_least']],
    [{ travel: 2.51 / 60, passDepth: 0.002 }, ['travel_most']],
    [{ voltage: 39.9 }, ['arc_voltage_least']],
    [{ voltage: 44.1 }, ['arc_voltage_most']],
    [{ passDepth: PASS_DEPTH_MOST * 0.0127 + 1e-6, travel: 0.3 / 60 }, ['depth_per_pass']],
    [{ travel: 2.4 / 60 }, ['removal_power']],
  ])('%j fails just what it breaks', (changed, ids) => {
    expect(failing(changed)).toEqual(ids);
  });

  it('weighs the power to melt the groove out against its share of the arc’s power', () => {
    const limit = limits().get('removal_power')!;
    const area = passArea({ width: 0.016, depth: 0.009 });
    expect(limit.demand).toBeCloseTo((area * CANDIDATE.travel * MELTING_ENERGY) / 1000, 9);
    expect(limit.capacity).toBeCloseTo((REMOVAL_SHARE_MOST * 42 * 850) / 1000, 9);
    expect(limit.unit).toBe('kW');
  });

  it('takes a size without a published range as limited by the source alone', () => {
    const ids = [...limits({ electrode: { diameter: 0.0112 } as KitElectrode }).keys()];
    expect(ids.filter((id) => id.startsWith('electrode'))).toEqual([]);
    expect(ids).toContain('source_current_most');
  });

  it('shows amounts in shop units', () => {
    expect(limits().get('travel_most')).toMatchObject({
      unit: 'mm/min',
      demand: expect.closeTo(900, 6),
      capacity: expect.closeTo(2500, 6),
    });
    expect(limits().get('depth_per_pass')).toMatchObject({ unit: 'mm', capacity: expect.closeTo(19.05, 6) });
  });
});
