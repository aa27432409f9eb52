import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { COST_PARTS, CYCLE_STEPS, wholeCost } from '../cost/index.ts';
import { judgeHazards } from '../hazard/index.ts';
import type { HeatOutcome } from '../heat/index.ts';
import { readJob } from '../job/index.ts';
import {
  airOfKit,
  electricOfKit,
  hoseBores,
  hosesOfKit,
  kitTime,
  noLoadVoltages,
  placeOfKit,
  polarityOf,
  readKit,
  wantedPressures,
} from '../kit/index.ts';
import { metalOf } from '../material/index.ts';
import { publishedBelief } from '../removal/index.ts';
import {
  airThroughDuty,
  type DutyInterval,
  senseLandings,
  solveLoop,
  type WorkingLoop,
} from '../supply/index.ts';
import { stateAir } from './air.ts';
import { stateCost } from './cost.ts';
import { stateElectric } from './electric.ts';
import { stateHazard } from './hazard.ts';
import { stateHeat } from './heat.ts';
import { statePlace } from './place.ts';
import { mixedUp, unlikeNumbers } from './sources.test-support.ts';
import { stateSupply } from './supply.ts';

const text = (name: string): string =>
  readFileSync(new URL(`../../../../examples/${name}.yaml`, import.meta.url), 'utf8');

function good<Value>(read: { readonly ok: true; readonly value: Value } | { readonly ok: false }): Value {
  if (!read.ok) throw new Error('the demo is not in order');
  return read.value;
}

const { job } = good(readJob(text('penstock-seam')));
const kit = good(readKit(text('yard-kit')));
const candidate = {
  electrode: job.kit.electrodes[0]!,
  current: 900,
  voltage: 42,
  pushAngle: 0.8,
  travel: 0.01,
  tracks: 1,
  layers: 2,
  passLength: 6,
  passDepth: 0.005,
  passWidth: 0.018,
};
const duty: readonly DutyInterval[] = [
  { arc: true, duration: 600 },
  { arc: false, duration: 200 },
  { arc: true, duration: 599 },
];
const loop = {
  ...electricOfKit(kit.kit).electric,
  arc: { holds: 'current', current: 900, voltage: 42 },
  duty,
} as const;
const solved = good(solveLoop(loop)) as WorkingLoop;

