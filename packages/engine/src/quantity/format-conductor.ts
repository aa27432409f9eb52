import type { UnitSystem } from './quantity-kind.ts';
import { INCH } from './si.ts';
import { gaugeName } from './wire-gauge.ts';

/** One circular mil, the area of a circle of a thousandth of an inch across, times a thousand [m2]. */
const KCMIL = (Math.PI / 4) * (INCH ** 2 / 1e6) * 1000;

/**
 * Writes the size of a conductor as the trade of a system names it, with the other's name in brackets.
 *
 * @param area - area of one conductor [m2], above 0
 * @param units - the reader's units [text], inch or metric
 * @returns its name: a wire gauge or kcmil, and square millimetres [text]
 * @source ASTM B258 (memory) for wire gauges; the circular mil by definition
 * @example
 * formatConductor(107.2193e-6, 'inch') // => "4/0 AWG (107 mm²)"
 */
export function formatConductor(area: number, units: UnitSystem): string {
  const square = `${Number((area * 1e6).toPrecision(3))} mm²`;
  const trade = gaugeName(area) ?? `${Number((area / KCMIL).toPrecision(3))} kcmil`;
  return units === 'inch' ? `${trade} (${square})` : `${square} (${trade})`;
}
