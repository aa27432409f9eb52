import { formatAmount, type UnitSystem } from '@furrow/engine';

/** Heat of a part: watts as long as they are few, for a joint makes a few and a lead some thousands. */
export function heatText(watts: number, units: UnitSystem): string {
  return watts < 1000 ? `${watts.toFixed(0)} W` : formatAmount(watts, 'power', units);
}

/** Voltage along a part, as a meter on that range shows it. */
export function dropText(volts: number, units: UnitSystem): string {
  return volts < 1 ? `${(1000 * volts).toFixed(0)} mV` : formatAmount(volts, 'voltage', units);
}
