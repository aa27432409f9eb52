import { readFileSync } from 'node:fs';
import {
  type Composition,
  carbonEquivalentCEN,
  carbonEquivalentCET,
  coolingTimeOfLine,
  coolingTimeThick,
  coolingTimeThin,
  crackingParameterPcm,
  groundArea,
  hardnessBand,
  hardnessByFormulas,
  keptHeat,
  lineSourceRise,
  martensiteHardness,
  preheatHydrogenControl,
  preheatMethodB,
  preheatPrequalified,
  type Restraint,
  thermalOf,
  transformationOf,
  transitionThickness,
} from '@furrow/engine';
import { describe, expect, it } from 'vitest';

/**
 * Formulas of heat and metal against published and worked values, kept in heat-metal.json in the units of their
 * sources. Each entry there says whether it was read in a public text, recalled, or derived.
 */
interface Entry {
  readonly inputs: unknown;
  readonly output: unknown;
}

const published = JSON.parse(readFileSync(new URL('./heat-metal.json', import.meta.url), 'utf8')) as Record<
  string,
  Entry
>;

function inputs<T>(id: string): T {
  return published[id]!.inputs as T;
}

function output<T>(id: string): T {
  return published[id]!.output as T;
}

const [steelA, steelB] = inputs<(Composition & { name: string })[]>('en1011.cet').map(
  ({ name: _name, ...composition }) => composition,
) as [Composition, Composition];
/** Values are kept to eight digits. */
const DIGITS = 1e-6;

function expectClose(value: number, expected: number, within = DIGITS): void {
  expect(Math.abs(value - expected)).toBeLessThanOrEqual(within * Math.max(1, Math.abs(expected)));
}

const celsius = (value: number): number => value + 273.15;

describe('carbon equivalents', () => {
  it('CET, EN 1011-2 (memory)', () => {
    const { 'steel A': a, 'steel B': b } = output<Record<string, number>>('en1011.cet');
    expectClose(carbonEquivalentCET(steelA), a!);
    expectClose(carbonEquivalentCET(steelB), b!);
  });

  it('Pcm, Ito and Bessyo (memory)', () => {
    const [a, b] = output<number[]>('ce.pcm');
    expectClose(crackingParameterPcm(steelA), a!);
    expectClose(crackingParameterPcm(steelB), b!);
  });

  it('CEN, Yurioka (memory)', () => {
    const [a, b] = output<{ CEN: number }[]>('ce.cen');
    expectClose(carbonEquivalentCEN(steelA), a!.CEN);
    expectClose(carbonEquivalentCEN(steelB), b!.CEN);
  });
});

describe('preheat, EN 1011-2 method B (memory)', () => {
  // a steel of carbon alone has its carbon as CET
  const cases = inputs<{ CET: number; d_mm: number; HD_ml_100g: number; Q_kJ_mm: number }[]>('en1011.tp');
  it.each(cases.map((each, index) => [each, output<number[]>('en1011.tp')[index]!] as const))(
    '%o: %d degC',
    ({ CET, d_mm, HD_ml_100g, Q_kJ_mm }, expected) => {
      const { temperature } = preheatMethodB({
        composition: { C: CET },
        thickness: d_mm / 1000,
        hydrogen: HD_ml_100g,
        heatInput: Q_kJ_mm * 1e6,
      });
      expectClose(temperature - 273.15, expected);
    },
  );

  const parts = inputs<{ CET: number; d_mm: number; HD: number; Q: number }[]>('en1011.tp_parts');
  it.each(
    parts.map(
      (each, index) => [each, output<{ parts: number[]; sum: number }[]>('en1011.tp_parts')[index]!] as const,
    ),
  )('the four parts of %o add up', ({ CET, d_mm, HD, Q }, expected) => {
    const result = preheatMethodB({
      composition: { C: CET },
      thickness: d_mm / 1000,
      hydrogen: HD,
      heatInput: Q * 1e6,
    });
    const { ofCarbon, ofThickness, ofHydrogen, ofHeat } = result;
    [ofCarbon, ofThickness, ofHydrogen, ofHeat].forEach((part, index) => {
      expectClose(part, expected.parts[index]!);
    });
    expectClose(ofCarbon + ofThickness + ofHydrogen + ofHeat, expected.sum);
  });
});

