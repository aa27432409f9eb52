import { describe, expect, it } from 'vitest';
import { BACK, LOOP, OUT, SOURCE, solved, working } from './kit.test-support.ts';
import { heatModelOf } from './lead-heat.ts';
import type { PowerSource } from './power-source.ts';

const steep = (name: string, no_load_voltage: number): PowerSource => ({
  ...SOURCE,
  name,
  characteristic: { kind: 'drooping', no_load_voltage, slope: 0.03 },
});

describe('the working point', () => {
  it('lies on the source’s line and above the arc by the drop of the leads', () => {
    const loop = working(LOOP);
    expect(loop.sources[0]!.terminal_voltage_V).toBeCloseTo(80 - 0.03 * loop.current_A, 8);
    const drop = loop.leads.reduce((sum, lead) => sum + lead.drop_V, 0);
    expect(loop.sources[0]!.terminal_voltage_V - drop).toBeCloseTo(42, 8);
    expect(loop.margin_V).toBe(0);
  });

  it('with leads that have settled, each at the temperature where it loses what it makes', () => {
    const { leads } = working({ ...LOOP, arc: { holds: 'current', current: 700, voltage: 42 } });
    const [lead] = leads;
    expect(lead!.temperature_K).toBeGreaterThan(330);
    const model = heatModelOf(OUT, LOOP.ambient);
    expect(350 ** 2 * model.resistanceAt(lead!.temperature_K)).toBeCloseTo(
      model.lossAt(lead!.temperature_K),
      6,
    );
  });

  it('with hotter leads gives less current than with cold ones', () => {
    const cold = working({ ...LOOP, lead_temperature: LOOP.ambient });
    const hot = working(LOOP);
    expect(hot.current_A).toBeLessThan(cold.current_A);
    expect(hot.current_A).toBeGreaterThan(0.8 * cold.current_A);
  });

  it('without leads is where the line meets the arc', () => {
    expect(working({ ...LOOP, leads: [] }).current_A).toBeCloseTo((80 - 42) / 0.03, 6);
  });

  it('on points follows them, and stands still at the last one', () => {
    const characteristic = {
      kind: 'points',
      points: [
        { current: 0, voltage: 78 },
        { current: 900, voltage: 60 },
        { current: 1000, voltage: 44 },
      ],
    } as const;
    const at = (voltage: number) =>
      working({
        ...LOOP,
        leads: [],
        sources: [{ source: { ...SOURCE, characteristic } }],
        arc: { holds: 'voltage', voltage },
      }).sources[0]!;
    expect(at(52)).toMatchObject({ at_last_point: false });
    expect(at(52).current_A).toBeCloseTo(950, 6);
    expect(at(30)).toMatchObject({ at_last_point: true, terminal_voltage_V: 30 });
    expect(at(30).current_A).toBeCloseTo(1000, 6);
  });

  it('on a curve that ends in a fixed current holds that current with the volts above its knee', () => {
    const characteristic = {
      kind: 'points',
      points: [
        { current: 0, voltage: 80 },
        { current: 1000, voltage: 60 },
        { current: 1000, voltage: 20 },
      ],
    } as const;
    const loop = working({
      ...LOOP,
      leads: [],
      sources: [{ source: { ...SOURCE, characteristic } }],
      arc: { holds: 'current', current: 1000, voltage: 42 },
    });
    expect(loop.available_V).toBeCloseTo(60, 6);
    expect(loop.margin_V).toBeCloseTo(18, 6);
  });
});

describe('a held current', () => {
  const held = (current: number, voltage?: number) =>
    solved({ ...LOOP, arc: { holds: 'current', current, ...(voltage !== undefined && { voltage }) } });

  it('leaves the arc what the leads do not take', () => {
    const loop = held(800);
    if (loop.kind !== 'operating_point') throw new Error(loop.reason);
    const drop = loop.leads.reduce((sum, lead) => sum + lead.drop_V, 0);
    expect(loop.available_V).toBeCloseTo(80 - 24, 8);
    expect(loop.arc_voltage_V).toBeCloseTo(56 - drop, 8);
  });

  it('with a voltage wanted tells the volts to spare, and sets the source down by them', () => {
    const loop = held(800, 42);
    if (loop.kind !== 'operating_point') throw new Error(loop.reason);
    expect(loop.arc_voltage_V).toBe(42);
    expect(loop.margin_V).toBeGreaterThan(0);
    expect(loop.sources[0]!.terminal_voltage_V).toBeCloseTo(loop.needed_V, 8);
    expect(loop.available_V - loop.needed_V).toBeCloseTo(loop.margin_V, 12);
  });

  it('beyond what the source can do leaves the arc less than it wants', () => {
    const loop = held(1100, 46);
    if (loop.kind !== 'operating_point') throw new Error(loop.reason);
    expect(loop.margin_V).toBeLessThan(0);
    expect(loop.arc_voltage_V).toBeCloseTo(46 + loop.margin_V, 8);
  });
});

