import { formatAmount, type JobField, parseAmount, type UnitSystem } from '@furrow/engine';
import { isPrice } from '@furrow/papers/words';
import { boxUnit, isBareNumber } from './box-unit.ts';
import { rateBox } from './rate-box.ts';

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

/** How a field is typed and shown. */
export interface Entry {
  /** The unit of its box, in which a number alone is meant. */
  readonly unit: string | undefined;
  /** What goes into the file for what was typed. */
  readonly fileValue: (typed: string) => string | number | undefined;
  /** What is shown of what the file has. */
  readonly shown: (written: string) => string;
}

/** How a field is typed and shown by a reader in these units. */
export function entryOf(field: JobField, units: UnitSystem): Entry {
  const unit = boxUnit(field, units);
  const rate = rateBox(field, units);
  return {
    unit,
    fileValue(typed) {
      const value = typedValue(field, typed, unit);
      return typeof value === 'number' && rate !== undefined ? rate.stated(value) : value;
    },
    shown: rate?.shown ?? ((written) => written),
  };
}

/** What a field shows: what was typed as long as it says what the file has, else what the file has. */
export function shownText(
  typed: string | undefined,
  written: string | undefined,
  { fileValue, shown }: Pick<Entry, 'fileValue' | 'shown'>,
): string {
  if (typed !== undefined) {
    const value = fileValue(typed);
    if ((value === undefined ? undefined : String(value)) === written) return typed;
  }
  return written === undefined ? '' : shown(written);
}

/** What stands in for an empty field, as a shop that works in inches reads it; as the file would have it for others. */
export function fallbackText(field: JobField, units: UnitSystem): string {
  const { entry, fallback, kind, path } = field;
  // nothing costs nothing for want of a price
  if (fallback === 0 && isPrice(path)) return 'no price';
  const text = String(fallback);
  if (entry === 'choice') return text.replaceAll('_', ' ');
  const rate = rateBox(field, units);
  if (rate !== undefined) return rate.shown(text);
  const amount = units === 'inch' && kind !== undefined ? parseAmount(text, kind) : undefined;
  return kind !== undefined && amount?.ok === true ? formatAmount(amount.value, kind, units) : text;
}
