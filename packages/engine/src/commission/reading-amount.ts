import { type Amount, fromUnit } from '../quantity/index.ts';
import type { MeasureCheck } from './check.ts';
import { READING_KINDS } from './units.ts';

/** Decimals of a reading whose band has no width [-]. */
const DECIMALS_OF_A_POINT = 3;
/** No meter shows more [-]. */
const DECIMALS_MOST = 6;

/**
 * A reading of a check as an amount for a sentence.
 *
 * Millivolts and seconds stay on the scale of meter and watch, whatever the shop's units, to the first figure of the band's half.
 *
 * @param check - the check [record], one with a reading
 * @param value - reading in the unit of the check [unit of the check], finite
 * @returns the amount [record]
 * @source common practice, no source
 * @example
 * readingAmount({ unit: 'mV', least: 440, most: 460 }, 450) // => {"value":0.45,"kind":"voltage","scale":{"unit":"mV","decimals":0}}
 */
export function readingAmount({ unit, least, most }: MeasureCheck, value: number): Amount {
  const amount = { value: fromUnit(value, unit), kind: READING_KINDS[unit] };
  if (unit !== 'mV' && unit !== 's') return amount;
  const half = (most - least) / 2;
  const decimals = half > 0 ? Math.max(0, -Math.floor(Math.log10(half))) : DECIMALS_OF_A_POINT;
  return { ...amount, scale: { unit, decimals: Math.min(decimals, DECIMALS_MOST) } };
}

/**
 * An end of a check's band as an amount for a sentence. An end in degrees may be a limit that was stated, and is rounded
 * inwards: what is read off it lies inside.
 *
 * @param check - the check [record], one with a reading
 * @param end - which end [text], least or most
 * @returns the amount [record]
 * @source none: bookkeeping
 * @example
 * bandEnd({ unit: 'degC', least: 108, most: 150 }, 'least') // => {"value":381.15,"kind":"temperature","bound":"least"}
 */
export function bandEnd(check: MeasureCheck, end: 'least' | 'most'): Amount {
  const amount = readingAmount(check, check[end]);
  return check.unit === 'degC' ? { ...amount, bound: end } : amount;
}
