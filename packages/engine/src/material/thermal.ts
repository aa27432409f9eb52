import { carbonSteelEnthalpy } from './carbon-steel-enthalpy.ts';
import { MELTING_DATA } from './melting-data.ts';
import type { MetalFamily } from './metal-family.ts';
import type { Provenance } from './sourced.ts';
import { stainlessEnthalpy } from './stainless-enthalpy.ts';

const ZERO_C = 273.15;
const ROOM = 293.15;
/** The coldest plate a job can state, with room below it [K]. */
const START = ZERO_C - 60;
/** Hits 20 degC and the 735 degC peak of carbon steel, so that the table turns where the metal does [K]. */
const STEP = 5;
/** Hotter than any melt that stays in a plate [K]. */
const END = ZERO_C + 2200;

/** Heat content and conduction of a metal on a table over temperature, latent heat inside. */
export interface ThermalMetal {
  /** Density, the same at all temperatures [kg/m3]. */
  readonly density: number;
  /** Temperature of the first entry [K]. */
  readonly start: number;
  /** Step from one entry to the next [K]. */
  readonly step: number;
  /** Temperature at which melting begins [K]. */
  readonly solidus: number;
  /** Temperature at which all is molten [K]. */
  readonly liquidus: number;
  /** Heat per volume from 20 degC, below 0 for colder metal, strictly increasing [J/m3]. */
  readonly enthalpy: Float64Array;
  /** Thermal conductivity [W/(m K)]. */
  readonly conductivity: Float64Array;
  /** What the table rests on. */
  readonly source: readonly { readonly text: string; readonly provenance: Provenance }[];
}

/** How one family conducts and takes up heat. */
interface ThermalData {
  /** Heat of the solid from 20 degC [J/kg] at a temperature [K]. */
  readonly solid: (temperature: number) => number;
  /** Conductivity [W/(m K)] at a temperature [K]. */
  readonly conductivity: (temperature: number) => number;
  /** From first melt to all molten [K]. */
  readonly meltingRange: number;
  /** Specific heat of the melt [J/(kg K)]. */
  readonly liquidHeat: number;
  readonly source: ThermalMetal['source'];
}

/** EN 1993-1-2:2005 3.4.1.3; constant below 20 and above 1200 degC. */
function carbonSteelConductivity(temperature: number): number {
  const celsius = Math.max(20, temperature - ZERO_C);
  return celsius < 800 ? 54 - 0.0333 * celsius : 27.3;
}

/** Fit to data of type 316 after Mills, stated from 25 to 1300 degC; constant outside. */
function stainlessConductivity(temperature: number): number {
  const kelvin = Math.min(1573.15, Math.max(298.15, temperature));
  return -7.301e-6 * kelvin ** 2 + 0.02716 * kelvin + 6.308;
}

/** Below 20 degC the specific heat at 20 degC is carried on. */
function carbonSteel(temperature: number): number {
  return temperature < ROOM ? 439.80176 * (temperature - ROOM) : carbonSteelEnthalpy(temperature);
}

const FROZEN = {
  text: 'conductivity above its last value held constant, also in the melt',
  provenance: 'derived',
} as const;
const MELT_HEAT = { text: 'specific heat of molten steel about 820 J/(kg K)', provenance: 'memory' } as const;

const FERRITIC: ThermalData = {
  solid: carbonSteel,
  conductivity: carbonSteelConductivity,
  meltingRange: 50,
  liquidHeat: 820,
  source: [
    {
      text: 'EN 1993-1-2:2005 3.4.1.2 and 3.4.1.3, conductivity and specific heat from 20 to 1200 degC',
      provenance: 'confirmed',
    },
    {
      text: 'above 1200 degC 650 J/(kg K) and 27.3 W/(m K) carried on; 270 kJ/kg taken up from 1450 to 1500 degC',
      provenance: 'derived',
    },
    MELT_HEAT,
    FROZEN,
  ],
};