describe('each number of a result comes from its own source in SI, in the unit of its key', () => {
  it('in hazards', () => {
    const { fume, ...rest } = unlikeNumbers(
      judgeHazards({
        job,
        current: 900,
        arcTime: 1000,
        gas: { carbon: 1, least: 1, most: 1 },
        sources: noLoadVoltages(kit.kit),
        hoseBores: hoseBores(kit.kit),
        baySeam: kit.kit.bay?.seam,
      }),
    );
    const [first, ...others] = fume.substances;
    const measured = {
      ...first!,
      measured: 91,
      highest: 92,
      limits: [{ ...first!.limits[0]!, most: 93, flowIfAll: 94 }],
    };
    const outcome = {
      ...rest,
      fume: { ...fume, substances: [measured], mixtures: [{ ...fume.mixtures[0]!, index: 95 }] },
    };
    expect(others.length).toBeGreaterThan(0);
    expect(
      mixedUp(stateHazard(outcome, []), outcome, {
        'noise.five_dB.pel_dose_percent.least': 'noise.fiveDecibel.pelDose.least',
        'noise.five_dB.pel_dose_percent.most': 'noise.fiveDecibel.pelDose.most',
        'noise.five_dB.pel_average_dBA.least': 'noise.fiveDecibel.pelAverage.least',
        'noise.five_dB.pel_average_dBA.most': 'noise.fiveDecibel.pelAverage.most',
        'noise.five_dB.action_dose_percent.least': 'noise.fiveDecibel.actionDose.least',
        'noise.five_dB.action_dose_percent.most': 'noise.fiveDecibel.actionDose.most',
        'noise.five_dB.action_average_dBA.least': 'noise.fiveDecibel.actionAverage.least',
        'noise.five_dB.action_average_dBA.most': 'noise.fiveDecibel.actionAverage.most',
        'noise.three_dB.dose_percent.least': 'noise.threeDecibel.dose.least',
        'noise.three_dB.dose_percent.most': 'noise.threeDecibel.dose.most',
        'noise.three_dB.average_dBA.least': 'noise.threeDecibel.average.least',
        'noise.three_dB.average_dBA.most': 'noise.threeDecibel.average.most',
        'noise.three_dB.exposure_level_dBA.least': 'noise.threeDecibel.exposureLevel.least',
        'noise.three_dB.exposure_level_dBA.most': 'noise.threeDecibel.exposureLevel.most',
        'noise.protection.five_dB_average_dBA': 'noise.protection.fiveDecibelAverage',
        // the room of hazards works in mg/m3, as every source does
        'fume.substances.measured_mg_per_m3': 'counted',
        'fume.substances.highest_mg_per_m3': 'counted',
        'fume.substances.limits.most_mg_per_m3': 'counted',
        'fume.substances.limits.flow_if_all_m3_per_min': 'fume.substances.limits.flowIfAll',
        // where the jet adds nothing both outlines share corners
        'fire_zone.with_jet_m.x_m': 'fireZone.round.x | fireZone.withJet.x',
        'fire_zone.with_jet_m.y_m': 'fireZone.round.y | fireZone.withJet.y',
      }),
    ).toEqual([]);
    expect(stateHazard(outcome, []).fume.substances[0]).toMatchObject({
      measured_mg_per_m3: 91,
      highest_mg_per_m3: 92,
      limits: [{ most_mg_per_m3: 93 }],
    });
  });

  it('in heat', () => {
    const span = { least: 1, middle: 1, most: 1 };
    const source = { text: 'a test', provenance: 'derived' } as const;
    const plain: HeatOutcome = {
      quality: 'refined',
      gridError: 1,
      station: 1,
      keptShare: { ...span },
      assumptions: [],
      passes: [
        {
          number: 1,
          heat: { gross: 1, withMelt: 1, share: { ...span }, reaching: { ...span } },
          atStation: { ...span },
          before: { ...span },
          wait: { ...span },
        },
      ],
      transformation: { ac1: 1, ac3: 1, source },
      widthPastAc1: { ...span },
      widthPastAc3: { ...span },
      depthPastAc1: { ...span },
      backFace: { ...span },
      t85: { ...span },
      cooling: { rows: [{ name: '', t85: { ...span }, insideRange: true, note: '', source }], remarks: [] },
      hardness: {
        least: 1,
        most: 1,
        formulas: [{ name: '', value: { ...span }, source }],
        skin: 1,
        note: '',
      },
      preheat: {
        methods: [
          {
            method: '',
            temperature: 1,
            parts: [{ name: '', value: 1, unit: '-' }],
            insideRange: true,
            remarks: [],
            source,
          },
        ],
        differences: [],
        gouging: { temperature: 1, stated: true, known: true, source },
      },
      skin: { allowance: 1, gouged: 1, ground: 1, weldMetal: 1, addedMetal: 1 },
      balance: { given: 1, cutOut: 1, lost: 1, stored: 1, error: 1 },
      ends: {
        window: 1,
        wholeSeam: false,
        backFace: 1,
        sectionBackFace: 1,
        t85: { least: 1, most: 1 },
        sectionT85: 1,
        widthPastAc1: 1,
        sectionWidthPastAc1: 1,
        note: '',
      },
      limits: [],
      cautions: [],
    };
    const outcome = unlikeNumbers(plain);
    const spans = (key: string, from: string) =>
      Object.fromEntries(['least', 'middle', 'most'].map((end) => [`${key}.${end}`, `${from}.${end}`]));
    expect(
      mixedUp(stateHeat(outcome), outcome, {
        'passes.gross_kJ_per_mm': 'passes.heat.gross',
        'passes.with_melt_kJ_per_mm': 'passes.heat.withMelt',
        ...spans('passes.reaching_share', 'passes.heat.reaching'),
        ...spans('cooling_formulas.t85_s', 'cooling.rows.t85'),
        // the share of the gross energy, worked out below
        'passes.kept_kJ_per_mm.least': 'counted',
        'passes.kept_kJ_per_mm.middle': 'counted',
        'passes.kept_kJ_per_mm.most': 'counted',
        'skin.gouged_area_mm2': 'skin.gouged',
        'skin.ground_area_mm2': 'skin.ground',
        'skin.added_percent': 'counted',
        'skin.refill_kg': 'skin.weldMetal',
        'skin.added_kg': 'skin.addedMetal',
      }),
    ).toEqual([]);
    const { passes, skin } = stateHeat(outcome);
    const { gross, share } = outcome.passes[0]!.heat;
    expect(passes[0]!.kept_kJ_per_mm.most).toBeCloseTo((gross * share.most) / 1e6, 12);
    expect(passes[0]!.kept_kJ_per_mm.least).toBeCloseTo((gross * share.least) / 1e6, 12);
    expect(skin.added_percent).toBeCloseTo((outcome.skin.ground / outcome.skin.gouged - 1) * 100, 9);
  });

  it('in cost', () => {
    const range = { p05: 1, p50: 2, p95: 3 };
    const spread = { mean: 600, p50: 600, p90: 700 };
    const { ways, ...found } = unlikeNumbers(
      wholeCost(
        job,
        {
          arcTime: spread,
          electrodes: spread,
          electrodePrice: 3,
          passes: 2,
          startTime: 60,
          layerTime: 60,
          returnTime: 60,
          changeTime: 60,
          gaugeTime: 60,
          coolingTime: 60,
          setUpTime: 60,
          commissioningTime: 60,
          power: 0.001,
          air: 0.001,
          hirePerDay: 10,
          shift: 28_800,
          section: { areaPerLength: 1e-4, topWidth: 0.018, depth: 0.01, seamLength: 6 },
          depth: { ...range, p50: 0.01 },
          width: { ...range, p50: 0.018 },
          depthReached: 0.95,
          reworkTime: 600,
        },
        { air: true, waits: true },
      ),
    );
    const outcome = { ...found, ways: ways.map((way, index) => ({ ...way, cheaperFrom: 90.5 + index })) };
    const report = stateCost(outcome);
    const { steps, items, ...whole } = report;
    const estimates = ['p50', 'p90', 'mean', 'p50_half_width', 'p90_half_width'];
    const of = (key: string, from: (part: string) => string) =>
      Object.fromEntries(
        estimates.map((part) => [`${key}.${part}`, from(part.replace(/_(h)alf_(w)idth/u, 'HalfWidth'))]),
      );
    expect(
      mixedUp(whole, outcome, {
        trials: 'cycle.trials',
        seed: 'cycle.seed',
        reworked: 'cycle.reworked',
        ...of('time_s', (part) => `cycle.time.${part}`),
        ...of('cost', (part) => `cycle.cost.${part}`),
        ...of('cost_per_m', () => 'counted'),
        'refill.gouged_area_mm2': 'skin.gouged',
        'refill.ground_area_mm2': 'skin.ground',
        'refill.skin_allowance_mm': 'skin.allowance',
        'refill.skin_weld_metal_kg': 'skin.addedMetal',
        'extra.weld_metal_percent': 'extra.share',
        'extra.cost_per_m': 'counted',
        'ways.groove_time_s': 'planned.grooveTime | ways.taken.grooveTime',
        'ways.time_s': 'planned.time | ways.taken.time',
        'ways.cost': 'planned.cost | ways.taken.cost',
        'ways.cost_per_m': 'counted',
        'ways.planned_cheaper_from_m': 'ways.cheaperFrom',
      }),
    ).toEqual([]);
    expect(report.cost_per_m.p90).toBeCloseTo(outcome.cycle.cost.p90 / outcome.seamLength, 12);
    expect(report.extra[2]!.cost_per_m).toBeCloseTo(outcome.extra[2]!.cost / outcome.seamLength, 12);
    expect(report.ways[0]!.cost_per_m).toBeCloseTo(outcome.planned.cost / outcome.seamLength, 12);
    expect(steps.map(({ step }) => step)).toEqual(CYCLE_STEPS);
    for (const step of steps) {
      const { timeOf, costOf } = outcome.cycle;
      expect(step.time_s.p90, step.step).toBe(timeOf[step.step].estimate.p90);
      expect(step.cost.mean, step.step).toBe(costOf[step.step].estimate.mean);
      expect([step.time_share, step.cost_share]).toEqual([timeOf[step.step].share, costOf[step.step].share]);
    }
    expect(items.map(({ part }) => part)).toEqual(COST_PARTS);
    for (const { part, cost, cost_share } of items) {
      expect(cost.p50, part).toBe(outcome.cycle.partOf[part].estimate.p50);
      expect(cost_share, part).toBe(outcome.cycle.partOf[part].share);
    }
  });

  it('in the air', () => {
    const found = good(
      airThroughDuty(airOfKit(kit.kit), wantedPressures(kit.kit), duty, hosesOfKit(kit.kit)),
    );
    const { duty: _, ...numbers } = unlikeNumbers(found);
    const changes = {
      reached: true,
      changes: [],
      at: 'torch',
      before: 3.1,
      after: 3.2,
      receiver: 3.3,
      wanted: 3.4,
    } as const;
    const below = { time: 4.1, pass: 4.2, intoPass: 4.3, blown: 4.4 };
    const outcome = { ...numbers, duty, changes, drawdown: { ...numbers.drawdown, below } };
    const report = stateAir(outcome, 0.01);
    expect(
      mixedUp(report, outcome, {
        receiver_kPa: 'point.receiver',
        torch_flow_L_per_min: 'point.torchFlow',
        receiver_flow_L_per_min: 'point.receiverFlow',
        delivered_L_per_min: 'delivered',
        'wanted.regulator_kPa': 'wanted.regulator.value',
        'wanted.torch_kPa': 'wanted.torch.value',
        regulator_kPa: 'point.regulator',
        torch_kPa: 'point.torch',
        'points.static_kPa': 'point.points.static',
        'points.flowing_kPa': 'point.points.flowing',
        'points.length_m': 'path.length',
        'points.bore_mm': 'path.bore',
        'drawdown.time_s': 'drawdown.samples.time',
        'drawdown.receiver_kPa': 'drawdown.samples.receiver',
        'drawdown.passes.from_s': 'counted',
        'drawdown.passes.to_s': 'counted | duty.duration',
        'drawdown.passes.lowest_kPa': 'drawdown.lowestByPass',
        'drawdown.below_from_s': 'drawdown.below.time',
        'drawdown.below_from_pass': 'drawdown.below.pass',
        'drawdown.below_from_mm': 'counted',
        'hose_changes.receiver_kPa': 'changes.receiver',
        'hose_changes.before_kPa': 'changes.before',
        'hose_changes.after_kPa': 'changes.after',
        'hose_changes.says.say.value': 'changes.before | changes.wanted',
      }),
    ).toEqual([]);
    expect(report.drawdown.passes).toMatchObject([
      { from_s: 0, to_s: 600 },
      { from_s: 800, to_s: 1399 },
    ]);
    expect(report.drawdown.below_from_mm).toBeCloseTo(43, 9);
  });

  it('in the electric loop', () => {
    const belief = publishedBelief(metalOf('carbon_steel'), 'flat');
    const landings = senseLandings(loop, solved, { candidate, job, belief });
    const numbers = unlikeNumbers({ loop, solved, landings });
    const outcome = {
      ...numbers,
      landings: numbers.landings.map((each, index) => ({ ...each, depthChange: 7.5 + index })),
    };
    const report = stateElectric(outcome.loop, outcome.solved, outcome.landings);
    const renamed: Record<string, string> = {
      current_A: 'solved.current_A',
      arc_voltage_V: 'solved.arc_voltage_V',
      needed_V: 'solved.needed_V',
      available_V: 'solved.available_V',
      margin_V: 'solved.margin_V',
      arc_kW: 'solved.arc_W',
      output_kW: 'solved.output_W',
      loss_W: 'solved.loss_W',
      input_kVA: 'counted',
      arc_minutes_in_ten: 'solved.arc_minutes_in_ten',
      'sources.share_percent': 'solved.sources.share',
      'sources.no_load_voltage_V': 'loop.sources.source.characteristic.no_load_voltage',
      'sources.input_kW': 'solved.sources.input.power_W',
      'sources.input_kVA': 'solved.sources.input.apparent_VA',
      'sources.line_current_A': 'solved.sources.input.line_current_A',
      'leads.length_m': 'loop.leads.length',
      'leads.resistance_mohm': 'solved.leads.resistance_ohm',
      'leads.temperature_C': 'solved.leads.duty.peak_K',
      'leads.steady_C': 'solved.leads.steady.temperature_K',
      'leads.insulation_limit_C': 'solved.leads.insulation_limit_K',
      'leads.course.time_s': 'solved.leads.duty.history.time_s',
      'leads.course.temperature_C': 'solved.leads.duty.history.temperature_K',
      'leads.joints.resistance_mohm': 'loop.leads.joints.resistance',
      'leads.joints.drop_mV': 'solved.leads.joints.drop_V',
      'sense.read_V': 'landings.read',
      'sense.arc_voltage_V': 'landings.arcVoltage',
      'sense.error_V': 'landings.error',
      'sense.current_A': 'landings.current',
      'sense.arc_length_change_mm.least': 'landings.arcLengthChange.least',
      'sense.arc_length_change_mm.most': 'landings.arcLengthChange.most',
      'sense.depth_change_percent': 'landings.depthChange',
    };
    // what the solver names with its unit already is the same key below `solved`
    for (const part of ['sources', 'leads', 'losses'] as const)
      for (const key of Object.keys(report.kind === 'operating_point' ? report[part][0]! : {}))
        if (key in outcome.solved[part][0]!) renamed[`${part}.${key}`] ??= `solved.${part}.${key}`;
    renamed['leads.joints.heat_W'] = 'solved.leads.joints.heat_W';
    renamed['leads.joints.rise_K'] = 'solved.leads.joints.rise_K';
    const unnamed = mixedUp(report, outcome, renamed).filter((line) => !line.endsWith('no such key'));
    expect(unnamed).toEqual([]);
    const inputs = outcome.solved.sources.map(({ input }) => input!.apparent_VA!);
    expect(report).toMatchObject({
      input_kVA: expect.closeTo(inputs.reduce((sum, each) => sum + each, 0) / 1000, 9),
    });
  });

  it('in the place', () => {
    const outcome = unlikeNumbers(placeOfKit(kit.kit, job, solved, { torchFlow: 0.01, regulator: 6e5 })!);
    const report = statePlace(outcome);
    const { routes, picks, left, jets_m, bay, ...rest } = report;
    expect(
      mixedUp(rest, outcome, {
        'station.at_m.x_m': 'choice.station.x',
        'station.at_m.y_m': 'choice.station.y',
        'station.places_tried': 'choice.places',
        'station.places_judged': 'choice.places_judged',
        'station.loss_W': 'choice.loss_W',
        'station.reach_margin_m': 'choice.reach_margin_m',
        lead_clearance_m: 'bay.lead_clearance',
        covers: 'choice.covers',
        'says.say.value': 'choice.loss_W',
      }),
    ).toEqual([]);
    const runs = outcome.choice!.runs;
    expect(routes.map(({ needed_m, picked_m, loss_W }) => [needed_m, picked_m, loss_W])).toEqual(
      runs.map(({ needed_m, length_m, loss_W }) => [needed_m, length_m, loss_W]),
    );
    expect(jets_m.map((outline) => outline.map(({ x_m, y_m }) => [x_m, y_m]))).toEqual(
      outcome.jets.map((outline) => outline.map(({ x, y }) => [x, y])),
    );
    expect(bay.seam_m).toEqual(outcome.bay.seam.map(({ x, y }) => ({ x_m: x, y_m: y })));
    expect(
      [...picks, ...left].every(({ length_m }) => outcome.stock.some(({ length }) => length === length_m)),
    ).toBe(true);
  });

  it('in the setting of a supply, with the electrode itself', () => {
    const setting = {
      of: 'plan' as const,
      candidate: unlikeNumbers(candidate),
      passes: 77,
      polarity: polarityOf(kit, metalOf('carbon_steel')),
      limits: [],
      loop,
      solved: { kind: 'no_operating_point', reason: 'not solved here' } as const,
      landings: [],
      air: undefined,
      place: undefined,
      turning: undefined,
      connections: [],
      checks: [],
      issues: [],
    };
    const report = stateSupply({ kit, time: kitTime(1200, 1000, []), setting });
    expect(
      mixedUp(report.setting, setting, {
        electrode_diameter_mm: 'candidate.electrode.diameter',
        current_A: 'candidate.current',
        arc_voltage_V: 'candidate.voltage',
        travel_mm_per_min: 'candidate.travel',
        pass_length_mm: 'candidate.passLength',
        pass_time_s: 'counted',
      }),
    ).toEqual([]);
    expect(report.setting!.pass_time_s).toBeCloseTo(
      setting.candidate.passLength / setting.candidate.travel,
      12,
    );
    expect(report.time).toMatchObject({ limited_by: 'kit', with_kit_s: 1200, without_kit_s: 1000 });
  });
});
