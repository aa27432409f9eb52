import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { type ReadJob, readJob } from '../../job/index.ts';
import { type ReadKit, readKit } from '../../kit/index.ts';
import type { Answer, SupplyReport } from '../../result/index.ts';
import { answerJob } from './answer-job.ts';

const EXAMPLES = new URL('../../../../../examples/', import.meta.url);
const textOf = (name: string): string => readFileSync(new URL(name, EXAMPLES), 'utf8');

function job(): ReadJob {
  const outcome = readJob(textOf('penstock-seam.yaml'));
  if (!outcome.ok) throw new Error('the demo job is not in order');
  return outcome.value;
}

function kit(change: (raw: ReturnType<typeof parse>) => void = () => undefined): ReadKit {
  const raw = parse(textOf('yard-kit.yaml'));
  change(raw);
  const outcome = readKit(JSON.stringify(raw));
  if (!outcome.ok) throw new Error(outcome.issues.map(({ message }) => message).join('\n'));
  return outcome.value;
}

function supplyOf(answer: Answer): SupplyReport {
  if (answer.supply === undefined) throw new Error('there is no supply part');
  return answer.supply;
}

const FREE = answerJob({ job: job(), version: 'x' });
const WITHIN = answerJob({ job: job(), version: 'x', kit: kit() });

describe('a kit that carries the plan', () => {
  const supply = supplyOf(WITHIN);

  it('leaves the plan as the process has it, with the kit’s margins beside the others', () => {
    expect(supply.time.limited_by).toBe('process');
    expect(WITHIN.plan!.passes).toEqual(FREE.plan!.passes);
    expect(WITHIN.inputs.kit_revision).toBe(kit().revision);
    expect(supply.limits.length).toBeGreaterThan(8);
    for (const limit of supply.limits) expect(WITHIN.plan!.limits).toContain(limit);
    expect(supply.limits.some(({ hard }) => hard)).toBe(true);
  });

  it('loses in the loop what the sources give beyond the arc, and shares add up', () => {
    if (supply.electric?.kind !== 'operating_point') throw new Error('the loop has no working point');
    const { output_kW, arc_kW, loss_W, losses, sources, leads } = supply.electric;
    expect(output_kW - arc_kW).toBeCloseTo(loss_W / 1000, 6);
    expect(losses.reduce((sum, each) => sum + each.loss_W, 0)).toBeCloseTo(loss_W, 6);
    expect(sources.reduce((sum, each) => sum + each.share_percent, 0)).toBeCloseTo(100, 9);
    for (const { course, temperature_C } of leads)
      expect(Math.max(...course.temperature_C)).toBeCloseTo(temperature_C, 6);
  });

  it('gives in commissioning the volts that the loop loses with its leads cold', () => {
    if (supply.electric?.kind !== 'operating_point') throw new Error('the loop has no working point');
    const volts = supply.connections.reduce((sum, { voltage_V }) => sum + (voltage_V ?? 0), 0);
    const { needed_V, arc_voltage_V } = supply.electric;
    const loaded = supply.checks.find(({ id }) => id === 'loaded_source_1');
    expect(loaded).toMatchObject({ expected: expect.closeTo(arc_voltage_V + volts, 6) });
    // Commissioning meets cold leads, the plan hot ones: copper gains 0.393 % of its resistance per kelvin.
    const hot = (needed_V - arc_voltage_V) / volts;
    expect(hot).toBeGreaterThan(1.05);
    expect(hot).toBeLessThan(1.25);
  });

  it('states amounts in the unit of their key', () => {
    if (supply.electric?.kind !== 'operating_point') throw new Error('the loop has no working point');
    const { electric, setting } = supply;
    // The plate of the demo source: 87 % of what it draws reaches the terminals, at a power factor of 0.9.
    expect(electric.input_kVA).toBeCloseTo(electric.output_kW / 0.87 / 0.9, 9);
    expect(electric.arc_kW).toBeCloseTo((electric.current_A * electric.arc_voltage_V) / 1000, 9);
    for (const source of electric.sources) expect(source.input_kVA).toBeCloseTo(source.input_kW! / 0.9, 9);
    for (const lead of electric.leads) {
      expect(lead.drop_V).toBeCloseTo((lead.current_A * lead.resistance_mohm) / 1000, 9);
      for (const joint of lead.joints) {
        const own = lead.current_A / lead.parallels;
        expect(joint.drop_mV).toBeCloseTo(own * joint.resistance_mohm, 9);
        expect(joint.heat_W).toBeCloseTo((own * joint.drop_mV) / 1000, 9);
      }
    }
    const travels = [
      ...WITHIN.plan!.passes.map(({ travel_mm_per_min }) => travel_mm_per_min),
      ...WITHIN.plan!.gauge_stops.flatMap(({ table }) => table.flatMap((row) => row.travel_mm_per_min ?? [])),
    ];
    expect(travels.length).toBeGreaterThan(1);
    expect(setting!.travel_mm_per_min).toBeCloseTo(Math.min(...travels), 6);
    expect(setting!.pass_time_s).toBeCloseTo((setting!.pass_length_mm / setting!.travel_mm_per_min) * 60, 6);
    const { passes, below_from_s, lowest_kPa } = supply.air!.drawdown;
    expect(passes).toHaveLength(setting!.passes);
    for (const pass of passes) expect(pass.to_s - pass.from_s).toBeCloseTo(setting!.pass_time_s, 6);
    expect(below_from_s).toBeNull();
    expect(lowest_kPa).toBe(Math.min(...passes.map((pass) => pass.lowest_kPa)));
  });

  it('lets no pressure rise on the way of the air, and counts the stock', () => {
    const flowing = supply.air!.points.map(({ flowing_kPa }) => flowing_kPa);
    expect(flowing).toEqual([...flowing].sort((a, b) => b - a));
    const { picks, left } = supply.place!;
    for (const { name, count } of [...kit().kit.stock.leads!, ...kit().kit.stock.hoses!]) {
      const of = (list: typeof picks): number => list.find((each) => each.name === name)?.count ?? 0;
      expect(of(picks) + of(left), name).toBe(count);
    }
  });
});