/** A family known by its mean specific heat and one conductivity only. */
function constant(
  family: MetalFamily,
  conductivity: number,
  meltingRange: number,
  text: string,
): ThermalData {
  const heat = MELTING_DATA[family].specificHeat.value;
  return {
    solid: (temperature) => heat * (temperature - ROOM),
    conductivity: () => conductivity,
    meltingRange,
    liquidHeat: heat,
    source: [{ text, provenance: 'memory' }, FROZEN],
  };
}

const THERMAL_DATA: Readonly<Record<MetalFamily, ThermalData>> = {
  carbon_steel: FERRITIC,
  low_alloy_steel: FERRITIC,
  austenitic_stainless: {
    solid: stainlessEnthalpy,
    conductivity: stainlessConductivity,
    meltingRange: 50,
    liquidHeat: 820,
    source: [
      {
        text: 'fits to data of type 316 after Mills 2002, from 25 to 1300 degC, within 10 %',
        provenance: 'confirmed',
      },
      {
        text: 'specific heat carried on to 1450 degC; 265 kJ/kg taken up from 1400 to 1450 degC',
        provenance: 'derived',
      },
      MELT_HEAT,
      FROZEN,
    ],
  },
  cast_iron: constant(
    'cast_iron',
    50,
    50,
    'grey cast iron, typical: 50 W/(m K) at room temperature, mean specific heat to the melting point',
  ),
  copper_alloy: constant(
    'copper_alloy',
    401,
    20,
    'pure copper: 401 W/(m K) at room temperature; copper-nickels conduct 10 to 30 % of that, so their plate gets hotter near the groove',
  ),
  nickel_alloy: constant(
    'nickel_alloy',
    14.9,
    60,
    'nickel-chromium-iron alloy, typical: 14.9 W/(m K) at room temperature, rising when hot; pure nickel 90.9',
  ),
  manganese_steel: {
    ...constant('manganese_steel', 0, 50, ''),
    conductivity: stainlessConductivity,
    source: [
      {
        text: 'austenitic as stainless steel is: the conductivity of type 316 is taken',
        provenance: 'derived',
      },
      { text: 'mean specific heat to the melting point, handbook values', provenance: 'memory' },
      FROZEN,
    ],
  },
};

/**
 * Heat content and conductivity of a family of metals over temperature, for conduction.
 *
 * A table in even steps of 5 K from -60 to 2200 degC. The heat content counts from 20 degC per volume of cold
 * metal; latent heat is spread evenly between solidus and liquidus, so that at the liquidus it is the melting
 * energy of the family.
 *
 * @param family - family of the metal [text], one of the MetalFamily names
 * @returns density, tables and their sources [record]
 * @source EN 1993-1-2 (confirmed); Mills 2002 (confirmed); handbook values (memory)
 * @example
 * thermalOf('carbon_steel').enthalpy[16] // => 0
 * thermalOf('carbon_steel').conductivity[16] // => 53.334
 */
export function thermalOf(family: MetalFamily): ThermalMetal {
  const { density, meltingPoint, latentHeat } = MELTING_DATA[family];
  const { solid, conductivity, meltingRange, liquidHeat, source } = THERMAL_DATA[family];
  const liquidus = meltingPoint.value;
  const solidus = liquidus - meltingRange;
  const heatAt = (temperature: number): number => {
    const molten = Math.min(1, Math.max(0, (temperature - solidus) / meltingRange));
    const superheat = Math.max(0, temperature - liquidus);
    return solid(Math.min(temperature, liquidus)) + latentHeat.value * molten + liquidHeat * superheat;
  };
  const temperatures = Array.from(
    { length: Math.round((END - START) / STEP) + 1 },
    (_, i) => START + i * STEP,
  );
  return {
    density: density.value,
    start: START,
    step: STEP,
    solidus,
    liquidus,
    // Rounding must not leave a speck of heat at 20 degC.
    enthalpy: Float64Array.from(temperatures, (t) =>
      Math.abs(t - ROOM) < 1e-9 ? 0 : density.value * heatAt(t),
    ),
    conductivity: Float64Array.from(temperatures, conductivity),
    source,
  };
}
