import { readFileSync } from 'node:fs';
import {
  CONDUCTOR_SIZES,
  cableDutyFactor,
  cableSurfaceLoss,
  conductorSizeOf,
  conventionalLoadVoltage,
  copperResistance,
  cylinderNusselt,
  effectiveSupplyCurrent,
  inputPower,
  type Lead,
  type LeadCovering,
  leadAmpacity,
  leadHeatCapacity,
  leadHeatLoss,
  leadTemperatures,
  linearHeatModel,
  permissibleMinutes,
  permittedCurrent,
  runawayCurrent,
  solveLoop,
  sourceCurrent,
  steadyTemperature,
  type WorkingLoop,
} from '@furrow/engine';
import { describe, expect, it } from 'vitest';

/**
 * The electric loop against public tables, worked examples and what follows from them, kept in supply-electric.json
 * in the units of their sources, each with its provenance: confirmed in a public text, from memory, or derived.
 */
interface Entry {
  readonly id: string;
  readonly inputs: never;
  readonly output: never;
  readonly provenance: 'confirmed' | 'memory' | 'derived';
}
const entries = JSON.parse(
  readFileSync(new URL('./supply-electric.json', import.meta.url), 'utf8'),
) as readonly Entry[];

function output<T>(id: string): T {
  return entries.find((entry) => entry.id === id)!.output as T;
}

type Figures = Readonly<Record<string, number>>;
const KILOFOOT = 304.8;
const kelvin = (celsius: number): number => celsius + 273.15;
const sized = (name: string) => CONDUCTOR_SIZES.find((size) => size.name === name)!;
const american = (size: string) => sized(Number(size) >= 250 ? `${size} kcmil` : `${size} AWG`);

/** To the nine figures that the worked values are given with. */
function close(actual: number, wanted: number, relative = 5e-9): void {
  expect(Math.abs(actual / wanted - 1), `${actual} against ${wanted}`).toBeLessThan(relative);
}

function working(loop: Parameters<typeof solveLoop>[0]): WorkingLoop {
  const solved = solveLoop(loop);
  if (!solved.ok || solved.value.kind !== 'operating_point') throw new Error(JSON.stringify(solved));
  return solved.value;
}

const straight = (name: string, no_load_voltage: number, slope: number, leads: readonly Lead[] = []) => ({
  source: {
    name,
    characteristic: { kind: 'drooping' as const, no_load_voltage, slope },
    rating: [{ current: 1000, duty: 0.6 }],
  },
  leads,
});

