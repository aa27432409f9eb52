import { formatAmount, type MeasureCheck, READING_UNITS, type UnitSystem } from '@furrow/engine';

/** A reading of a check in words, on the scale of the instrument it is read from. */
export function readingText({ unit }: MeasureCheck, value: number, system: UnitSystem): string {
  const { quantity, perSi } = READING_UNITS[unit];
  const options = unit === 'mV' || unit === 's' ? { unit } : {};
  return formatAmount(value / perSi, quantity, system, options);
}

/** Both ends of the band of a check. */
export function bandText(check: MeasureCheck, system: UnitSystem): string {
  return `${readingText(check, check.least, system)} to ${readingText(check, check.most, system)}`;
}
