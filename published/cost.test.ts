import { readFileSync } from 'node:fs';
import {
  type ArcWork,
  breakEvenLength,
  compareWays,
  costPracticeOf,
  type DrawStream,
  estimateOf,
  extraMetal,
  groundArea,
  type Job,
  jobFields,
  percentiles,
  plainGrooveArea,
  plannedWay,
  readJob,
  refillOf,
  simulate,
  triangular,
} from '@furrow/engine';
import { describe, expect, it } from 'vitest';

/**
 * Unit costs by hand calculation, weld metal by mass balance, and the propagation examples of supplement 1 to the
 * GUM, which run on the same draws as the cost of a job (cost.json: quantity, source and provenance beside each).
 */
const ENTRIES = JSON.parse(readFileSync(new URL('./cost.json', import.meta.url), 'utf8')) as Record<
  string,
  // biome-ignore lint/suspicious/noExplicitAny: every entry has inputs and outputs of its own shape
  { readonly inputs: any; readonly output: any }
>;

function entry(id: string) {
  const found = ENTRIES[id];
  if (found === undefined) throw new Error(`cost.json has no ${id}`);
  return found;
}

function job(more: string): Job {
  const read = readJob(`furrow: 1
title: Hand calculation
seam: { length: 12 m }
plate: { thickness: 30 mm }
groove:
  depth: { wanted: 6 mm, plus: 4 mm }
  width: { least: 10 mm, most: 20 mm }
kit:
  electrodes: [{ diameter: 3/8 in, count: 20 }]
  current: { least: 200 A, most: 900 A }
  travel: { least: 6 in/min, most: 100 in/min }
${more}`);
  if (!read.ok) throw new Error(read.issues[0]?.message);
  return read.value.job;
}

describe('cost of a metre by hand (CST-001, CST-002, CST-050)', () => {
  const { inputs, output } = entry('CST-001');
  const { length_m, setup_h, inspect_h } = entry('CST-002').inputs;
  const stated = job(`rates: { labour_per_hour: ${inputs.labour_per_h} }
heat: { skin_allowance: 1 mm }
after:
  overhead_per_hour: ${inputs.overhead_per_h}
  set_up_time: ${setup_h} h
  commissioning_time: 0 min
  cleaning_min_per_m: 0
  inspection_min_per_m: ${(inspect_h * 60) / length_m}
  refill:
    deposition_kg_per_h: ${inputs.dep_kg_h}
    operating_factor: ${inputs.OF_weld * 100} %
    efficiency: ${inputs.wire_eta * 100} %
    cap_share: 0 %
    filler_per_kg: ${inputs.wire_price_kg}
`);
  const practice = costPracticeOf(stated);
  // The section is chosen so that 0.55 kg fill a metre of it, and the grinding rate so that its skin takes 0.05 h.
  const shape = { topWidth: 0.014, depth: 0.006, seamLength: length_m as number };
  const skin = groundArea({ areaPerLength: 0, ...shape }, practice.skinAllowance);
  const section = { areaPerLength: inputs.refill_kg_per_m / practice.density - skin, ...shape };
  const grinding = { ...practice, grindingRate: skin / (inputs.grind_h_per_m * 3600) };
  const perMetre = 60 / (inputs.v_mm_min / 1000);
  const arcTime = perMetre * length_m;
  const electrodes = inputs.electrode_per_m * length_m;
  const kilowatts = (inputs.V * inputs.I) / inputs.eta_ps / 1000;
  const work: ArcWork = {
    arcTime: { p50: arcTime, p90: arcTime },
    electrodes: { p50: electrodes, p90: electrodes },
    electrodePrice: inputs.electrode_price,
    passes: 1,
    // An operating factor of one half: as long beside the arc as with it burning.
    startTime: arcTime / inputs.OF - arcTime,
    layerTime: 0,
    returnTime: 0,
    changeTime: 0,
    gaugeTime: 0,
    coolingTime: 0,
    setUpTime: stated.after.set_up_time,
    commissioningTime: stated.after.commissioning_time,
    power: (kilowatts * inputs.price_kWh) / 3600,
    air: (inputs.air_m3_min * inputs.price_air_m3) / 60,
    hirePerDay: 0,
    shift: 8 * 3600,
    section,
    depth: { p05: 0.006, p50: 0.006, p95: 0.006 },
    width: { p05: 0.014, p50: 0.014, p95: 0.014 },
    depthReached: 1,
    reworkTime: undefined,
  };

  it('agrees with the sum of the parts, rework left out, with set-up and inspection of 12 m', () => {
    const metre = output.total - output.rework_expected;
    const { rate } = entry('CST-002').inputs;
    expect(plannedWay(work, grinding).cost).toBeCloseTo(metre * length_m + (setup_h + inspect_h) * rate, 5);
  });

  it.each([
    ['power', { power: 0 }, 'power'],
    ['air', { air: 0 }, 'air'],
    ['electrodes', { electrodePrice: 0 }, 'electrode'],
  ])('agrees on %s, part by part', (_name, without, key) => {
    const cost = plannedWay(work, grinding).cost - plannedWay({ ...work, ...without }, grinding).cost;
    expect(cost / length_m).toBeCloseTo(output[key], 7);
  });

  it('agrees on refill and on grinding', () => {
    const free = { ...grinding, welder: 0, filler: 0 };
    const refill = plannedWay(work, grinding).cost - plannedWay(work, free).cost;
    expect(refill / length_m).toBeCloseTo(output.refill, 6);
    const ground = plannedWay(work, grinding).cost - plannedWay(work, { ...grinding, grinder: 0 }).cost;
    expect(ground / length_m).toBeCloseTo(output.grinding, 9);
  });

  it('takes the published energy of a metre', () => {
    const priced = { ...work, power: kilowatts / 3600 };
    const energy = plannedWay(priced, grinding).cost - plannedWay({ ...work, power: 0 }, grinding).cost;
    expect(energy / length_m).toBeCloseTo(entry('CST-050').output.kWh_per_m[0], 8);
  });
});

