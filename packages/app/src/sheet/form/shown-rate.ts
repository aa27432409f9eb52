import { type JobField, rateOf, type UnitSystem } from '@furrow/engine';

/** A number whose unit ends the name of its field, as the reader has it; undefined where that is as it is stated. */
export function shownRate({ path }: JobField, written: string, units: UnitSystem): string | undefined {
  const rate = rateOf(path, units);
  const number = Number(written);
  if (rate === undefined || rate.unit === rate.stated) return undefined;
  if (written.trim() === '' || !Number.isFinite(number) || number === 0) return undefined;
  return `${Number(rate.of(number).toPrecision(3))} ${rate.unit}`;
}
