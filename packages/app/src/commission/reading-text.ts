import { formatAmount, type MeasureCheck, READING_UNITS, type UnitSystem } from '@furrow/engine';
import { BEYOND } from './rig-checks.ts';

/** A reading of a check in words, on the scale of the instrument it is read from. */
export function readingText({ unit }: MeasureCheck, value: number, system: UnitSystem): string {
  const { quantity, perSi } = READING_UNITS[unit];
  const options = unit === 'mV' || unit === 's' ? { unit } : {};
  return formatAmount(value / perSi, quantity, system, options);
}

/** The band of a check: both ends, or the one it has. */
export function bandText(check: MeasureCheck, system: UnitSystem): string {
  const { least, most } = check;
  if (least <= -BEYOND) return `at most ${readingText(check, most, system)}`;
  if (most >= BEYOND) return `at least ${readingText(check, least, system)}`;
  return `${readingText(check, least, system)} to ${readingText(check, most, system)}`;
}
