import { describe, expect, it } from 'vitest';
import { FAULT_MODEL } from '../faults/index.ts';
import { sentenceText } from '../quantity/index.ts';
import { commissionChecks } from './commission-checks.ts';
import type { CommissionSupply } from './commission-supply.ts';
import { at, measured, testChecks, testJob, testPass, testSupply } from './shop.test-support.ts';

describe('the checks before the first arc', () => {
  const checks = testChecks();

  it('come in the order in which they are made, each under a name of its own', () => {
    const order = ['power_off', 'air_on', 'dry_run', 'no_load', 'trial_arc'];
    const stages = checks.map(({ stage }) => order.indexOf(stage));
    expect(stages).toEqual([...stages].sort((a, b) => a - b));
    expect(new Set(stages).size).toBe(order.length);
    expect(new Set(checks.map(({ id }) => id)).size).toBe(checks.length);
  });

  it('warn wherever hands come near power, air, a moving carriage or an arc', () => {
    for (const { id, stage, caution } of checks) {
      if (stage !== 'power_off') expect(caution, id).not.toBeNull();
    }
    for (const id of ['polarity', 'sense_wire', 'joints_tight', 'stick_out', 'push_angle_1'])
      expect(checks.find((check) => check.id === id)!.caution, id).toMatch(/^Power off, locked out/);
  });

  it('ask only what the table of faults knows, and tell what is behind each reading', () => {
    const known = FAULT_MODEL.observables.map(({ id }) => id);
    for (const { id, evidence } of checks) {
      if (evidence !== null) expect(known, id).toContain(evidence);
    }
    const flowing = measured(checks, 'flowing_pressure_2');
    expect(flowing.below.map(({ cause }) => cause)).toContain('low_air');
    expect(measured(checks, 'joint_station_joint').above.map(({ cause }) => cause)).toEqual(['loose_joint']);
    const polarity = checks.find(({ id }) => id === 'polarity')!;
    expect(polarity.kind === 'confirm' && polarity.unmet[0]!.cause).toBe('wrong_polarity');
  });

  it('leave no reading outside its band without something to think of', () => {
    for (const check of checks) {
      if (check.kind === 'confirm')
        expect(check.unmet.length > 0 || check.hints.unmet, check.id).toBeTruthy();
      else {
        expect(check.below.length > 0 || check.hints.low, check.id).toBeTruthy();
        expect(check.above.length > 0 || check.hints.high, check.id).toBeTruthy();
      }
    }
  });

  it('hold the volts at the terminals of the worked case cond-terminal-voltage: 53.151496 V (derived)', () => {
    expect(measured(checks, 'loaded_source_1').expected).toBeCloseTo(53.151496, 6);
  });

  it('hold at each point the arc and what is lost from there to the arc', () => {
    const loaded = Object.fromEntries(
      checks.flatMap((check) =>
        check.kind === 'measure' && check.title.startsWith('Loaded volts')
          ? [[check.title, check.expected]]
          : [],
      ),
    );
    expect(loaded['Loaded volts, holder']).toBe(45);
    expect(loaded['Loaded volts, station']).toBeCloseTo(45.5, 12);
    expect(loaded['Loaded volts, lug']).toBeCloseTo(0.5, 12);
    expect(loaded['Loaded volts, A minus']).toBeCloseTo(0.5 + 3.575748, 12);
    expect(measured(checks, 'joint_clamp')).toMatchObject({ unit: 'mV', expected: 500 });
  });

  it('hold no-load volts everywhere, because nothing is lost without a current', () => {
    const open = checks.filter(({ stage }) => stage === 'no_load');
    expect(open.map(({ title }) => title)).toEqual([
      'No-load volts, Source A',
      'No-load volts, holder',
      'No-load volts, station',
      'Emergency stop, sources on',
    ]);
    const volts = open.flatMap((check) => (check.kind === 'measure' ? [check.expected] : []));
    expect(volts).toEqual([80, 80, 80]);
  });

  it('time the travel over a length that the watch can tell: 254 mm at 600 mm/min takes 25.4 s', () => {
    const travel = measured(checks, 'travel_time_1');
    expect(travel.expected).toBeCloseTo(25.4, 9);
    expect(sentenceText(travel.ask, 'metric')).toContain('Mark 254 mm');
    const fast = measured(testChecks({ passes: [testPass({ travel: 0.02 })] }), 'travel_time_1');
    expect(fast.expected).toBeCloseTo(25.4, 9);
    const short = testChecks(undefined, undefined, undefined, testJob('120 mm'));
    expect(measured(short, 'travel_time_1').expected).toBeCloseTo(12, 9);
  });

  it('work out height and loss by hand', () => {
    expect(measured(checks, 'torch_height').expected).toBeCloseTo(100 * Math.SQRT1_2, 9);
    expect(measured(checks, 'loss_window').expected).toBeCloseTo(10 * 0.4, 9);
    expect(measured(checks, 'gauge_zero')).toMatchObject({ expected: 0, least: -0.8, most: 0.8 });
  });

  it('add stated uncertainties as the root of the sum of their squares, each with its source', () => {
    const current = measured(checks, 'current');
    expect(current.most - 1000).toBeCloseTo(Math.hypot(30, 30), 9);
    for (const check of checks) {
      if (check.kind !== 'measure') continue;
      expect(check.parts.length, check.id).toBeGreaterThan(0);
      for (const { source } of check.parts) expect(source, check.id).not.toBe('');
    }
  });

  it('let a joint read anything from nothing up to what still counts as tight', () => {
    const joint = measured(checks, 'joint_clamp');
    expect(joint.least).toBeLessThanOrEqual(0);
    expect(joint.most).toBeCloseTo(1000 + Math.hypot(10, 1, 30), 9);
    const [first, ...others] = testSupply().items;
    const items = [first!, ...others.map((one) => ({ ...one, resistanceMost: 0.0006 }))];
    const stated = measured(testChecks(undefined, testSupply({ items })), 'joint_clamp');
    expect(stated.most).toBeCloseTo(600 + Math.hypot(6, 1, 18), 9);
  });

  it('do not take a pressure at the torch below what the process needs', () => {
    const low = { name: 'the torch', staticPressure: at(620e3), flowingPressure: at(420e3), atTorch: true };
    const airPoints = [low, { ...low, name: 'upstream', atTorch: false }];
    const drawn = testChecks(undefined, testSupply({ airPoints }));
    expect(measured(drawn, 'flowing_pressure_1').least).toBeCloseTo(413.685438, 5);
    expect(measured(drawn, 'flowing_pressure_2').least).toBeLessThan(350);
  });

  it('set the trial arc as the pass with the greatest current, and check each other setting once', () => {
    const passes = [
      testPass({ current: 800, travel: 700 / 60e3 }),
      testPass({ number: 2, current: 900, pushAngle: (50 * Math.PI) / 180 }),
      testPass({ number: 3, current: 900, pushAngle: (50 * Math.PI) / 180, setByGauge: true }),
    ];
    const several = testChecks({ passes });
    expect(measured(several, 'current').expected).toBe(900);
    expect(measured(several, 'joint_clamp').expected).toBeCloseTo(450, 9);
    expect(measured(several, 'travel_time_2').title).toBe('Travel, passes 2 and 3');
    expect(sentenceText(measured(several, 'travel_time_2').ask, 'inch')).toContain('after gauging');
    expect(measured(several, 'push_angle_2').expected).toBeCloseTo(50, 9);
  });

  it('take the shop’s own instruments and stick-out', () => {
    const source = 'calibration sheet';
    const own = testChecks(undefined, undefined, {
      stickOut: 0.08,
      instruments: { clampShare: { value: 0.04, source } },
    });
    expect(measured(own, 'stick_out').expected).toBeCloseTo(80, 9);
    expect(measured(own, 'current').most).toBeCloseTo(1050, 9);
    expect(measured(own, 'current').parts[0]).toEqual({ what: 'clamp meter', half_width: 40, source });
    const { ask } = measured(own, 'travel_time_1');
    expect(sentenceText(ask, 'inch')).toContain('Mark 10 in');
    expect(sentenceText(ask, 'metric')).toContain('Mark 254 mm');
  });

  it('share the current between sources side by side', () => {
    const leads = (name: string) =>
      [
        { id: `${name}e`, side: 'electrode', from: `${name} plus`, to: 'holder' },
        { id: `${name}w`, side: 'work', from: `${name} minus`, to: 'plate' },
      ] as const;
    const supply = testSupply({
      sources: ['A', 'B'].map((name) => ({
        name,
        noLoadVoltage: name === 'A' ? 80 : 72,
        electrodePoint: `${name} plus`,
        workPoint: `${name} minus`,
      })),
      items: [...leads('A'), ...leads('B')].map((lead) => ({
        ...lead,
        kind: 'lead',
        name: lead.id,
        resistance: 0.004,
        current: lead.id.startsWith('A') ? 700 : 300,
      })),
    });
    const two = testChecks(undefined, supply);
    expect(measured(two, 'loaded_source_1').expected).toBeCloseTo(45 + 2 * 2.8, 9);
    expect(measured(two, 'loaded_source_2').expected).toBeCloseTo(45 + 2 * 1.2, 9);
    expect(measured(two, 'no_load_source_2').expected).toBe(72);
    expect(measured(two, 'no_load_point_1').expected).toBe(80);
  });
});

