import { describe, expect, it } from 'vitest';
import type { Job } from '../../job/index.ts';
import type { Candidate, Limit } from '../../limit/index.ts';
import { sentenceText } from '../../quantity/index.ts';
import { passDuty } from '../duty/index.ts';
import { type ElectricKit, electricLimits } from './electric-limits.ts';
import { BACK, OUT, SOURCE, working } from './kit.test-support.ts';

const KIT: ElectricKit = { sources: [{ source: SOURCE }], leads: [OUT, BACK], ambient: 303.15 };
const job = { rates: { start_time: 60, return_travel: 0.05 } } as Job;
const candidate = {
  current: 800,
  voltage: 42,
  passLength: 3,
  travel: 0.012,
  tracks: 2,
  layers: 2,
} as Candidate;

function limits(kit: ElectricKit, change: Partial<Candidate> = {}): Record<string, Limit> {
  const outcome = electricLimits(kit);
  if (!outcome.ok) throw new Error(outcome.issues.map((issue) => issue.message).join(' '));
  const list = outcome.value({ ...candidate, ...change }, job);
  return Object.fromEntries(list.map((limit) => [limit.id, limit]));
}

describe('electricLimits', () => {
  it('sets what is needed against what there is, with the leads of the passes’ duty', () => {
    const found = limits(KIT);
    const loop = working({
      ...KIT,
      arc: { holds: 'current', current: 800, voltage: 42 },
      duty: passDuty(candidate, job),
    });
    expect(found['terminal_voltage']).toMatchObject({ hard: true, verdict: 'holds', unit: 'V' });
    expect(found['terminal_voltage']!.demand).toBeCloseTo(loop.needed_V, 10);
    expect(found['terminal_voltage']!.capacity).toBeCloseTo(80 - 24, 10);
    expect(found['lead_temperature']!.demand).toBeCloseTo(loop.leads[0]!.duty!.peak_K - 273.15, 10);
    expect(found['source_duty']).toMatchObject({ capacity: 10, hard: true });
    expect(found['source_duty']!.demand).toBeCloseTo(loop.arc_minutes_in_ten, 10);
    expect(found['source_rated_current']).toMatchObject({ demand: 800, capacity: 1000 });
  });

  it('takes the rated voltage as soft: off the plate from the kit, else by convention from memory', () => {
    expect(limits(KIT)['source_rated_voltage']).toMatchObject({
      capacity: 44,
      hard: false,
      verdict: 'fails',
      source: { provenance: 'job file' },
    });
    const bare = { ...SOURCE, rating: [{ current: 500, duty: 1 }], current_most: 1000 };
    expect(limits({ ...KIT, sources: [{ source: bare }] })['source_rated_voltage']).toMatchObject({
      capacity: 40,
      hard: false,
      source: { provenance: 'memory' },
    });
  });

  it('makes the lead’s limit hard only where the kit states it', () => {
    expect(limits(KIT)['lead_temperature']).toMatchObject({ capacity: 85, hard: false });
    const stated = [{ ...OUT, insulation_limit: 363.15 }, BACK].map((lead) => ({
      ...lead,
      insulation_limit: 363.15,
    }));
    const limit = limits({ ...KIT, leads: stated })['lead_temperature']!;
    expect(limit).toMatchObject({ hard: true, source: { provenance: 'job file' } });
    expect(limit.capacity).toBeCloseTo(90, 10);
  });

  it('with a duty of its own uses that', () => {
    const short = limits({ ...KIT, duty: () => [{ arc: true, duration: 30 }] });
    expect(short['source_duty']!.demand).toBe(0.5);
    expect(short['lead_temperature']!.demand).toBeLessThan(limits(KIT)['lead_temperature']!.demand);
  });

  it('gives the same again for the same candidate', () => {
    const outcome = electricLimits(KIT);
    if (!outcome.ok) throw new Error('refused');
    expect(outcome.value(candidate, job)).toEqual(outcome.value({ ...candidate }, job));
    expect(outcome.value({ ...candidate, current: 700 }, job)).not.toEqual(outcome.value(candidate, job));
  });

  it('refuses a kit that cannot be', () => {
    expect(electricLimits({ ...KIT, sources: [] })).toMatchObject({ ok: false });
    expect(electricLimits({ ...KIT, leads: [{ ...OUT, length: 0 }] })).toMatchObject({
      ok: false,
      issues: [{ path: 'leads[0].length' }],
    });
  });

  it('says why a current cannot be driven at all', () => {
    const found = limits(KIT, { current: 2900 });
    expect(Object.keys(found)).toEqual(['terminal_voltage']);
    expect(found['terminal_voltage']).toMatchObject({ verdict: 'fails', capacity: 0, demand: 42 });
    expect(found['terminal_voltage']!.remedy).toContain('2667 A');
  });
});