describe('preheat, hydrogen control', () => {
  const COLUMNS = [0.17, 0.22, 0.27, 0.32, 0.37];
  const thick = 0.0508;

  it('has the index 12 Pcm + log10 H (memory)', () => {
    const expected = output<{ SI: number }[]>('aws.susc');
    inputs<{ Pcm: number; H: number }[]>('aws.susc').forEach(({ Pcm, H }, index) => {
      expectClose(preheatHydrogenControl({ C: Pcm }, H, thick, 'low').index, expected[index]!.SI);
    });
  });

  it('finds the groups of the table (memory)', () => {
    output<string[]>('aws.susc_table').forEach((row, level) => {
      const hydrogen = [5, 10, 30][level]!;
      const groups = COLUMNS.map((pcm) => preheatHydrogenControl({ C: pcm }, hydrogen, thick, 'low').group);
      expect(groups.join(' ')).toBe(row);
    });
  });

  it('finds every cell of the restraint table that a group leads to (memory)', () => {
    const ways: Record<string, readonly [number, number]> = {
      A: [0, 5],
      B: [0, 10],
      C: [0, 30],
      D: [1, 30],
      E: [2, 30],
      F: [3, 30],
      G: [4, 30],
    };
    const thicknesses = [6, 15, 30, 60, 90];
    output<string[][]>('aws.restraint').forEach((rows, restraint) => {
      rows.forEach((row, place) => {
        row.split(' ').forEach((cell, group) => {
          const [column, hydrogen] = ways['ABCDEFG'[group]!]!;
          const found = preheatHydrogenControl(
            { C: COLUMNS[column]! },
            hydrogen,
            thicknesses[place]! / 1000,
            (['low', 'medium', 'high'] satisfies Restraint[])[restraint]!,
          );
          expect(found.none).toBe(cell === '<65');
          expectClose((found.temperature! - 273.15) * 1.8 + 32, Number(cell.replace('<', '')));
        });
      });
    });
  });

  it('agrees with the one cell that was read in public (confirmed)', () => {
    const { thickness_in } = inputs<{ thickness_in: number }>('aws.restraint_ex');
    const expected = output<{ group: string; preheat_C: number }>('aws.restraint_ex');
    const found = preheatHydrogenControl({ C: 0.275 }, 10, thickness_in * 0.0254, 'high');
    expect(found.group).toBe(expected.group);
    expectClose(found.temperature! - 273.15, expected.preheat_C);
  });

  it('has the prequalified table of category B (confirmed)', () => {
    const [, categoryB] = output<number[][]>('aws.prequal');
    expect([19, 38.1, 63.5, 63.6].map((mm) => Math.round(preheatPrequalified(mm / 1000) - 273.15))).toEqual(
      categoryB,
    );
  });
});

