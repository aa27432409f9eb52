import { describe, expect, it } from 'vitest';
import { FAULT_MODEL } from './fault-model.ts';
import type { FaultEvidence } from './model.ts';
import { nextFaultChecks } from './next-checks.ts';
import { rankFaults } from './rank-faults.ts';
import { tallyFaults } from './shop-floor.test-support.ts';

const RUN = { faults: 1000, checks: 4, seed: 4100 };
const percent = (share: number): string => `${(share * 100).toFixed(1)} %`;

// Worked out before the tests are named, so that a run prints the figures.
const before = tallyFaults(FAULT_MODEL, 'best', { ...RUN, checks: 0 });
const best = tallyFaults(FAULT_MODEL, 'best', RUN);
const random = tallyFaults(FAULT_MODEL, 'random', RUN);
const misjudged = { ...RUN, misjudged: 0.5 };
const bestMisjudged = tallyFaults(FAULT_MODEL, 'best', misjudged);
const randomMisjudged = tallyFaults(FAULT_MODEL, 'random', misjudged);

describe(`on ${RUN.faults} simulated faults, from ${percent(before.first)} before any check`, () => {
  it(`four checks put the right cause first in ${percent(best.first)}, about nine in ten`, () => {
    expect(best.first).toBeGreaterThanOrEqual(0.88);
    expect(before.first).toBeLessThan(0.75);
  });

  it(`checks at random reach ${percent(random.first)}: the best ones halve what is left wrong, in less time`, () => {
    expect(1 - best.first).toBeLessThan((1 - random.first) / 2);
    expect(best.minutes).toBeLessThan(random.minutes);
  });

  it(`where the table misjudges every chance, ${percent(bestMisjudged.first)} against ${percent(randomMisjudged.first)}`, () => {
    expect(bestMisjudged.first).toBeGreaterThan(0.85);
    expect(1 - bestMisjudged.first).toBeLessThan((1 - randomMisjudged.first) / 1.5);
  });
});

describe('the next check', () => {
  function next(evidence: Parameters<typeof nextFaultChecks>[1]) {
    const outcome = nextFaultChecks(FAULT_MODEL, evidence);
    if (!outcome.ok) throw new Error(outcome.issues[0]!.message);
    return outcome.value;
  }

  it('is never one already made, and never a symptom', () => {
    const made = next({ flowing_pressure: 'in', contact_worn: 'no' }).map(({ check }) => check);
    expect(made).not.toContain('flowing_pressure');
    expect(made).not.toContain('contact_worn');
    expect(made).not.toContain('slag_left');
    expect(made).toHaveLength(FAULT_MODEL.observables.filter(({ kind }) => kind !== 'symptom').length - 2);
  });

  it('looks at the air first when slag stays, at the rolls when the electrode does not feed', () => {
    expect(next({ slag_left: 'yes', carbon_deposit: 'yes' })[0]!.check).toBe('flowing_pressure');
    expect(next({ electrode_not_feeding: 'yes' })[0]!.check).toBe('feed_slips');
  });

  it('orders by information per minute', () => {
    const worths = next({ hunting_arc: 'yes' });
    const rates = worths.map(({ information_bit_per_min }) => information_bit_per_min);
    expect(rates).toEqual([...rates].sort((a, b) => b - a));
    for (const { information_bit, minutes, information_bit_per_min } of worths)
      expect(information_bit_per_min).toBeCloseTo(information_bit / minutes, 12);
  });

  it('agrees with the information worked out by hand on a table of two causes', () => {
    const model = {
      ...FAULT_MODEL,
      observables: [
        { id: 'r', kind: 'inspection', title: 'r', ask: 'r', minutes: 2, otherwise: { yes: 0.1 } },
      ],
      causes: ['a', 'b'].map((id) => ({
        id,
        title: id,
        mechanism: id,
        remedy: id,
        weight: 1,
        shows: id === 'a' ? { r: { yes: 0.9 } } : {},
      })),
    } as const;
    const outcome = nextFaultChecks(model, {});
    // a binary symmetric channel with error 0.1: 1 - H(0.1) bit
    const bit = 1 + 0.1 * Math.log2(0.1) + 0.9 * Math.log2(0.9);
    if (!outcome.ok) throw new Error('refused');
    expect(outcome.value[0]!.information_bit).toBeCloseTo(bit, 12);
    expect(outcome.value[0]!.information_bit_per_min).toBeCloseTo(bit / 2, 12);
  });
});

describe('once a cause is nearly sure', () => {
  it.each<[FaultEvidence, string, string]>([
    [{ hot_joint: 'yes', hunting_arc: 'yes', worsens_with_time: 'yes' }, 'loose_joint', 'joint_millivolts'],
    [
      {
        shallow_start: 'yes',
        worse_at_ends: 'yes',
        from_first_arc: 'yes',
        slag_left: 'no',
        carbon_deposit: 'no',
      },
      'short_dwell',
      'start_dwell',
    ],
    [{ hot_leads: 'yes', worsens_with_time: 'yes', depth: 'low' }, 'leads_too_small', 'lead_volts'],
  ])('%j: what confirms it comes first', (evidence, cause, check) => {
    const ranked = rankFaults(FAULT_MODEL, evidence);
    if (!ranked.ok) throw new Error(ranked.issues[0]!.message);
    expect(ranked.value[0]!.cause).toBe(cause);
    expect(ranked.value[0]!.probability).toBeGreaterThan(0.8);
    const next = nextFaultChecks(FAULT_MODEL, evidence);
    if (!next.ok) throw new Error(next.issues[0]!.message);
    expect(next.value[0]!.check).toBe(check);
  });
});
