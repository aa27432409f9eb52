import { formatAmount, type JobField, parseAmount, shownNumber, type UnitSystem } from '@furrow/engine';

/** How far a fraction of an inch may be off what was written and still be read as it, as a share of it [-]. */
const OFF_MOST = 0.005;

/** An amount in the reader's units; undefined where nothing is written that can be read, or where it was written so. */
export function readAsText(
  { kind }: JobField,
  written: string | undefined,
  units: UnitSystem,
): string | undefined {
  if (kind === undefined || written === undefined) return undefined;
  const read = parseAmount(written, kind);
  if (!read.ok) return undefined;
  const text = formatAmount(read.value, kind, units);
  if (sameAmount(text, written)) return undefined;
  const told = kind === 'length' ? parseAmount(text, kind) : undefined;
  const isOff = told?.ok === true && Math.abs(told.value - read.value) > OFF_MOST * Math.abs(read.value);
  if (!isOff || units === 'metric') return text;
  const isSmall = Math.abs(shownNumber(read.value, 'length', units)) < 1;
  return formatAmount(read.value, 'length', units, { unit: 'in', decimals: isSmall ? 3 : 2 });
}

/** Whether two amounts say the same number in the same unit: 12 mm and 12.0 mm. */
function sameAmount(one: string, other: string): boolean {
  const plain = (text: string): string => {
    const [, number = '', unit = ''] = /^([\d.,/ ]+)(.*)$/u.exec(text.replace('°', ' deg')) ?? [];
    const value = Number(number.trim().replace(',', '.'));
    return `${Number.isNaN(value) ? number.trim() : value} ${unit.trim()}`;
  };
  return plain(one) === plain(other);
}
