import { carbonSteelEnthalpy } from './carbon-steel-enthalpy.ts';
import type { MeltingData } from './melting-energy.ts';
import type { MetalFamily } from './metal-family.ts';
import type { Provenance, SourcedNumber } from './sourced.ts';
import { stainlessEnthalpy } from './stainless-enthalpy.ts';

const ROOM = 293.15;
const HANDBOOK = 'CRC Handbook and ASM Handbook, typical values';

function number(
  value: number,
  unit: string,
  [min, max]: readonly [number, number],
  source: string,
  provenance: Provenance = 'memory',
): SourcedNumber {
  return { value, unit, source, provenance, range: { min, max } };
}

const density = (
  value: number,
  range: readonly [number, number],
  source = HANDBOOK,
  provenance?: Provenance,
) => number(value, 'kg/m3', range, source, provenance);
const meltingPoint = (celsius: number, [min, max]: readonly [number, number], source = HANDBOOK) =>
  number(celsius + 273.15, 'K', [min + 273.15, max + 273.15], source);
const latentHeat = (value: number, range: readonly [number, number], source = HANDBOOK) =>
  number(value, 'J/kg', range, source);
const meanHeat = (value: number, range: readonly [number, number], source: string, provenance?: Provenance) =>
  number(value, 'J/(kg K)', range, source, provenance);

/** Mean of an enthalpy from 20 degC to the melting point, with a relative spread. */
function meanOf(
  enthalpy: (t: number) => number,
  celsius: number,
  spread: number,
  source: string,
): SourcedNumber {
  const mean = enthalpy(celsius + 273.15) / (celsius + 273.15 - ROOM);
  return meanHeat(mean, [mean * (1 - spread), mean * (1 + spread)], source, 'derived');
}

const FERRITIC_HEAT = meanOf(
  carbonSteelEnthalpy,
  1500,
  0.03,
  'EN 1993-1-2:2005 3.4.1.2 integrated to 1200 degC, its last value carried on to 1500 degC',
);
const FERRITIC_DENSITY = density(7850, [7800, 7870], 'EN 1993-1-2:2005', 'confirmed');
const STEEL_LATENT_HEAT = latentHeat(
  270e3,
  [247e3, 277e3],
  'handbook values from 247 kJ/kg (pure iron) to 277 kJ/kg (a published weld model)',
);

/** Handbook data of each family, from which its melting energy is worked out. */
export const MELTING_DATA: Readonly<Record<MetalFamily, MeltingData>> = {
  carbon_steel: {
    density: FERRITIC_DENSITY,
    specificHeat: FERRITIC_HEAT,
    meltingPoint: meltingPoint(1500, [1480, 1530]),
    latentHeat: STEEL_LATENT_HEAT,
  },
  low_alloy_steel: {
    density: FERRITIC_DENSITY,
    specificHeat: FERRITIC_HEAT,
    meltingPoint: meltingPoint(1500, [1470, 1530]),
    latentHeat: STEEL_LATENT_HEAT,
  },
  austenitic_stainless: {
    density: density(7900, [7850, 8030]),
    specificHeat: meanOf(
      stainlessEnthalpy,
      1450,
      0.05,
      'Mills 2002 fit for type 316 integrated, carried on from 1300 to 1450 degC',
    ),
    meltingPoint: meltingPoint(1450, [1400, 1455]),
    latentHeat: latentHeat(265e3, [250e3, 290e3]),
  },
  cast_iron: {
    density: density(7200, [6900, 7400]),
    specificHeat: meanHeat(
      650,
      [600, 720],
      'mean to the melting point, above the 500 J/(kg K) at room temperature',
    ),
    meltingPoint: meltingPoint(1175, [1130, 1260]),
    latentHeat: latentHeat(220e3, [210e3, 240e3]),
  },
  copper_alloy: {
    density: density(8960, [8300, 8960]),
    specificHeat: meanHeat(
      425,
      [400, 450],
      'mean to the melting point, above the 385 J/(kg K) at room temperature',
    ),
    meltingPoint: meltingPoint(
      1085,
      [900, 1240],
      'pure copper; brasses and bronzes lower, copper-nickels higher',
    ),
    latentHeat: latentHeat(205e3, [180e3, 240e3]),
  },
  nickel_alloy: {
    density: density(8470, [8100, 8900]),
    specificHeat: meanHeat(
      560,
      [520, 610],
      'mean to the melting point, above the 444 J/(kg K) at room temperature',
    ),
    meltingPoint: meltingPoint(1413, [1300, 1455]),
    latentHeat: latentHeat(297e3, [280e3, 310e3]),
  },
  manganese_steel: {
    density: density(7870, [7800, 7900]),
    specificHeat: meanHeat(
      640,
      [600, 680],
      'mean to the melting point, above the 520 J/(kg K) at room temperature',
    ),
    meltingPoint: meltingPoint(1390, [1340, 1420]),
    latentHeat: latentHeat(260e3, [240e3, 275e3]),
  },
};
