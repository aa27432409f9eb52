import { ZERO_CELSIUS } from '../../quantity/index.ts';
import type { Provenance, SourcedAdvice, SourcedNumber } from '../sourced.ts';
import type { ThermalData } from './metal-data.ts';

const ROOM = 293.15;
const HANDBOOK = 'CRC Handbook and ASM Handbook, typical values';
const UNSOURCED = 'common practice, no source';

type Range = readonly [least: number, most: number];

function number(
  value: number,
  unit: string,
  [min, max]: Range,
  source: string,
  provenance: Provenance = 'memory',
): SourcedNumber {
  return { value, unit, source, provenance, range: { min, max } };
}

/** Density [kg/m3]. */
export function density(
  value: number,
  range: Range,
  source = HANDBOOK,
  provenance?: Provenance,
): SourcedNumber {
  return number(value, 'kg/m3', range, source, provenance);
}

/** Melting point, given in degC [K]. */
export function meltingPoint(celsius: number, [min, max]: Range, source = HANDBOOK): SourcedNumber {
  return number(celsius + ZERO_CELSIUS, 'K', [min + ZERO_CELSIUS, max + ZERO_CELSIUS], source);
}

/** Latent heat of melting [J/kg]. */
export function latentHeat(value: number, range: Range, source = HANDBOOK): SourcedNumber {
  return number(value, 'J/kg', range, source);
}

/** Mean specific heat from 20 degC to the melting point [J/(kg K)]. */
export function meanHeat(
  value: number,
  range: Range,
  source: string,
  provenance?: Provenance,
): SourcedNumber {
  return number(value, 'J/(kg K)', range, source, provenance);
}

/** Mean of an enthalpy from 20 degC to the melting point, given in degC, with a relative spread [J/(kg K)]. */
export function meanOf(
  enthalpy: (kelvin: number) => number,
  celsius: number,
  spread: number,
  source: string,
): SourcedNumber {
  const mean = enthalpy(celsius + ZERO_CELSIUS) / (celsius + ZERO_CELSIUS - ROOM);
  return meanHeat(mean, [mean * (1 - spread), mean * (1 + spread)], source, 'derived');
}

/** Greatest interpass temperature, given in degC [K]. */
export function interpassMost(
  celsius: number,
  source: string,
  provenance: Provenance = 'common practice',
): SourcedNumber {
  return { value: celsius + ZERO_CELSIUS, unit: 'K', source, provenance };
}

/** What shops do, without a source for it. */
export function custom(text: string): SourcedAdvice {
  return { text, source: UNSOURCED, provenance: 'common practice' };
}

export const POSITIVE = custom('Direct current, electrode positive.');
export const DC_ELECTRODE = custom('Copper-coated direct-current carbon electrodes.');
export const AC_OR_DC_ELECTRODE = custom(
  'Alternating-current carbon electrodes, or copper-coated direct-current ones.',
);
export const GRIND_SKIN = custom(
  'Grind the groove to bright metal before welding: carbon from the electrode is left in metal that melted and stayed.',
);

/** Said of conductivities that are carried on above the last value known. */
export const FROZEN = {
  text: 'conductivity above its last value held constant, also in the melt',
  provenance: 'derived',
} as const;
export const MELT_HEAT = {
  text: 'specific heat of molten steel about 820 J/(kg K)',
  provenance: 'memory',
} as const;

/** Fit to data of type 316 after Mills, stated from 25 to 1300 degC; constant outside [W/(m K)]. */
export function stainlessConductivity(temperature: number): number {
  const kelvin = Math.min(1573.15, Math.max(298.15, temperature));
  return -7.301e-6 * kelvin ** 2 + 0.02716 * kelvin + 6.308;
}

/** A metal known by its mean specific heat and one conductivity only. */
export function constantThermal(
  specificHeat: SourcedNumber,
  conductivity: number,
  meltingRange: number,
  text: string,
): ThermalData {
  const heat = specificHeat.value;
  return {
    solid: (temperature) => heat * (temperature - ROOM),
    conductivity: () => conductivity,
    meltingRange,
    liquidHeat: heat,
    source: [{ text, provenance: 'memory' }, FROZEN],
  };
}
