import { formatAmount, type JobField, parseAmount, type UnitSystem } from '@furrow/engine';
import { isPrice } from '@furrow/papers/words';
import { isBareNumber } from './box-unit.ts';

/** A number as typed: with a point, or with a comma that cannot stand for thousands. */
const NUMBER = /^[+-]?\d+(?:\.\d+|,\d{1,2})?$/u;

/**
 * What goes into the job file for what was typed; undefined takes the field out. Amounts stay as written, and take the
 * unit of their box where they have none; what should be a number and is none stays as text, so that the reader of the
 * job can say what is wrong with it.
 */
export function typedValue(field: JobField, typed: string, unit?: string): string | number | undefined {
  const text = typed.trim();
  if (text === '') return undefined;
  // a share below one is clear as it stands
  if (unit !== undefined && isBareNumber(text) && !(unit === '%' && Number(text) < 1))
    return `${text} ${unit}`;
  if (field.entry === 'number' && NUMBER.test(text)) return Number(text.replace(',', '.'));
  return text;
}

/** What a field shows: what was typed as long as it says what the file has, else what the file has. */
export function shownText(
  field: JobField,
  typed: string | undefined,
  written: string | undefined,
  unit?: string,
): string {
  if (typed !== undefined) {
    const value = typedValue(field, typed, unit);
    if ((value === undefined ? undefined : String(value)) === written) return typed;
  }
  return written ?? '';
}

/** What stands in for an empty field, as a shop that works in inches reads it; as the file would have it for others. */
export function fallbackText({ entry, fallback, kind, path }: JobField, units: UnitSystem): string {
  // nothing costs nothing for want of a price
  if (fallback === 0 && isPrice(path)) return 'no price';
  const text = String(fallback);
  if (entry === 'choice') return text.replaceAll('_', ' ');
  const amount = units === 'inch' && kind !== undefined ? parseAmount(text, kind) : undefined;
  return kind !== undefined && amount?.ok === true ? formatAmount(amount.value, kind, units) : text;
}
