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