describe('cooling time from 800 to 500 degC', () => {
  it('EN 1011-2, thick plate (memory)', () => {
    inputs<{ T0: number; Q: number; F3: number }[]>('en1011.t85_3d').forEach(({ T0, Q, F3 }, index) => {
      expectClose(coolingTimeThick(Q * 1e6, celsius(T0), F3), output<number[]>('en1011.t85_3d')[index]!);
    });
  });

  it('EN 1011-2, thin plate (memory)', () => {
    inputs<{ T0: number; Q: number; d_mm: number; F2: number }[]>('en1011.t85_2d').forEach((each, index) => {
      const time = coolingTimeThin(each.Q * 1e6, each.d_mm / 1000, celsius(each.T0), each.F2);
      expectClose(time, output<number[]>('en1011.t85_2d')[index]!);
    });
  });

  it('transition thickness (memory), where both formulas give the same', () => {
    inputs<{ T0: number; Q: number }[]>('en1011.dt').forEach(({ T0, Q }, index) => {
      const thickness = transitionThickness(Q * 1e6, celsius(T0));
      expectClose(thickness * 1000, output<number[]>('en1011.dt')[index]!);
      const thin = coolingTimeThin(Q * 1e6, thickness, celsius(T0), 1);
      expectClose(thin / coolingTimeThick(Q * 1e6, celsius(T0), 1), 1, 1e-9);
    });
  });

  // k = 40 W/(m K), 4 MJ/(m3 K), as the entries state
  const plate = { conductivity: 40, heatCapacity: 4e6 };

  it('the exact plate, through the transition (derived)', () => {
    const { E_J_mm } = inputs<{ E_J_mm: number }>('cj.t85_exact');
    for (const { d, exact } of output<{ d: number; exact: number }[]>('cj.t85_exact')) {
      const time = coolingTimeOfLine({ ...plate, energy: E_J_mm * 1000, thickness: d / 1000 }, celsius(20));
      expectClose(time, exact, 1e-6);
    }
  });

  it('the line source behind it, at eleven points (derived)', () => {
    const { E_J_m, d_mm, y_mm_z_mm_t_s } = inputs<{
      E_J_m: number;
      d_mm: number;
      y_mm_z_mm_t_s: [number, number, number][];
    }>('cj.line');
    const { exact } = output<{ exact: number[] }>('cj.line');
    y_mm_z_mm_t_s.forEach(([y, z, t], index) => {
      const rise = lineSourceRise({ ...plate, energy: E_J_m, thickness: d_mm / 1000 }, y / 1000, z / 1000, t);
      expectClose(rise, exact[index]!, 1e-6);
    });
  });

  it('its peak is the one of the fast source in a thick plate (derived)', () => {
    const { thick } = inputs<{ thick: { q_over_v_J_m: number; rho_c: number; r_mm: number[] } }>('peak.fast');
    const expected = output<{ thick: number[] }>('peak.fast').thick;
    thick.r_mm.forEach((r, index) => {
      const line = {
        energy: thick.q_over_v_J_m,
        thickness: 1,
        conductivity: 40,
        heatCapacity: thick.rho_c,
      };
      // the peak at r comes when 4 a t = r2
      const time = ((r / 1000) ** 2 * thick.rho_c) / (4 * 40);
      expectClose(lineSourceRise(line, 0, r / 1000, time), expected[index]!, 1e-6);
      expect(lineSourceRise(line, 0, r / 1000, 0.99 * time)).toBeLessThan(expected[index]!);
      expect(lineSourceRise(line, 0, r / 1000, 1.01 * time)).toBeLessThan(expected[index]!);
    });
  });
});

describe('hardness beside the arc (memory)', () => {
  const values = (steel: Composition, time: number): number[] =>
    hardnessByFormulas(steel, time).map(({ hardness }) => hardness);
  const steels: Record<string, Composition> = { A: steelA, B: steelB };

  it.each([
    ['haz.yurioka87', 0],
    ['haz.yurioka81', 1],
    ['haz.duren', 2],
    ['haz.suzuki', 3],
  ] as const)('%s', (id, formula) => {
    inputs<{ steel: string; t85_s: number }[]>(id).forEach(({ steel, t85_s }, index) => {
      const expected = output<{ HV?: number; HV_clipped?: number }[]>(id)[index]!;
      expectClose(values(steels[steel]!, t85_s)[formula]!, (expected.HV_clipped ?? expected.HV)!);
    });
  });

  it('the four agree as closely as they should', () => {
    inputs<{ t85_s: number[] }>('haz.compare').t85_s.forEach((time, index) => {
      output<number[][]>('haz.compare')[index]!.forEach((expected, formula) => {
        expectClose(values(steelA, time)[formula]!, expected);
      });
    });
  });

  it('the band is wider than the formulas by the published scatter (confirmed)', () => {
    const all = values(steelA, 5);
    const band = hardnessBand(steelA, 5, 5);
    expectClose(band.most - Math.max(...all), output<number>('haz.accuracy'));
    expectClose(Math.min(...all) - band.least, output<number>('haz.accuracy'));
  });

  it('a carburised film is hard whatever the plate (derived)', () => {
    inputs<{ C: number[] }>('gouge.carbmart').C.forEach((carbon, index) => {
      expectClose(martensiteHardness(carbon), output<number[]>('gouge.carbmart')[index]!);
    });
  });
});

