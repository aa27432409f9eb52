import { describe, expect, it } from 'vitest';
import { FAULT_MODEL } from './fault-model.ts';
import type { FaultEvidence, FaultModel } from './model.ts';
import { rankFaults } from './rank-faults.ts';

function ranked(evidence: FaultEvidence, model: FaultModel = FAULT_MODEL) {
  const outcome = rankFaults(model, evidence);
  if (!outcome.ok) throw new Error(outcome.issues[0]!.message);
  return outcome.value;
}

describe('rankFaults', () => {
  it.each<[string, FaultEvidence]>([
    ['short_dwell', { shallow_start: 'yes', from_first_arc: 'yes', depth: 'in' }],
    ['low_air', { slag_left: 'yes', flowing_pressure: 'low', static_pressure: 'in' }],
    ['loose_joint', { hot_joint: 'yes', hunting_arc: 'yes' }],
    ['worn_feed_rolls', { electrode_not_feeding: 'yes', ridged_floor: 'yes', hunting_arc: 'yes' }],
    ['wrong_polarity', { carbon_deposit: 'yes', polarity_wrong: 'yes' }],
    ['sense_wire_misplaced', { touches_down: 'yes', sense_difference: 'high', arc_volts_set: 'in' }],
    ['low_no_load_volts', { hard_start: 'yes', no_load_volts: 'low' }],
    ['travel_slip', { ridged_floor: 'yes', carriage_slips: 'yes' }],
    ['wet_air', { sputtering: 'yes', slag_left: 'yes' }],
    ['arc_blow', { leaning_arc: 'yes', worse_at_ends: 'yes' }],
    ['track_off_seam', { groove_wandering: 'yes', leaning_arc: 'no' }],
    ['wrong_stick_out', { electrode_overheated: 'yes', stick_out: 'high' }],
    ['wrong_angle', { depth: 'high', push_angle: 'high' }],
  ])('puts %s first for what it shows', (cause, evidence) => {
    expect(ranked(evidence)[0]!.cause).toBe(cause);
  });

  it('gives the weights of the table when nothing was seen', () => {
    const total = FAULT_MODEL.causes.reduce((sum, { weight }) => sum + weight, 0);
    for (const { cause, probability, reasons, words } of ranked({ slag_left: 'unknown' })) {
      const { weight } = FAULT_MODEL.causes.find(({ id }) => id === cause)!;
      expect(probability).toBeCloseTo(weight / total, 12);
      expect(reasons).toEqual([]);
      expect(words).toContain('Nothing seen so far');
    }
  });

  it('tells in words why a cause stands where it does', () => {
    const first = ranked({ flowing_pressure: 'low', slag_left: 'yes', hot_joint: 'no' })[0]!;
    expect(first.words).toMatch(
      /^Too little air at the torch: (more than )?9\d %\. Flowing air pressure at the torch low: \d+ times likelier with this cause than with the others\. There was slag left/,
    );
    const dwell = ranked({ start_dwell: 'in' }).find(({ cause }) => cause === 'short_dwell')!;
    expect(dwell.reasons[0]).toMatchObject({ observable: 'start_dwell', speaks: 'against' });
    expect(dwell.words).toContain('times less likely');
  });

  it('agrees with Bayes’ rule by hand', () => {
    const [first, second] = FAULT_MODEL.causes;
    const model: FaultModel = {
      ...FAULT_MODEL,
      causes: [
        { ...first!, weight: 1, shows: { hot_joint: { yes: 0.8 } } },
        { ...second!, weight: 3, shows: { hot_joint: { yes: 0.1 } } },
      ],
    };
    const place = ranked({ hot_joint: 'yes' }, model).find(({ cause }) => cause === first!.id)!;
    expect(place.probability).toBeCloseTo((0.25 * 0.8) / (0.25 * 0.8 + 0.75 * 0.1), 12);
    expect(place.reasons[0]!.ratio).toBeCloseTo(8, 12);
  });

  it('refuses names and answers the table does not hold, with the nearest name', () => {
    const outcome = rankFaults(FAULT_MODEL, { pressure: 'low', slag_left: 'high' } as FaultEvidence);
    if (outcome.ok) throw new Error('taken');
    expect(outcome.issues.map(({ code, path }) => [code, path])).toEqual([
      ['FAULT_EVIDENCE', 'pressure'],
      ['FAULT_EVIDENCE', 'slag_left'],
    ]);
    expect(outcome.issues[0]!.nearest).toBe('static_pressure');
    expect(outcome.issues[1]!.message).toContain('answer yes, no, unknown');
  });

  it('does not take a name that every object has', () => {
    expect(rankFaults(FAULT_MODEL, { constructor: 'yes' } as unknown as FaultEvidence).ok).toBe(false);
  });
});

describe('what was measured too high', () => {
  it.each([
    [{ depth: 'high', current: 'high' }, 'current_high'],
    [{ depth: 'high', arc_volts_set: 'high' }, 'arc_volts_set_high'],
    [{ start_dwell: 'high', deep_start: 'yes' }, 'long_dwell'],
    [{ flowing_pressure: 'high' }, 'too_much_air'],
    [{ worse_at_ends: 'yes', slag_left: 'yes', air_out_of_step: 'yes' }, 'air_out_of_step'],
  ] as const)('%j is not blamed on the angle', (evidence, cause) => {
    const ranked = rankFaults(FAULT_MODEL, evidence);
    expect(ranked.ok && ranked.value[0]!.cause).toBe(cause);
  });
});
