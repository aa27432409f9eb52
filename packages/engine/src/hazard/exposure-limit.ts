import type { Source } from '../limit/index.ts';
import type { Substance } from './substance.ts';

/** A set of limits by which air is judged; the same air may pass one and fail another. */
export type LimitSet = 'osha' | 'acgih' | 'eu';

/** Names of the sets as they are written. */
export const LIMIT_SET_NAMES: Readonly<Record<LimitSet, string>> = {
  osha: 'OSHA PEL',
  acgih: 'ACGIH TLV',
  eu: 'EU limit value',
};

/** Limit of one substance in one set. */
export interface ExposureLimit {
  /** Greatest concentration [mg/m3]. */
  readonly most: number;
  /** Over what it is taken: a shift of eight hours, or at any moment (a ceiling is not averaged). */
  readonly over: 'shift' | 'ceiling';
  /** As the source writes it. */
  readonly written: string;
  readonly source: Source;
}

const memory = (text: string): Source => ({ text, provenance: 'memory' });
const confirmed = (text: string): Source => ({ text, provenance: 'confirmed' });

/** Molar mass of the gases [g/mol]. */
const MOLAR_MASS = { carbon_monoxide: 28.01, nitrogen_dioxide: 46.0055, ozone: 47.998 } as const;
/** Volume of a mole at 25 degC and 101.3 kPa [L/mol]. */
const MOLAR_VOLUME = 24.45;

/**
 * Concentration by mass of a gas given in parts per million.
 *
 * mg/m3 = ppm M / 24.45, at 25 degC and 101.3 kPa.
 *
 * @param ppm - concentration by volume [ppm], >= 0
 * @param molarMass - molar mass [g/mol], > 0
 * @returns concentration [mg/m3]
 * @source 29 CFR 1910.1000, footnote convention (confirmed)
 * @example
 * massConcentration(50, 28.01) // => 57.2801636
 */
export function massConcentration(ppm: number, molarMass: number): number {
  return (ppm * molarMass) / MOLAR_VOLUME;
}

const solid = (most: number, source: Source, written = `${most} mg/m3`): ExposureLimit => ({
  most,
  over: 'shift',
  written,
  source,
});
const gas = (
  substance: keyof typeof MOLAR_MASS,
  ppm: number,
  source: Source,
  over: ExposureLimit['over'] = 'shift',
): ExposureLimit => ({
  most: massConcentration(ppm, MOLAR_MASS[substance]),
  over,
  written: `${over === 'ceiling' ? 'C ' : ''}${ppm} ppm`,
  source,
});

const Z1 = '29 CFR 1910.1000 Table Z-1';
const TLV = 'ACGIH TLV';

/** Limits by substance and set; a set that has none of a substance does not cover it. */
const LIMITS: Readonly<Record<Substance, Readonly<Partial<Record<LimitSet, ExposureLimit>>>>> = {
  iron_oxide: {
    osha: solid(10, confirmed(Z1), '10 mg/m3 as Fe2O3'),
    acgih: solid(5, memory(TLV), '5 mg/m3 respirable'),
  },
  copper: {
    osha: solid(0.1, confirmed('OSHA chemical data; NIOSH IDLH sheet')),
    acgih: solid(0.2, confirmed('NIOSH IDLH sheet; OSHA chemical data')),
  },
  manganese: {
    osha: {
      most: 5,
      over: 'ceiling',
      written: 'C 5 mg/m3',
      source: confirmed('OSHA chemical sampling page'),
    },
    acgih: solid(0.02, confirmed('OSHA chemical sampling page, 2013'), '0.02 mg/m3 respirable'),
    eu: solid(0.05, memory('Directive (EU) 2017/164'), '0.05 mg/m3 respirable'),
  },
  chromium_vi: {
    osha: solid(0.005, confirmed('29 CFR 1910.1026'), '5 ug/m3 (action level 2.5)'),
    acgih: solid(0.0002, memory(TLV), '0.2 ug/m3 inhalable'),
    eu: solid(0.005, memory('Directive 2004/37/EC as amended'), '5 ug/m3'),
  },
  nickel: {
    osha: solid(1, memory(Z1)),
    acgih: solid(0.2, memory(TLV), '0.2 mg/m3 insoluble, inhalable'),
    eu: solid(0.01, memory('Directive (EU) 2022/431'), '0.01 mg/m3 respirable'),
  },
  lead: {
    osha: solid(0.05, memory('29 CFR 1910.1025')),
    acgih: solid(0.05, memory(TLV)),
    eu: solid(0.03, memory('Directive (EU) 2024/869'), '0.03 mg/m3 inhalable'),
  },
  zinc_oxide: {
    osha: solid(5, memory(Z1), '5 mg/m3 fume'),
    acgih: solid(2, memory(TLV), '2 mg/m3 respirable'),
  },
  cadmium: {
    osha: solid(0.005, memory('29 CFR 1910.1027'), '5 ug/m3 (action level 2.5)'),
    acgih: solid(0.002, memory(TLV), '0.002 mg/m3 respirable'),
    eu: solid(0.001, memory('Directive (EU) 2019/983'), '0.001 mg/m3 inhalable'),
  },
  carbon_monoxide: {
    osha: gas('carbon_monoxide', 50, confirmed('secondary list of limits')),
    acgih: gas('carbon_monoxide', 25, confirmed('secondary list of limits')),
    eu: gas('carbon_monoxide', 20, memory('Directive (EU) 2017/164')),
  },
  nitrogen_dioxide: {
    osha: gas('nitrogen_dioxide', 5, confirmed('NIOSH IDLH sheet 10102-44-0'), 'ceiling'),
    acgih: gas('nitrogen_dioxide', 0.2, memory(TLV)),
    eu: gas('nitrogen_dioxide', 0.5, memory('Directive (EU) 2017/164')),
  },
  ozone: {
    osha: gas('ozone', 0.1, confirmed('OSHA chemical sampling page')),
    acgih: {
      ...gas('ozone', 0.05, confirmed('OSHA chemical sampling page')),
      written: '0.05 ppm, heavy work',
    },
  },
};

/**
 * Exposure limit of a substance in a set of limits.
 *
 * Limits change and differ by country; each carries its source. Where a set knows a range by the kind of work or
 * of dust, the least is taken and told.
 *
 * @param substance - substance [text], one of the Substance names
 * @param set - set of limits [text], osha, acgih or eu
 * @returns the limit, or null where the set has none [record]
 * @source 29 CFR 1910.1000 and 1910.1026, NIOSH and OSHA pages (confirmed); ACGIH and EU values (memory)
 * @example
 * exposureLimit('copper', 'osha').most // => 0.1
 * exposureLimit('copper', 'eu') // => null
 */
export function exposureLimit(substance: Substance, set: LimitSet): ExposureLimit | null {
  return LIMITS[substance][set] ?? null;
}