describe('weld metal (CST-060)', () => {
  const { inputs, output } = entry('CST-060');
  const practice = {
    ...costPracticeOf(job('')),
    skinAllowance: 0,
    density: inputs.rho,
    capShare: inputs.f_reinforcement,
    efficiency: inputs.eta_dep,
    deposition: inputs.DR_kg_h / 3600,
  };
  const sizes = [
    [0.014, 0.006],
    [0.016, 0.007],
  ] as const;

  it.each([0, 1])('of groove %i: area, weld metal, wire and arc time', (index) => {
    const [topWidth, depth] = sizes[index]!;
    const areaPerLength = plainGrooveArea(topWidth, depth);
    expect(areaPerLength * 1e6).toBeCloseTo(inputs.A_mm2[index], 7);
    const refill = refillOf({ areaPerLength, topWidth, depth, seamLength: 1 }, practice);
    expect(refill.weldMetal).toBeCloseTo(output.kg_per_m[index], 9);
    expect(refill.filler).toBeCloseTo(output.wire_kg_per_m[index], 9);
    expect(refill.arcTime / 60).toBeCloseTo(output.arc_min_per_m[index], 8);
  });

  it('grows by a third for a groove 1 mm deeper and 2 mm wider', () => {
    const [topWidth, depth] = sizes[0];
    const planned = { areaPerLength: plainGrooveArea(topWidth, depth), topWidth, depth, seamLength: 1 };
    const extra = extraMetal(planned, practice, 0.001, 0.002);
    expect(extra.share * 100).toBeCloseTo(output.oversize_pct, 7);
  });
});

describe('what stands in for what a job does not state', () => {
  const { output: efficiency } = entry('CST-062');
  const { output: deposition } = entry('CST-063');
  const { output: factor } = entry('CST-020');

  it.each([
    ['stick', 'SMAW', 'SMAW', 'manual_electrode'],
    ['solid_wire', 'GMAW', 'GMAW_FCAW', 'semi_automatic'],
    ['flux_cored', 'FCAW_gas', 'GMAW_FCAW', 'semi_automatic'],
    ['submerged_arc', 'SAW', 'SAW_single_wire', 'mechanised'],
  ])('for %s lies in the published ranges (CST-020, CST-062, CST-063)', (process, eta, rate, arcOn) => {
    const practice = costPracticeOf(job(`reweld: { process: ${process} }\n`));
    const within = (value: number, [least, most]: readonly [number, number]): void => {
      expect(value).toBeGreaterThanOrEqual(least);
      expect(value).toBeLessThanOrEqual(most);
    };
    within(practice.efficiency * 100, efficiency[eta]);
    within(practice.deposition * 3600, deposition[rate]);
    expect(practice.operatingFactor).toBe(factor[arcOn]);
  });

  it('grinds a cap flush at the published pace of hull seams (CST-032)', () => {
    const field = jobFields().find(({ path }) => path === 'after.flush_grinding_min_per_m');
    expect(Number(field?.fallback)).toBeCloseTo(60 / entry('CST-032').output.m_h_hand, 0);
  });

  it('takes a cutter to be as much quicker than gouging and grinding by hand as the trial found (CST-033)', () => {
    const stated = job('after: { alternatives: { machining: { set_up_time: 0 min } } }\n');
    const practice = costPracticeOf(stated);
    const seamLength = 12;
    const section = {
      areaPerLength: plainGrooveArea(0.014, 0.006),
      topWidth: 0.014,
      depth: 0.006,
      seamLength,
    };
    const arc = { arcTime: { p50: 900, p90: 900 }, section, setUpTime: 0 } as ArcWork;
    const ways = compareWays(stated, arc, practice);
    const time = (name: string): number =>
      ways.find(({ way }) => way === name)?.taken?.grooveTime ?? Number.NaN;
    const skin =
      (groundArea(section, practice.skinAllowance) - section.areaPerLength) *
      (seamLength / practice.grindingRate);
    expect((time('manual_gouging') + skin) / time('machining')).toBeCloseTo(
      entry('CST-033').output.ratio,
      10,
    );
  });
});