describe('conductors', () => {
  it.each(Object.entries(output<Figures>('cond-awg-area')))('area of %s AWG', (size, mm2) => {
    close(american(size).area * 1e6, mm2);
  });

  it.each(Object.entries(output<Figures>('cond-awg-diameter')))('diameter of solid %s AWG', (size, mm) => {
    close(Math.sqrt((4 * american(size).area) / Math.PI) * 1e3, mm);
  });

  it.each(Object.entries(output<Figures>('cond-kcmil-area')))('area of %s kcmil', (size, mm2) => {
    close(american(size).area * 1e6, mm2);
    expect(conductorSizeOf(mm2 * 1e-6, '')).toMatchObject({ ok: true, value: { name: `${size} kcmil` } });
  });

  it.each(Object.entries(output<Figures>('cond-nec-t8')))('NEC chapter 9 table 8, %s', (size, ohms) => {
    close(american(size).resistance * KILOFOOT, ohms);
  });

  it('table 8 is what copper of that area and a lay of 2 % give, within 0.3 %', () => {
    for (const [size, ohms] of Object.entries(output<Figures>('cond-nec-t8-model'))) {
      if (size.startsWith('max')) continue;
      const { resistance, area } = american(size);
      expect(Math.abs((resistance * KILOFOOT) / ohms - 1)).toBeLessThan(0.003);
      const solid = copperResistance(1 / 58e6 / area, kelvin(75), '20 degC') * 1.02;
      close(solid * KILOFOOT, ohms, 1e-3);
    }
  });

  it.each(Object.entries(output<Figures>('cond-iec60228-c56')))(
    'IEC 60228 class 5 and 6, %s mm2',
    (mm2, ohms) => {
      close(sized(`${mm2} mm2`).resistance * 1000, ohms);
      close(sized(`${mm2} mm2`).tinnedResistance! * 1000, output<Figures>('cond-iec60228-c56-tinned')[mm2]!);
    },
  );

  it('no size is left without its check', () => {
    const checked = [
      ...Object.keys(output<Figures>('cond-iec60228-c56')).map((mm2) => `${mm2} mm2`),
      ...Object.keys(output<Figures>('cond-nec-t8')).map((size) => american(size).name),
    ];
    expect(CONDUCTOR_SIZES.map((size) => size.name).sort()).toEqual(checked.sort());
  });

  it('resistance at temperature, IEC and NEC', () => {
    for (const [celsius, ohms] of Object.entries(output<Figures>('cond-r-at-t'))) {
      close(copperResistance(0.206, kelvin(Number(celsius)), '20 degC'), ohms);
    }
    close(copperResistance(0.0608, kelvin(20), '75 degC'), output<number>('cond-nec-temp'));
  });

  it('handbook drop of tinned leads per 100 A and 10 m (printed to two decimals)', () => {
    const out = output<Record<string, number[]>>('cond-vdrop-handbook');
    for (const mm2 of ['16', '95']) {
      for (const [i, celsius] of [20, 60, 85].entries()) {
        const lead: Lead = {
          name: 'lead',
          side: 'work',
          area: Number(mm2) * 1e-6,
          metal: 'tinned copper',
          length: 10,
        };
        const arc = { holds: 'current', current: 100 } as const;
        const loop = { sources: [straight('A', 80, 0.02)], leads: [lead], arc, ambient: kelvin(20) };
        const { leads } = working({ ...loop, lead_temperature: kelvin(celsius) });
        close(leads[0]!.drop_V, out[mm2]![i]!);
        expect(Math.abs(leads[0]!.drop_V - out[`published_${mm2}`]![i]!)).toBeLessThan(0.0051);
      }
    }
  });

  it.each([
    ['cond-vdrop-nec-600A', 600, american('4/0').area, 1, 100 * 0.3048, 75, 'V'],
    ['cond-vdrop-1000A', 1000, 95e-6, 2, 30, 60, 'V'],
  ] as const)('%s', (id, current, area, parallels, length, celsius, volts) => {
    const run = { area, parallels, length };
    const loop = working({
      sources: [straight('A', 80, 0.02)],
      leads: [
        { name: 'out', side: 'electrode', ...run },
        { name: 'back', side: 'work', ...run },
      ],
      arc: { holds: 'current', current, voltage: 45 },
      ambient: kelvin(30),
      lead_temperature: kelvin(celsius),
    });
    const wanted = output<Figures>(id);
    close(loop.loss_W, wanted['P_W']!);
    close(loop.needed_V - 45, wanted[volts]!);
  });

  it('voltage at the terminals with a joint of one volt', () => {
    const run = { area: 95e-6, parallels: 2, length: 30 };
    const clamp = { name: 'clamp', resistance: 0.001, at: 'end' } as const;
    const loop = working({
      sources: [straight('A', 80, 0.02)],
      leads: [
        { name: 'out', side: 'electrode', ...run },
        { name: 'back', side: 'work', ...run, joints: [clamp] },
      ],
      arc: { holds: 'current', current: 1000, voltage: 45 },
      ambient: kelvin(30),
      lead_temperature: kelvin(60),
    });
    close(loop.needed_V, output<number>('cond-terminal-voltage'));
  });

  it('equal sources behind unlike leads share by conductance', () => {
    const wanted = output<number[]>('cond-parallel-share');
    const lead = (mm2: number, length: number): Lead => ({
      name: `${mm2}`,
      side: 'electrode',
      area: mm2 * 1e-6,
      length,
    });
    // Sources stiff enough that the leads alone decide.
    const branches = [lead(95, 20), lead(95, 25), lead(120, 30)].map((own, i) =>
      straight(`${i}`, 60, 1e-5, [own]),
    );
    const arc = { holds: 'current', current: 1000 } as const;
    const loop = working({
      sources: branches,
      leads: [],
      arc,
      ambient: kelvin(20),
      lead_temperature: kelvin(20),
    });
    for (const [i, source] of loop.sources.entries()) close(source.current_A, wanted[i]!, 5e-4);
  });
});

