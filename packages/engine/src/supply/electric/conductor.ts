import { ZERO_CELSIUS } from '../../quantity/index.ts';
import { type ConductorSize, conductorSizeOf } from './conductor-size.ts';
import { copperResistance } from './copper.ts';
import type { Lead } from './lead.ts';

/** One conductor of a lead: its resistance per metre at any temperature [K]. */
export interface Conductor {
  readonly size: ConductorSize;
  readonly resistanceAt: (temperature: number) => number;
  /** Growth of the resistance with temperature [ohm/(m K)]. */
  readonly resistanceSlope: number;
}

/** The conductor of a lead that was checked before; throws on one that was not. */
export function conductorOf(lead: Lead): Conductor {
  const found = conductorSizeOf(lead.area, '');
  if (!found.ok) throw new Error(`lead ${lead.name} was not checked: ${found.issues[0]!.message}`);
  const size = found.value;
  const own = lead.resistance;
  const table = lead.metal === 'tinned copper' ? size.tinnedResistance : size.resistance;
  const reference = own ?? table;
  if (reference === undefined) throw new Error(`lead ${lead.name} was not checked: no tinned resistance`);
  const referenceTemperature = own === undefined ? size.referenceTemperature : '20 degC';
  const resistanceAt = (temperature: number): number =>
    copperResistance(reference, temperature, referenceTemperature);
  return { size, resistanceAt, resistanceSlope: resistanceAt(ZERO_CELSIUS + 1) - resistanceAt(ZERO_CELSIUS) };
}
