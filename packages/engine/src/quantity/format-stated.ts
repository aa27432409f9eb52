import type { Amount, AmountKind } from './amount.ts';
import { bandText, formatAmount, formatApart, formatBand } from './format-amount.ts';
import type { UnitSystem } from './quantity-kind.ts';
import { fromUnit, kindOfUnit, type StatedUnit } from './stated-unit.ts';

/**
 * Writes a number of a result, whose unit stands beside it, in the reader's units.
 *
 * Amounts that shops read in one unit only, such as dBA, mT and mg/m3, stay as they are. A number that is not known is
 * a dash.
 *
 * @param value - the number [see unit], any, or null where it is not known
 * @param unit - unit as the result states it [text], one of the StatedUnit names
 * @param system - units to show [text], inch or metric
 * @param as - how it is read, where not as usual for its unit: millimetres are a gauge's unless read as a length [text], one of the AmountKind names
 * @returns amount with its unit [text]
 * @source common practice, no source
 * @example
 * formatStated(56.634, 'm3/min', 'inch') // => "2000 cfm"
 * formatStated(98.976, 'dBA', 'metric') // => "99.0 dBA"
 * formatStated(12.7, 'mm', 'inch', 'length') // => "1/2 in"
 */
export function formatStated(
  value: number | null,
  unit: StatedUnit,
  system: UnitSystem,
  as?: AmountKind,
): string {
  if (value === null || !Number.isFinite(value)) return '–';
  const kind = as ?? kindOfUnit(unit);
  if (kind !== undefined && kind !== 'sound') return formatAmount(fromUnit(value, unit), kind, system);
  return plainStated(value, unit);
}

/**
 * Writes two numbers of a result that are held against each other, with enough figures to tell them apart.
 *
 * @param first - the one number [see unit], any
 * @param second - the other [see unit], any
 * @param unit - unit of both [text], one of the StatedUnit names
 * @param system - units to show [text], inch or metric
 * @returns the two amounts [two texts]
 * @source common practice, no source
 * @example
 * formatStatedApart(549.6, 551.6, 'kPa', 'metric') // => ["5.50 bar","5.52 bar"]
 */
export function formatStatedApart(
  first: number,
  second: number,
  unit: StatedUnit,
  system: UnitSystem,
): readonly [string, string] {
  const kind = kindOfUnit(unit);
  const finite = Number.isFinite(first) && Number.isFinite(second);
  if (kind === undefined || kind === 'sound' || !finite)
    return [formatStated(first, unit, system), formatStated(second, unit, system)];
  return formatApart(fromUnit(first, unit), fromUnit(second, unit), kind, system);
}

/**
 * Writes a band of a result with one unit at its end.
 *
 * @param low - lower end [see unit], any
 * @param high - upper end [see unit], any
 * @param unit - unit of both [text], one of the StatedUnit names
 * @param system - units to show [text], inch or metric
 * @returns the band [text]
 * @source common practice, no source
 * @example
 * formatStatedBand(12.05, 15.62, 'mm', 'inch') // => "0.47 to 0.61 in"
 * formatStatedBand(95, 105, 'dBA', 'metric') // => "95.0 to 105.0 dBA"
 */
export function formatStatedBand(low: number, high: number, unit: StatedUnit, system: UnitSystem): string {
  const kind = kindOfUnit(unit);
  if (kind === undefined || kind === 'sound')
    return bandText(formatStated(low, unit, system), formatStated(high, unit, system));
  return formatBand(fromUnit(low, unit), fromUnit(high, unit), kind, system);
}

/**
 * Two numbers of a result that are held against each other, for a sentence.
 *
 * @param first - the one number [see unit], finite
 * @param second - the other [see unit], finite
 * @param unit - unit of both [text], one of the StatedUnit names
 * @returns the two as parts of a sentence [two parts]
 * @source none: bookkeeping
 * @example
 * sentenceText(say`${statedApart(549.6, 551.6, 'kPa')[0]} at most`, 'metric') // => "5.50 bar at most"
 */
export function statedApart(
  first: number,
  second: number,
  unit: StatedUnit,
): readonly [Amount | string, Amount | string] {
  const kind = kindOfUnit(unit);
  if (kind === undefined || kind === 'sound') return [plainStated(first, unit), plainStated(second, unit)];
  const [one, other] = [fromUnit(first, unit), fromUnit(second, unit)];
  return [
    { value: one, kind, beside: other },
    { value: other, kind, beside: one },
  ];
}

/** A number that is read in its own unit. */
function plainStated(value: number, unit: StatedUnit): string {
  if (unit === 'dBA' || unit === 'dB') return `${value.toFixed(1)} ${unit}`;
  if (unit === 'shade') return `shade ${value}`;
  return `${figures(value)}${unit === '-' ? '' : ` ${unit}`}`;
}

/** Three figures, and every one of a number from 1000 to 9999; a share near its limit keeps what tells it apart. */
function figures(value: number): string {
  if (Math.abs(value) >= 1000 && Math.abs(value) < 9999.5) return String(Math.round(value));
  return String(Number(value.toPrecision(Math.abs(value) < 1 && Math.abs(value) > 0.9 ? 4 : 3)));
}
