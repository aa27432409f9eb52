import { formatAmount, fromUnit, type MeasureCheck, READING_KINDS, type UnitSystem } from '@furrow/engine';

/** A reading of a check in words, on the scale of the instrument it is read from. */
export function readingText({ unit }: MeasureCheck, value: number, system: UnitSystem): string {
  const options = unit === 'mV' || unit === 's' ? { unit } : {};
  return formatAmount(fromUnit(value, unit), READING_KINDS[unit], system, options);
}

/** Both ends of the band of a check. */
export function bandText(check: MeasureCheck, system: UnitSystem): string {
  return `${readingText(check, check.least, system)} to ${readingText(check, check.most, system)}`;
}