describe('metals', () => {
  const at = (family: 'carbon_steel' | 'austenitic_stainless', kelvin: number) => {
    const metal = thermalOf(family);
    const place = (kelvin - metal.start) / metal.step;
    const low = Math.floor(place + 1e-9);
    const read = (table: Float64Array): number =>
      table[low]! + (table[low + 1]! - table[low]!) * Math.max(0, place - low);
    return { enthalpy: read(metal.enthalpy), conductivity: read(metal.conductivity) };
  };

  it('carbon steel conducts and takes up heat after EN 1993-1-2 (confirmed)', () => {
    const { T } = inputs<{ T: number[] }>('mat.ec3_k');
    T.forEach((t, index) => {
      const { enthalpy, conductivity } = at('carbon_steel', celsius(t));
      expectClose(conductivity, output<number[]>('mat.ec3_k')[index]!);
      expectClose(enthalpy / 1e9, output<{ J_mm3: number[] }>('mat.ec3_h').J_mm3[index]!);
    });
  });

  it('carbon steel melts with the heat built up from its properties (derived)', () => {
    expectClose(
      at('carbon_steel', celsius(1500)).enthalpy / 1e9,
      output<{ J_mm3: number }>('mat.melt_ec3').J_mm3,
    );
  });

  it('stainless steel conducts after Mills (confirmed), read between entries of the table', () => {
    const { K } = inputs<{ K: number[] }>('mat.316');
    K.forEach((kelvin, index) => {
      const expected = output<{ k: number }[]>('mat.316')[index]!.k;
      expectClose(at('austenitic_stainless', kelvin).conductivity, expected, 1e-4);
    });
  });

  it('the edge of the heated zone is 730 degC where nothing else is known (confirmed)', () => {
    expectClose(transformationOf('carbon_steel')!.ac1 - 273.15, output<number>('gouge.haz730'));
  });
});

describe('heat kept', () => {
  it('counts what leaves with the melt as published definitions do (confirmed)', () => {
    const { A_mm2, v_mm_s, E_J_mm3, V, I } = inputs<Record<string, number>>('eff.def') as Record<
      'A_mm2' | 'v_mm_s' | 'E_J_mm3' | 'V' | 'I',
      number
    >;
    const { melt_power_W, product_eta_a_eta_m } = output<Record<string, number>>('eff.def');
    const pass = {
      current: I,
      voltage: V,
      travel: v_mm_s / 1000,
      area: A_mm2 * 1e-6,
      face: 0.02,
      duration: 1,
    };
    const { gross, share } = keptHeat(pass, { energy: E_J_mm3 * 1e9, face: 1e6 }, {});
    expectClose(gross * pass.travel, I * V);
    // with no superheat the melt takes along what melting takes
    const { consumable_electrode } = output<Record<string, number>>('eff.arc');
    expectClose(consumable_electrode! - share.most, product_eta_a_eta_m!);
    expectClose((consumable_electrode! - share.most) * I * V, melt_power_W!);
  });
});

it('grinding all round a groove takes off what geometry says (derived)', () => {
  inputs<{ w: number; D: number; g: number }[]>('gouge.offset').forEach(({ w, D, g }, index) => {
    const { A0, A1 } = output<{ A0: number; A1: number }[]>('gouge.offset')[index]!;
    const ground = groundArea({ areaPerLength: A0, topWidth: w, depth: D, seamLength: 1 }, g);
    expect(Math.abs(ground / A1 - 1)).toBeLessThan(2e-3);
  });
});
