import { formatStatedBand, type StatedUnit, type UnitSystem } from '@furrow/engine';

/** A band from its lower to its upper end with one unit, whichever of its ends is the greater; a dash where it is not known. */
export function rangeText(
  range: { readonly least: number; readonly most: number } | null,
  unit: StatedUnit,
  units: UnitSystem,
): string {
  if (range === null) return '–';
  const { least, most } = range;
  return formatStatedBand(Math.min(least, most), Math.max(least, most), unit, units);
}