describe('heat off a cable', () => {
  it('free convection from a cylinder', () => {
    close(cylinderNusselt(0.69, 0.69 * 2.63e9), output<number>('rate-conv-cc'));
  });

  it('surface of a 95 mm2 lead at 70 degC', () => {
    close(cableSurfaceLoss(0.0195, kelvin(70), kelvin(30), 0.9), output<number>('rate-surface-loss'));
  });

  it('radiation alone, by the difference that the emissivity makes', () => {
    const perMetre =
      cableSurfaceLoss(1 / Math.PI, 400, 305, 0.85) - cableSurfaceLoss(1 / Math.PI, 400, 305, 0);
    close(perMetre, output<number>('rate-radiation'), 2e-6);
  });

  it('resistance of the covering: between conductor and surface', () => {
    const covering = { conductor_diameter: 0.0143, outside_diameter: 0.0195, thermal_resistivity: 5 };
    const loss = leadHeatLoss({ area: 95e-6, covering }, kelvin(85), kelvin(30));
    const surface = kelvin(85) - loss * output<number>('rate-th-insulation');
    close(cableSurfaceLoss(0.0195, surface, kelvin(30), 0.9), loss, 1e-8);
  });

  it('welding cable: current, surface and time constant of the model', () => {
    type Row = { I_A: number; tau_s: number };
    const { max_relative_deviation_from_table: _, ...rows } =
      output<Record<string, Row>>('rate-model-vs-vde');
    for (const [mm2, { I_A, tau_s }] of Object.entries(rows)) {
      const lead: Lead = { name: mm2, side: 'work', area: Number(mm2) * 1e-6, length: 10 };
      close(leadAmpacity(lead, kelvin(85), kelvin(30)), I_A, 1e-8);
      close((leadHeatCapacity(lead) * 55) / leadHeatLoss(lead, kelvin(85), kelvin(30)), tau_s, 1e-8);
    }
  });

  it('welding cable: within 15 % of the table from memory, and below it', () => {
    const table = output<Record<string, number[]>>('rate-vde-0298-4');
    for (const [mm2, [continuous]] of Object.entries(table)) {
      const lead: Lead = { name: mm2, side: 'work', area: Number(mm2) * 1e-6, length: 10 };
      const ratio = leadAmpacity(lead, kelvin(85), kelvin(30)) / continuous!;
      expect(ratio).toBeGreaterThan(0.85);
      expect(ratio).toBeLessThan(1);
    }
  });

  const INCH = 0.0254;
  const builds = entries.find((entry) => entry.id === 'rate-model-vs-310-17')!.inputs as {
    conductor_in_wall_in_R75: Record<string, [number, number, number]>;
  };
  const wire = (size: string): Lead => {
    const [inches, wall] = builds.conductor_in_wall_in_R75[size]!;
    const covering: LeadCovering = {
      conductor_diameter: inches * INCH,
      outside_diameter: (inches + 2 * wall) * INCH,
      thermal_resistivity: 4,
    };
    return { name: size, side: 'work', area: american(size).area, length: 10, covering };
  };

  it.each(Object.keys(builds.conductor_in_wall_in_R75))(
    'NEC 310.17, %s AWG: the model and the table',
    (size) => {
      type Row = Record<string, { model_A: number; ratio_to_table: number }>;
      const wanted = output<Record<string, Row>>('rate-model-vs-310-17')[size]!;
      const table = output<Record<string, number[]>>('rate-nec-310-17')[size]!;
      for (const [i, celsius] of [60, 75, 90].entries()) {
        const amps = leadAmpacity(wire(size), kelvin(celsius), kelvin(30));
        // The worked values bring table 8 to temperature with IEC's coefficient, ours with NEC's own.
        close(amps, wanted[celsius]!.model_A, 1e-3);
        expect(Math.abs(amps / table[i]! - 1)).toBeLessThan(0.15);
      }
    },
  );

  it('ambient correction: nearly the root of the margins', () => {
    const factors = output<Figures>('rate-ambient');
    for (const [limit, wanted] of [
      [75, factors['75C 30->40']!],
      [90, factors['90C 30->40']!],
      [60, factors['60C 30->40']!],
    ] as const) {
      const lead = wire('2/0');
      const factor =
        leadAmpacity(lead, kelvin(limit), kelvin(40)) / leadAmpacity(lead, kelvin(limit), kelvin(30));
      expect(Math.abs(factor / wanted - 1)).toBeLessThan(0.03);
    }
  });
});