describe('remedies', () => {
  const long = KIT.leads.map((lead) => ({ ...lead, length: 34 }));

  it('name a lead that mends the volts, and one conductor fewer would not', () => {
    const limit = limits({ ...KIT, leads: long }, { current: 980 })['terminal_voltage']!;
    expect(limit.verdict).toBe('fails');
    const [, name, parallels] = /lay the lead "([^"]+)" as (\d+) x 95 mm2/.exec(
      sentenceText(limit.remedy, 'metric'),
    )!;
    const laid = (count: number) =>
      limits(
        { ...KIT, leads: long.map((lead) => (lead.name === name ? { ...lead, parallels: count } : lead)) },
        { current: 980 },
      )['terminal_voltage']!.verdict;
    expect(laid(Number(parallels))).not.toBe('fails');
    expect(laid(Number(parallels) - 1)).toBe('fails');
  });

  it('name the next size and the current at which the volts do', () => {
    const limit = limits({ ...KIT, leads: long }, { current: 980 })['terminal_voltage']!;
    const [, name] = /lay the lead "([^"]+)" as 2 x 120 mm2/.exec(sentenceText(limit.remedy, 'metric'))!;
    const thicker = long.map((lead) => (lead.name === name ? { ...lead, area: 120e-6 } : lead));
    expect(limits({ ...KIT, leads: thicker }, { current: 980 })['terminal_voltage']!.verdict).not.toBe(
      'fails',
    );
    const current = Number(/run at no more than (\d+) A/.exec(sentenceText(limit.remedy, 'metric'))![1]);
    expect(current).toBeGreaterThan(900);
    expect(limits({ ...KIT, leads: long }, { current })['terminal_voltage']!.verdict).not.toBe('fails');
  });

  it('ask for another source where no lead would do', () => {
    const limit = limits(KIT, { current: 1300 })['terminal_voltage']!;
    expect(limit.remedy).toMatch(
      /a source that gives [\d.]+ V more at 1300 A|another source like "red" beside it/,
    );
    expect(limit.remedy).not.toContain('lay the lead');
  });

  it('name the conductors and the size that keep a lead cool enough, and one fewer would not', () => {
    const thin = { ...OUT, area: 50e-6, parallels: 1, length: 5, insulation_limit: 358.15 };
    const kit = { ...KIT, leads: [thin] };
    const limit = limits(kit)['lead_temperature']!;
    expect(limit.verdict).toBe('fails');
    const [, parallels] = /as (\d+) x 50 mm2/.exec(sentenceText(limit.remedy, 'metric'))!;
    const [, size] = /as 1 x (\d+) mm2/.exec(sentenceText(limit.remedy, 'metric'))!;
    const verdict = (change: object) =>
      limits({ ...kit, leads: [{ ...thin, ...change }] })['lead_temperature']!.verdict;
    expect(verdict({ parallels: Number(parallels) })).not.toBe('fails');
    expect(verdict({ parallels: Number(parallels) - 1 })).toBe('fails');
    expect(verdict({ area: Number(size) * 1e-6 })).not.toBe('fails');
  });

  it('give the current and the minutes that a source may carry', () => {
    const limit = limits(KIT, { current: 1000, passLength: 20 })['source_duty']!;
    expect(limit).toMatchObject({ verdict: 'fails', demand: 10 });
    expect(limit.capacity).toBeCloseTo(6, 10);
    expect(limit.remedy).toContain(
      'run at no more than 800 A, or no more than 6.0 minutes of arc in any ten',
    );
  });

  it('name the source that takes no part', () => {
    const weak = {
      ...SOURCE,
      name: 'weak',
      characteristic: { kind: 'drooping', no_load_voltage: 50, slope: 0.03 },
    } as const;
    const limit = limits({ ...KIT, sources: [{ source: SOURCE }, { source: weak }] })['source_share']!;
    expect(limit).toMatchObject({ verdict: 'fails', hard: false, demand: 0 });
    expect(limit.remedy).toMatch(/^set "weak" to a voltage [\d.]+ V higher/u);
  });

  it('send someone to a joint that is not tight', () => {
    const loose = { ...BACK, joints: [{ name: 'clamp', resistance: 0.0004, at: 'end' as const }] };
    const limit = limits({ ...KIT, leads: [OUT, loose] })['joint_temperature']!;
    expect(limit).toMatchObject({ verdict: 'fails', hard: false });
    expect(limit.remedy).toContain('256 W');
  });
});
