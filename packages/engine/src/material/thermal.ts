import { ZERO_CELSIUS } from '../quantity/index.ts';
import { METALS, type MetalFamily, type ThermalData } from './metals/index.ts';

const ROOM = 293.15;
/** The coldest plate a job can state, with room below it [K]. */
const START = ZERO_CELSIUS - 60;
/** Hits 20 degC and the 735 degC peak of carbon steel, so that the table turns where the metal does [K]. */
const STEP = 5;
/** Hotter than any melt that stays in a plate [K]. */
const END = ZERO_CELSIUS + 2200;

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
  readonly source: ThermalData['source'];
}

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
  const { melting, thermal } = METALS[family];
  const { density, meltingPoint, latentHeat } = melting;
  const { solid, conductivity, meltingRange, liquidHeat, source } = thermal;
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