describe('lead temperature in time', () => {
  const facts = {
    resistance_20: 0.000206,
    conductance: 0.736027738,
    capacity: 451.610849,
    ambient: kelvin(40),
  };
  const lump = linearHeatModel(facts);

  it('steady state, time constant and the first six minutes', () => {
    const wanted = output<Figures>('rate-transient-closed');
    const steady = steadyTemperature(lump, 500);
    expect(steady.kind).toBe('steady');
    if (steady.kind === 'steady') close(steady.temperature_K - 273.15, wanted['Tinf_C']!);
    const [course] = leadTemperatures([lump], () => [500], [{ arc: true, duration: 360 }]);
    expect(course!.peak_K - 273.15).toBeCloseTo(wanted['T_after_360s_from_ambient_C']!, 5);
  });

  it('six minutes on, four off, until it repeats', () => {
    const wanted = output<Figures>('rate-transient-cycle');
    const cycle = [
      { arc: true, duration: 360 },
      { arc: false, duration: 240 },
    ];
    const [course] = leadTemperatures([lump], () => [500], Array.from({ length: 40 }, () => cycle).flat());
    expect(course!.peak_K - 273.15).toBeCloseTo(wanted['peak_C']!, 5);
    expect(course!.history.at(-1)!.temperature_K - 273.15).toBeCloseTo(wanted['valley_C']!, 5);
  });

  it('runaway', () => {
    const limit = output<number>('rate-runaway');
    close(runawayCurrent(facts.conductance, facts.resistance_20 * 0.00393), limit);
    expect(steadyTemperature(lump, limit * 0.999).kind).toBe('beyond_range');
    expect(steadyTemperature(lump, limit * 1.001).kind).toBe('runaway');
  });

  it('factor on the current of a duty, and how hopeful the quick rule is', () => {
    const wanted = output<number[]>('rate-duty-factor');
    for (const [i, share] of [0.85, 0.6, 0.35, 0.2, 0.08].entries()) {
      close(cableDutyFactor(share, 300, 520.5), wanted[i]!);
    }
    for (const [share, row] of Object.entries(output<Record<string, Figures>>('rate-duty-sqrt-error'))) {
      for (const [periods, error] of Object.entries(row)) {
        const factor = cableDutyFactor(Number(share), Number(periods), 1);
        close(1 / Math.sqrt(Number(share)) / factor - 1, error, 1e-7);
      }
    }
  });

  it('a duty of the factor’s current just reaches the temperature of the continuous one', () => {
    // Without resistance feedback, as the factor assumes.
    const plain = { ...lump, resistanceAt: () => 0.000206, resistanceSlope: 0 };
    const timeConstant = facts.capacity / facts.conductance;
    const factor = cableDutyFactor(0.6, 300, timeConstant);
    const cycle = [
      { arc: true, duration: 180 },
      { arc: false, duration: 120 },
    ];
    const [course] = leadTemperatures(
      [plain],
      () => [400 * factor],
      Array.from({ length: 60 }, () => cycle).flat(),
    );
    const continuous = facts.ambient + (400 ** 2 * 0.000206) / facts.conductance;
    expect(course!.peak_K).toBeCloseTo(continuous, 4);
  });
});