it('the length from which on the dearer set-up pays (CST-003)', () => {
  const { inputs, output } = entry('CST-003');
  const mechanised = { fixed: inputs.F_mech, perMetre: inputs.c_mech };
  const byHand = { fixed: inputs.F_hand, perMetre: inputs.c_hand };
  expect(breakEvenLength(mechanised, byHand)).toBeCloseTo(output.L_break_even, 7);
});

/** One quantity by simulation, with its percentiles and the shortest interval that holds 95 % of the trials. */
function propagated(model: (stream: DrawStream) => number, trials = 200_000) {
  const [sample] = simulate(trials, 101, 1, (stream, row) => {
    row[0] = model(stream);
  });
  const sorted = sample!.slice().sort();
  const inside = Math.floor(0.95 * trials);
  let from = 0;
  for (let place = 0; place + inside < trials; place += 1) {
    if (sorted[place + inside]! - sorted[place]! < sorted[from + inside]! - sorted[from]!) from = place;
  }
  return {
    ...estimateOf(sample!),
    interval: percentiles(sample!, [0.025, 0.975]) as [number, number],
    shortest: [sorted[from]!, sorted[from + inside]!] as const,
  };
}

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
const rectangular = (stream: DrawStream, from: number, to: number): number =>
  from + stream.uniform() * (to - from);

describe('propagation by simulation', () => {
  it('a sum of four normals (STA-017, JCGM 101 9.2.2)', () => {
    const { output } = entry('STA-017');
    const found = propagated((stream) =>
      sum([stream.normal(), stream.normal(), stream.normal(), stream.normal()]),
    );
    expect(found.mean).toBeCloseTo(0, 1);
    expect(Math.abs(found.deviation - output.u)).toBeLessThan(0.01);
    found.interval.forEach((end, index) => {
      expect(Math.abs(end - output.interval95[index])).toBeLessThan(0.03);
    });
  });

  it('a sum of four rectangular quantities (STA-018, JCGM 101 9.2.3)', () => {
    const { output } = entry('STA-018');
    const side = Math.sqrt(3);
    const found = propagated((stream) =>
      sum(Array.from({ length: 4 }, () => rectangular(stream, -side, side))),
    );
    expect(Math.abs(found.deviation - output.u)).toBeLessThan(0.01);
    expect(Math.abs(found.interval[1] - output.half_width95)).toBeLessThan(0.02);
    // The normal approximation would give 3.92: the simulation tells the two apart.
    expect(found.interval[1]).toBeLessThan(3.9);
  });

  it('a mass against a standard in air (STA-019, JCGM 101 9.3)', () => {
    const { inputs, output } = entry('STA-019');
    const found = propagated((stream) => {
      const standard = inputs.m_nom + 0.05 * stream.normal();
      const small = 1.234 + 0.02 * stream.normal();
      const air = rectangular(stream, 1.1, 1.3);
      const mass = rectangular(stream, 7000, 9000);
      const weight = rectangular(stream, 7950, 8050);
      return (standard + small) * (1 + (air - 1.2) * (1 / mass - 1 / weight)) - inputs.m_nom;
    });
    expect(Math.abs(found.mean - output.mean)).toBeLessThan(0.001);
    expect(Math.abs(found.deviation - output.u)).toBeLessThan(0.0005);
    found.shortest.forEach((end, index) => {
      expect(Math.abs(end - output.interval95_shortest[index])).toBeLessThan(0.004);
    });
    expect(found.deviation).toBeGreaterThan(1.3 * output.u_first_order);
  });

  it('a sum of squares near zero (STA-020, JCGM 101 9.4)', () => {
    const { inputs, output } = entry('STA-020');
    const found = propagated(
      (stream) =>
        (inputs.x1 + inputs.u * stream.normal()) ** 2 + (inputs.x2 + inputs.u * stream.normal()) ** 2,
    );
    expect(Math.abs(found.mean / output.exact.y - 1)).toBeLessThan(0.002);
    expect(Math.abs(found.deviation / output.exact.u - 1)).toBeLessThan(0.01);
    expect(found.mean).toBeGreaterThan(1.01 * output.first_order.y);
  });

  it('a three-point estimate (CST-073), and that means and variances of independent ones add', () => {
    const { inputs, output } = entry('CST-073');
    const one = (stream: DrawStream): number => triangular(inputs.a, inputs.m, inputs.b, stream.uniform());
    const single = propagated(one);
    expect(Math.abs(single.mean - output.tri_mean)).toBeLessThan(0.02);
    expect(Math.abs(single.deviation - output.tri_sd)).toBeLessThan(0.01);
    const five = propagated((stream) => sum(Array.from({ length: 5 }, () => one(stream))), 50_000);
    expect(Math.abs(five.mean - 5 * output.tri_mean)).toBeLessThan(0.06);
    expect(Math.abs(five.deviation - Math.sqrt(5) * output.tri_sd)).toBeLessThan(0.05);
  });
});
