import { fromUnit, type UnitSystem } from '@furrow/engine';

/** A length of the groove as a gauge reads it: tenths of a millimetre or hundredths of an inch, no unit; for columns that name it once. */
export function fineNumber(metres: number, units: UnitSystem): string {
  const text = units === 'inch' ? (metres / 0.0254).toFixed(2) : (metres * 1000).toFixed(1);
  return Number(text) === 0 ? text.replace('-', '') : text.replace('-', '−');
}

/** The same for a number of a result. */
export function fineStated(value_mm: number, units: UnitSystem): string {
  return fineNumber(fromUnit(value_mm, 'mm'), units);
}

/** Unit that goes with `fineNumber`. */
export function fineUnit(units: UnitSystem): 'in' | 'mm' {
  return units === 'inch' ? 'in' : 'mm';
}