describe('a kit that is too weak', () => {
  const weak = answerJob({
    job: job(),
    version: 'x',
    kit: kit((raw) => Object.assign(raw.sources[0], { rating: [{ current: '280 A', duty: '100 %' }] })),
  });

  it('makes the plan slower, keeps its margins and says so', () => {
    const { time, limits } = supplyOf(weak);
    expect(time.limited_by).toBe('kit');
    expect(time.with_kit_s).toBeGreaterThan(time.without_kit_s!);
    expect(time.without_kit_s).toBe(FREE.plan!.job_time_s.p50);
    expect(time.binding).toContain('source_rated_current');
    expect(limits.filter(({ hard, verdict }) => hard && verdict === 'fails')).toEqual([]);
  });

  it('refuses where it carries nothing, and tells what it lacks at the plan it fails', () => {
    const none = answerJob({
      job: job(),
      version: 'x',
      kit: kit((raw) => Object.assign(raw.air.wanted, { torch: '95 psi' })),
    });
    expect(none.plan).toBeUndefined();
    expect(supplyOf(none)).toMatchObject({
      setting: { of: 'plan_without_kit' },
      checks: [],
      time: { limited_by: 'kit' },
    });
    expect(none.refusal!.binding[0]!.constraint).toBe('air_torch');
  });
});

it('says what is lost where the kit states the place of its station', () => {
  const stated = supplyOf(
    answerJob({
      job: job(),
      version: 'x',
      kit: kit((raw) => Object.assign(raw.bay, { station: { x: '9.5 m', y: '5 m' } })),
    }),
  ).place!;
  const found = supplyOf(WITHIN).place!;
  expect(stated.station).toMatchObject({ chosen: 'stated', at_m: { x_m: 9.5, y_m: 5 } });
  expect(stated.least?.loss_W).toBeCloseTo(found.station!.loss_W, 9);
  expect(stated.station!.loss_W).toBeGreaterThanOrEqual(found.station!.loss_W);
});
