import { formatAmount, fromUnit, shownNumber, siOfShown, type UnitSystem } from '@furrow/engine';

/** A length of the groove as a gauge reads it: tenths of a millimetre or hundredths of an inch, no unit; for columns that name it once. */
export function fineNumber(metres: number, units: UnitSystem): string {
  const unit = fineUnit(units);
  const text = formatAmount(metres, 'length', units, { unit, decimals: units === 'inch' ? 2 : 1 });
  return text.slice(0, -unit.length - 1).replace('-', '−');
}

/** The same for a number of a result. */
export function fineStated(value_mm: number, units: UnitSystem): string {
  return fineNumber(fromUnit(value_mm, 'mm'), units);
}

/** Unit that goes with `fineNumber`. */
export function fineUnit(units: UnitSystem): 'in' | 'mm' {
  return units === 'inch' ? 'in' : 'mm';
}

/** Finest parts of an inch that a drawing is dimensioned in [-]. */
const PARTS = 64;
/** From here on a length is written in feet, and a dimension as a gauge reads it [in]. */
const DIMENSION_MOST = 24;
/** How far a length may be off such a part to have been meant as one [m]. */
const MEANT = 1e-7;

/**
 * A length that the drawing asks for, no unit: a fraction of an inch where it was stated as one, 3/8 rather than 0.38; else as a
 * gauge reads it.
 */
export function drawnNumber(metres: number, units: UnitSystem): string {
  const parts = Math.round(shownNumber(metres, 'length', 'inch') * PARTS);
  const meant = parts > 0 && Math.abs(metres - siOfShown(parts / PARTS, 'length', 'inch')) < MEANT;
  // from a quarter inch on lengths are written in sixteenths
  const written = meant && parts < DIMENSION_MOST * PARTS && (parts % 4 === 0 || parts < PARTS / 4);
  return units === 'inch' && written
    ? formatAmount(metres, 'length', 'inch').replace(/ in$/u, '')
    : fineNumber(metres, units);
}

/** What the drawing allows beyond a length and short of it; none is a plain 0 beside a fraction. */
export function drawnTolerance(plus: number, minus: number, units: UnitSystem): string {
  const [more, less] = [drawnNumber(plus, units), drawnNumber(minus, units)];
  const isFraction = more.includes('/') || less.includes('/');
  const plain = (metres: number, text: string): string => (metres === 0 && isFraction ? '0' : text);
  return `+${plain(plus, more)} −${plain(minus, less)}`;
}

/** A length that the drawing asks for, with its unit. */
export function drawnLength(metres: number, units: UnitSystem): string {
  return `${drawnNumber(metres, units)} ${fineUnit(units)}`;
}
