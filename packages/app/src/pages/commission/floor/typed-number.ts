import type { MeasureCheck, UnitSystem } from '@furrow/engine';
import { checkReading } from '@furrow/papers/words';

/** The unit in which the reading of a check is typed on the number keys. */
export function typedUnit(check: MeasureCheck, units: UnitSystem): string {
  return checkReading(check, check.expected, units).replace(/^[-−\d.,/\s]+/u, '');
}

/** The number of a typed reading, where its unit is the one of the keys; the whole text where it is another. */
export function numberOf(text: string, unit: string): string {
  const typed = text.trim();
  return typed.endsWith(unit) ? typed.slice(0, typed.length - unit.length).trimEnd() : typed;
}

/** The reading as it is kept: a bare number gets the unit of the keys, any other text stays as it is typed. */
export function withUnit(number: string, unit: string): string {
  if (number.trim() === '') return '';
  return /^[-\d.,/\s]+$/u.test(number) ? `${number} ${unit}` : number;
}
