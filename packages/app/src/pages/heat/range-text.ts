import {
  formatStated,
  formatStatedBand,
  type HeatRange,
  type StatedUnit,
  type UnitSystem,
} from '@furrow/engine';

/** A band from its lower to its upper end; one value where both read the same. */
export function rangeText({ least, most }: HeatRange, unit: StatedUnit, units: UnitSystem): string {
  const [low, high] = [Math.min(least, most), Math.max(least, most)];
  const [from, to] = [formatStated(low, unit, units), formatStated(high, unit, units)];
  return from === to ? to : formatStatedBand(low, high, unit, units);
}

/** Energy per length, in the unit a shop writes it in. */
export function perLengthText(kilojoules: number, units: UnitSystem): string {
  return units === 'inch' ? `${(25.4 * kilojoules).toFixed(1)} kJ/in` : `${kilojoules.toFixed(2)} kJ/mm`;
}

/** A band of energies per length. */
export function perLengthRange({ least, most }: HeatRange, units: UnitSystem): string {
  const unit = units === 'inch' ? ' kJ/in' : ' kJ/mm';
  const [low, high] = [perLengthText(least, units), perLengthText(most, units)];
  return low === high ? high : `${low.slice(0, -unit.length)} to ${high}`;
}
