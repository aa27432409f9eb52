import { formatAmount } from './format-amount.ts';
import type { UnitSystem } from './quantity-kind.ts';

/** Units and decimals in which a measured quantity is told with its uncertainty. */
const MEASURED = {
  length: { inch: { unit: 'in', decimals: 3 }, metric: { unit: 'mm', decimals: 2 } },
  area: { inch: { unit: 'in2', decimals: 3 }, metric: { unit: 'mm2', decimals: 1 } },
  angle: { inch: { unit: 'deg', decimals: 1 }, metric: { unit: 'deg', decimals: 1 } },
} as const;

/**
 * Writes a measured quantity with its uncertainty, one unit at the end; degrees stand at both.
 *
 * @param value - what was measured in the SI unit of its kind [SI unit of the kind], any finite number
 * @param u - the uncertainty that is told with it [SI unit of the kind], >= 0
 * @param kind - what was measured [text], `length`, `area` or `angle`
 * @param system - units to show [text], inch or metric
 * @returns both as text [text]
 * @source common practice, no source
 * @example
 * formatUncertain(0.01234, 0.00015, 'length', 'metric') // => "12.34 ± 0.15 mm"
 * formatUncertain(0.0127, 0.000254, 'length', 'inch') // => "0.500 ± 0.010 in"
 */
export function formatUncertain(
  value: number,
  u: number,
  kind: 'length' | 'area' | 'angle',
  system: UnitSystem,
): string {
  const options = MEASURED[kind][system];
  const [told, spread] = [value, u].map((each) => formatAmount(each, kind, system, options)) as [
    string,
    string,
  ];
  return `${told.replace(/ \S+$/u, '')} ± ${spread}`;
}