describe('what cannot be worked with', () => {
  const [lead, ...others] = testSupply().items;
  it.each<[string, Partial<CommissionSupply>, string]>([
    [
      'a negative resistance',
      { items: [{ ...lead!, resistance: -1 }, ...others] },
      'items.electrode_lead.resistance',
    ],
    ['a length of 0', { items: [{ ...lead!, length: 0 }, ...others] }, 'items.electrode_lead.length'],
    [
      'a pressure that is no number',
      { airPoints: [{ name: 'x', staticPressure: at(Number.NaN), flowingPressure: at(1), atTorch: true }] },
      'airPoints.x.staticPressure',
    ],
    ['a set current of 0', { setCurrent: 0 }, 'setCurrent'],
    ['two items of one name', { items: [lead!, lead!, ...others] }, 'items'],
    [
      'a lead that leads nowhere',
      { items: [...others, lead!, { ...lead!, id: 'astray', to: 'nowhere' }] },
      'items.astray.to',
    ],
    ['a source that no lead reaches', { items: others }, 'sources.Source A.electrodePoint'],
    [
      'a work lead on the electrode side',
      { items: [{ ...lead!, side: 'work' }, ...others] },
      'items.electrode_lead.to',
    ],
  ])('is refused: %s', (_what, change, path) => {
    const outcome = commissionChecks({ passes: [testPass()] }, testJob(), testSupply(change), {});
    expect(outcome.ok ? [] : outcome.issues.map((issue) => issue.path)).toContain(path);
    expect(outcome.ok ? [] : outcome.issues.map(({ code }) => code)).toContain('COMMISSION_INPUT');
  });

  it('is refused: a plan without passes, a stick-out of 0', () => {
    const outcome = commissionChecks({ passes: [] }, testJob(), testSupply(), {
      stickOut: 0,
    });
    expect(outcome.ok ? [] : outcome.issues.map(({ path }) => path)).toEqual(['stickOut', 'plan.passes']);
  });
});