describe('no working point', () => {
  it('when the arc wants more than the no-load voltage', () => {
    expect(solved({ ...LOOP, arc: { holds: 'voltage', voltage: 81 } })).toEqual({
      kind: 'no_operating_point',
      reason: 'the arc is to hold 81 V, but the highest no-load voltage is 80 V',
    });
  });

  it('when the current is beyond the curves', () => {
    const loop = solved({ ...LOOP, arc: { holds: 'current', current: 3000 } });
    expect(loop).toMatchObject({ kind: 'no_operating_point' });
    expect(loop).toHaveProperty('reason', expect.stringContaining('2667 A'));
  });

  it('when the leads take everything', () => {
    const long = { ...BACK, parallels: 1, length: 400 };
    const loop = solved({ ...LOOP, leads: [long], arc: { holds: 'current', current: 1000 } });
    expect(loop).toMatchObject({ kind: 'no_operating_point' });
    expect(loop).toHaveProperty('reason', expect.stringContaining('nothing is left for the arc'));
  });
});

describe('sources in parallel', () => {
  it('share a current by their lines', () => {
    const loop = working({
      ...LOOP,
      sources: [{ source: steep('red', 80) }, { source: steep('blue', 74) }],
      arc: { holds: 'current', current: 1000 },
    });
    const [red, blue] = loop.sources;
    expect(red!.current_A - blue!.current_A).toBeCloseTo(200, 6);
    expect(red!.share + blue!.share).toBeCloseTo(1, 12);
  });

  it('drop one that would be driven backwards, and the others carry on without it', () => {
    const alone = working({ ...LOOP, arc: { holds: 'voltage', voltage: 60 } });
    const loop = working({
      ...LOOP,
      sources: [{ source: steep('red', 80) }, { source: steep('weak', 58) }],
      arc: { holds: 'voltage', voltage: 60 },
    });
    expect(loop.sources[1]).toMatchObject({ drops_out: true, current_A: 0, share: 0, output_W: 0 });
    expect(loop.current_A).toBeCloseTo(alone.current_A, 8);
  });

  it('with unlike leads of their own let the longer one carry less', () => {
    const own = (length: number) => [{ ...OUT, name: `own ${length}`, parallels: 1, length }];
    const flat = { ...SOURCE, characteristic: { kind: 'flat', no_load_voltage: 60, slope: 0.002 } } as const;
    const loop = working({
      ...LOOP,
      sources: [
        { source: { ...flat, name: 'red' }, leads: own(5) },
        { source: { ...flat, name: 'blue' }, leads: own(15) },
      ],
      arc: { holds: 'current', current: 800 },
    });
    expect(loop.sources[0]!.current_A).toBeGreaterThan(1.2 * loop.sources[1]!.current_A);
    expect(loop.leads.map((lead) => lead.source)).toEqual([undefined, undefined, 'red', 'blue']);
    for (const [i, source] of loop.sources.entries()) {
      const lead = loop.leads[2 + i]!;
      expect(source.terminal_voltage_V - lead.drop_V).toBeCloseTo(loop.available_V, 8);
      expect(source.terminal_voltage_V).toBeCloseTo(60 - 0.002 * source.current_A, 5);
    }
  });
});

