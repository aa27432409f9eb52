import type { Source } from '../limit/index.ts';

/** Density of an electrode's carbon, its copper coat counted as carbon [kg/m3] (judgement). */
const ELECTRODE_DENSITY = 1700;
/** Molar masses [g/mol]. */
const CARBON = 12.011;
const CARBON_MONOXIDE = 28.01;
/** Share of the burnt carbon that becomes carbon monoxide, from least to most: nobody has measured it (judgement) [-]. */
const CARBON_MONOXIDE_SHARE = { least: 0.1, most: 1 } as const;

/** Where the carbon monoxide of an electrode comes from. */
export const CARBON_MONOXIDE_SOURCE: Source = {
  text: 'mass balance of the electrode burnt off; the share that becomes carbon monoxide, 10 to 100 %, is judgement, no source',
  provenance: 'derived',
};

/** What an electrode gives off while its arc burns. */
export interface ElectrodeGas {
  /** Carbon burnt off [kg/s]. */
  readonly carbon: number;
  /** Carbon monoxide if little of the carbon becomes it [kg/s]. */
  readonly least: number;
  /** Carbon monoxide if all of the carbon becomes it: an upper bound [kg/s]. */
  readonly most: number;
}

/**
 * Carbon monoxide that an electrode gives off while its arc burns, as a range with an upper bound.
 *
 * Every kilogram of carbon makes at most 28.01 / 12.011 kg of carbon monoxide; the rest burns to carbon dioxide or
 * leaves as dust.
 *
 * @param wear - electrode burnt off [m/s], >= 0, from `predictWear`
 * @param diameter - diameter of the electrode [m], > 0
 * @returns carbon burnt and carbon monoxide given off [record]
 * @source derived: mass balance; share of the carbon: judgement, no source
 * @example
 * electrodeGas(0.0025, 0.0127).carbon * 60 // => 0.03230...
 * electrodeGas(0.0025, 0.0127).most * 60 // => 0.07533...
 */
export function electrodeGas(wear: number, diameter: number): ElectrodeGas {
  const carbon = wear * (Math.PI / 4) * diameter ** 2 * ELECTRODE_DENSITY;
  const made = (carbon * CARBON_MONOXIDE) / CARBON;
  return {
    carbon,
    least: CARBON_MONOXIDE_SHARE.least * made,
    most: CARBON_MONOXIDE_SHARE.most * made,
  };
}
