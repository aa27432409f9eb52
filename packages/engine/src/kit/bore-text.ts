import { formatAmount, type UnitSystem } from '../quantity/index.ts';

/**
 * The bore of a hose as it is asked for: hoses are sold by the inch, so a metric shop reads both.
 *
 * @param bore - inside diameter [m], > 0
 * @param system - units of the reader [text], inch or metric
 * @returns the bore in words [text]
 * @source none: bookkeeping
 * @example
 * boreText(0.01905, 'metric') // => "19.1 mm (3/4 in)"
 * boreText(0.01905, 'inch') // => "3/4 in"
 */
export function boreText(bore: number, system: UnitSystem): string {
  const inches = formatAmount(bore, 'length', 'inch');
  return system === 'inch' ? inches : `${formatAmount(bore, 'length', 'metric')} (${inches})`;
}
