import { DOCUMENT_UNITS } from './exact-amount.ts';
import { unitNamed } from './find-unit.ts';
import { formatAmount } from './format-amount.ts';
import { tapeFraction } from './format-length.ts';
import { parseAmount } from './parse-amount.ts';
import type { QuantityKind, UnitSystem } from './quantity-kind.ts';

/** How far inside its bound the written one may lie, as a share of the bound [1]. */
const OFF_MOST = 0.001;
/** How far inside it may lie for a temperature, whose zero is far off [K]: nobody reads a thermometer finer. */
const DEGREES_OFF_MOST = 1;

/** What arithmetic in another unit may add to an amount, as a share of it [1]. */
const ARITHMETIC = 1e-12;

/**
 * Writes the bound of a range so that the text itself is an amount inside the range: rounded as people are shown
 * amounts where that rounds inwards by at most a thousandth, a temperature by a degree, else with as many figures as it takes.
 *
 * @param value - the bound in the SI unit of its kind [SI unit of the kind], any finite number
 * @param kind - kind of quantity [text], one of the QuantityKind names
 * @param system - units to write in [text], inch or metric
 * @param side - which end of the range it is [text], least or most
 * @returns text that parseAmount reads as an amount inside the range, but for the last digits of arithmetic [text]
 * @source none: bookkeeping
 * @example
 * formatBound(1, 'length', 'inch', 'most') // => "39.37 in"
 * formatBound(273.15 + 108, 'temperature', 'inch', 'least') // => "227 °F"
 */
export function formatBound(
  value: number,
  kind: QuantityKind,
  system: UnitSystem,
  side: 'least' | 'most',
): string {
  const off = kind === 'temperature' ? DEGREES_OFF_MOST : OFF_MOST * Math.abs(value);
  const inside = (text: string): boolean => {
    const read = parseAmount(text, kind);
    if (!read.ok) return false;
    const inwards = side === 'least' ? read.value - value : value - read.value;
    return inwards >= -ARITHMETIC * Math.abs(value) && inwards <= off;
  };
  const usual = formatAmount(value, kind, system);
  if (inside(usual)) return usual;
  const unit = unitNamed(DOCUMENT_UNITS[kind][system]);
  const amount = unit.scale.fromSi(value);
  for (let figures = 1; figures <= 12; figures += 1) {
    const text = `${figuresTowards(amount, figures, side)} ${unit.name}`;
    if (inside(text)) return text;
  }
  return `${amount} ${unit.name}`;
}

/**
 * Writes what would do as a shop reads it off: a length in inches as the next fraction of a tape inside the range, however far
 * that is; any other as formatBound does.
 *
 * @param value - what would do in the SI unit of its kind [SI unit of the kind], any finite number
 * @param kind - kind of quantity [text], one of the QuantityKind names
 * @param system - units to write [text], inch or metric
 * @param side - which end of what does it is [text], least or most
 * @returns text that parseAmount reads as an amount that does as well [text]
 * @source common practice, no source
 * @example
 * formatReadOff(0.00325, 'length', 'inch', 'least') // => "9/64 in"
 * formatReadOff(0.00325, 'length', 'metric', 'least') // => "3.25 mm"
 */
export function formatReadOff(
  value: number,
  kind: QuantityKind,
  system: UnitSystem,
  side: 'least' | 'most',
): string {
  const tape = kind === 'length' && system === 'inch' ? tapeFraction(value, side) : undefined;
  return tape ?? formatBound(value, kind, system, side);
}

/** A number with so many figures, rounded up for the least of a range and down for the most. */
function figuresTowards(amount: number, figures: number, side: 'least' | 'most'): number {
  const step = 10 ** (Math.floor(Math.log10(Math.abs(amount) || 1)) + 1 - figures);
  const steps = side === 'least' ? Math.ceil(amount / step) : Math.floor(amount / step);
  return Number((steps * step).toPrecision(12));
}