describe('power sources', () => {
  it('conventional load voltage (memory)', () => {
    for (const [amps, volts] of Object.entries(output<Figures>('ps-u2-mma'))) {
      expect(conventionalLoadVoltage(Number(amps))).toBe(volts);
    }
  });

  it('duty: the glossary’s 300 A at 60 % is six minutes in ten', () => {
    expect(permissibleMinutes({ rating: [{ current: 300, duty: 0.6 }] }, 300)).toBeCloseTo(
      output<Figures>('ps-duty-def')['load_min']!,
      12,
    );
  });

  it('duty at another current, and back', () => {
    const plate = { rating: [{ current: 1000, duty: 0.6 }], current_most: 1200 };
    const { X2, I_100_A } = output<{ X2: number[]; I_100_A: number }>('ps-duty-scale');
    for (const [i, current] of [774.596669, 800, 900, 1200].entries()) {
      close(permissibleMinutes(plate, current) / 10, X2[i]!);
      if (X2[i]! < 1) close(permittedCurrent(plate, X2[i]! * 10), current);
    }
    close(permittedCurrent(plate, 10), I_100_A);
    expect(permissibleMinutes(plate, 1201)).toBe(0);
  });

  it('input power and line current', () => {
    const wanted = output<Figures>('ps-input-kva');
    const drawn = inputPower(
      { efficiency: 0.85, power_factor: 0.9, mains: { voltage: 400, phases: 3 } },
      wanted['P_out_W']!,
    )!;
    close(drawn.power_W, wanted['P_in_W']!);
    close(drawn.apparent_VA!, wanted['S_VA']!);
    close(drawn.line_current_A!, wanted['I_line_A']!);
  });

  it('effective supply current', () => {
    close(effectiveSupplyCurrent(83, 5, 0.6), output<number>('rate-i1eff'));
  });

  it('current that a drooping source gives at a voltage', () => {
    close(
      sourceCurrent({ kind: 'drooping', no_load_voltage: 80, slope: 0.02 }, 52.147),
      output<number>('ps-ocv-margin'),
    );
  });

  const held = { holds: 'current', current: 1000 } as const;
  it('two drooping sources in parallel', () => {
    const wanted = output<Figures>('ps-parallel-droop');
    const sources = [straight('1', 80, 0.05), straight('2', 78, 0.06)];
    const loop = working({ sources, leads: [], arc: held, ambient: kelvin(30) });
    close(loop.available_V, wanted['U_V']!);
    close(loop.sources[0]!.current_A, wanted['I1_A']!);
    close(loop.sources[1]!.current_A, wanted['I2_A']!);
    // The same point, now with that voltage held.
    const arc = { holds: 'voltage', voltage: loop.available_V } as const;
    const back = working({ sources, leads: [], arc, ambient: kelvin(30) });
    close(back.current_A, 1000, 1e-8);
  });

  it.each([
    ['ps-parallel-cv', false, 'U_V'],
    ['ps-parallel-ballast', true, 'U_common_V'],
  ] as const)('two flat sources, %s', (id, ballast, volts) => {
    const own: readonly Lead[] = ballast
      ? [{ name: 'own', side: 'electrode', area: 95e-6, length: 10, resistance: 0.0002 }]
      : [];
    const wanted = output<Figures>(id);
    const loop = working({
      sources: [straight('1', 48, 0.002, own), straight('2', 47.5, 0.002, own)],
      leads: [],
      arc: held,
      ambient: kelvin(20),
      lead_temperature: kelvin(20),
    });
    close(loop.available_V, wanted[volts]!);
    close(loop.sources[0]!.current_A, wanted['I1_A']!);
    close(loop.sources[1]!.current_A, wanted['I2_A']!);
  });

  it.each([
    ['cc_A', 0.2],
    ['cv_A', 0.02],
  ] as const)('current for five volts more of arc, %s', (key, slope) => {
    const sources = [straight('A', 100, slope)];
    const at = (voltage: number): number =>
      working({ sources, leads: [], arc: { holds: 'voltage', voltage }, ambient: kelvin(30) }).current_A;
    close(at(45) - at(40), output<Figures>('ps-slope-sensitivity')[key]!, 1e-8);
  });
});
