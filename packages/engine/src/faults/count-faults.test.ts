import { describe, expect, it } from 'vitest';
import { checkFaultModel } from './check-fault-model.ts';
import { countFaults, type FaultCounts } from './count-faults.ts';
import { FAULT_MODEL } from './fault-model.ts';
import type { FaultEvidence, FaultModel } from './model.ts';
import { rankFaults } from './rank-faults.ts';

function moved(counts: FaultCounts): FaultModel {
  const outcome = countFaults(FAULT_MODEL, counts);
  if (!outcome.ok) throw new Error(outcome.issues[0]!.message);
  return outcome.value;
}

function probability(model: FaultModel, evidence: FaultEvidence, cause: string): number {
  const outcome = rankFaults(model, evidence);
  if (!outcome.ok) throw new Error(outcome.issues[0]!.message);
  return outcome.value.find((fault) => fault.cause === cause)!.probability;
}

describe('countFaults', () => {
  it('shifts the ranking towards what the shop found', () => {
    const seen: FaultEvidence = { hunting_arc: 'yes', arc_goes_out: 'yes' };
    const shop = moved({ found: { electrode_joint_open: 30 }, seen: {} });
    const first = (model: FaultModel) => {
      const outcome = rankFaults(model, seen);
      return outcome.ok ? outcome.value[0]!.cause : undefined;
    };
    expect(first(FAULT_MODEL)).not.toBe('electrode_joint_open');
    expect(first(shop)).toBe('electrode_joint_open');
  });

  it('weighs counts against the table as so many cases', () => {
    const total = FAULT_MODEL.causes.reduce((sum, { weight }) => sum + weight, 0);
    const { weight } = FAULT_MODEL.causes.find(({ id }) => id === 'wet_air')!;
    const shop = moved({ found: { wet_air: 5 }, seen: {} });
    const cases = FAULT_MODEL.weight_cases;
    expect(probability(shop, {}, 'wet_air')).toBeCloseTo((cases * (weight / total) + 5) / (cases + 5), 12);
  });

  it('moves a row that the table states, and one that it leaves as otherwise', () => {
    const shop = moved({
      found: {},
      seen: { wet_air: { sputtering: { yes: 0, no: 10 }, static_pressure: { low: 10 } } },
    });
    const { shows } = shop.causes.find(({ id }) => id === 'wet_air')!;
    const stated = FAULT_MODEL.causes.find(({ id }) => id === 'wet_air')!.shows['sputtering'];
    expect(shows['sputtering']).toEqual({ yes: (stated as { yes: number }).yes / 2 });
    expect((shows['static_pressure'] as { low: number }).low).toBeCloseTo((10 * 0.025 + 10) / 20, 12);
    expect(probability(shop, { static_pressure: 'low' }, 'wet_air')).toBeGreaterThan(
      3 * probability(FAULT_MODEL, { static_pressure: 'low' }, 'wet_air'),
    );
  });

  it('changes nothing but the scale of the weights without counts, and stays a valid table with many', () => {
    const same = moved({ found: {}, seen: {} });
    for (const { id } of FAULT_MODEL.causes)
      expect(probability(same, {}, id)).toBeCloseTo(probability(FAULT_MODEL, {}, id), 12);
    const many = moved({
      found: { low_air: 1e6 },
      seen: { low_air: { slag_left: { yes: 1e6 }, flowing_pressure: { low: 1e6 } } },
    });
    expect(checkFaultModel(many).ok).toBe(true);
  });

  it.each<[string, FaultCounts]>([
    ['found.no_such', { found: { no_such: 1 }, seen: {} }],
    ['found.low_air', { found: { low_air: -1 }, seen: {} }],
    ['found.low_air', { found: { low_air: Number.NaN }, seen: {} }],
    ['seen.no_such', { found: {}, seen: { no_such: {} } }],
    ['seen.low_air.no_such', { found: {}, seen: { low_air: { no_such: { yes: 1 } } } }],
    ['seen.low_air.slag_left.high', { found: {}, seen: { low_air: { slag_left: { high: 1 } } } }],
    ['seen.low_air.slag_left.yes', { found: {}, seen: { low_air: { slag_left: { yes: -2 } } } }],
  ])('refuses a count at %s', (path, counts) => {
    const outcome = countFaults(FAULT_MODEL, counts);
    expect(outcome.ok ? [] : outcome.issues.map((issue) => [issue.code, issue.path])).toEqual([
      ['FAULT_EVIDENCE', path],
    ]);
  });
});