describe('a duty', () => {
  const pass = { arc: true, duration: 300 };
  const pause = { arc: false, duration: 300 };

  it('heats the leads less than an arc that never stops, and says when the peak is', () => {
    const never = working(LOOP);
    const loop = working({ ...LOOP, duty: [pass, pause, pass, pause] });
    const lead = loop.leads[0]!;
    expect(lead.temperature_K).toBe(lead.duty!.peak_K);
    expect(lead.duty!.peak_s).toBeCloseTo(900, 6);
    expect(lead.temperature_K).toBeLessThan(never.leads[0]!.temperature_K - 20);
    expect(loop.arc_minutes_in_ten).toBe(5);
    expect(never.arc_minutes_in_ten).toBe(10);
  });

  it('tells when the limit is reached, as the integral of the heating does', () => {
    const hot = {
      ...LOOP,
      leads: [{ ...OUT, parallels: 1 }],
      arc: { holds: 'current', current: 800 },
    } as const;
    const lead = working({ ...hot, duty: [{ arc: true, duration: 600 }] }).leads[0]!;
    expect(lead.insulation_limit_provenance).toBe('memory');
    expect(lead.duty!.limit_s).toBeDefined();
    expect(Math.abs(lead.duty!.limit_s! / lead.time_to_limit_s! - 1)).toBeLessThan(2e-3);
  });

  it('stops where 200 °C is passed, and says so', () => {
    const loop = working({
      ...LOOP,
      leads: [{ ...OUT, area: 16e-6, parallels: 1, length: 5 }],
      arc: { holds: 'current', current: 900 },
      duty: [{ arc: true, duration: 3600 }],
    });
    expect(loop.leads[0]!.duty).toMatchObject({ beyond_range: true });
    expect(loop.leads[0]!.steady.kind).toBe('runaway');
    expect(loop.cautions.join(' ')).toContain('passes 200 °C');
  });
});

describe('joints', () => {
  const joint = { name: 'clamp', resistance: 0.0002, at: 'end' } as const;
  const held = { holds: 'current', current: 600 } as const;

  it('make volts and watts of the current they carry', () => {
    const loop = working({ ...LOOP, arc: held, leads: [OUT, { ...BACK, joints: [joint] }] });
    expect(loop.leads[1]!.joints[0]).toMatchObject({ name: 'clamp' });
    expect(loop.leads[1]!.joints[0]!.drop_V).toBeCloseTo(0.12, 12);
    expect(loop.leads[1]!.joints[0]!.heat_W).toBeCloseTo(72, 10);
    expect(loop.losses.find((item) => item.joint === 'clamp')!.loss_W).toBeCloseTo(72, 10);
  });

  it('in every conductor share the current, and heat half as many watts each squared', () => {
    const each = { ...joint, carries: 'conductor' } as const;
    const loop = working({ ...LOOP, arc: held, leads: [OUT, { ...BACK, joints: [each] }] });
    expect(loop.leads[1]!.joints[0]!.heat_W).toBeCloseTo(18, 10);
    expect(loop.losses.find((item) => item.joint === 'clamp')!.loss_W).toBeCloseTo(36, 10);
  });

  it('in the middle of a lead send twice the heat into copper, and the same off their surface', () => {
    const rise = (at: 'end' | 'middle') =>
      working({ ...LOOP, arc: held, leads: [{ ...BACK, joints: [{ ...joint, at }] }], lead_temperature: 340 })
        .leads[0]!.joints[0]!.rise_K!;
    // Along the copper G from an end and 2 G from the middle, and S off the surface of 0.04 m2 at 10 W/(m2 K) in both.
    expect(2 * (72 / rise('end')) - 72 / rise('middle')).toBeCloseTo(0.4, 9);
    expect(rise('middle')).toBeLessThan(rise('end'));
  });
});

it('warns of leads that do not lie clear', () => {
  const { cautions } = working({ ...LOOP, leads: [{ ...OUT, laid: 'coiled' }] });
  expect(cautions.join('\n')).toContain('is coiled');
});

it('warns of a lead that never settles', () => {
  const thin = { ...OUT, parallels: 1, area: 25e-6, length: 4 };
  const loop = working({ ...LOOP, leads: [thin], arc: { holds: 'current', current: 900 } });
  expect(loop.leads[0]!.steady.kind).not.toBe('steady');
  expect(loop.cautions.join('\n')).toContain('taken at 200 °C');
});

it('asks for the limit of a lead that gets hotter than is usual and states none', () => {
  const thin = { ...OUT, parallels: 1, area: 95e-6, length: 4 };
  const asked = (lead: typeof thin & { insulation_limit?: number }) =>
    working({ ...LOOP, leads: [lead], arc: { holds: 'current', current: 480 } }).cautions.join('\n');
  expect(asked(thin)).toMatch(
    /reaches \d+ °C and no limit is stated for it; rubber-covered leads usually stand 85 °C/,
  );
  expect(asked({ ...thin, insulation_limit: 273.15 + 90 })).not.toContain('no limit is stated');
  expect(asked({ ...thin, parallels: 2 })).not.toContain('no limit is stated');
});
