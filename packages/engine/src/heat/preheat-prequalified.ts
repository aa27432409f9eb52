import { MM, ZERO_CELSIUS } from '../quantity/index.ts';

/** Thickness up to which each row holds [m] and its least preheat [degC]. */
const ROWS = [
  { most: 19 * MM, celsius: 0 },
  { most: 38.1 * MM, celsius: 10 },
  { most: 63.5 * MM, celsius: 66 },
  { most: Number.POSITIVE_INFINITY, celsius: 107 },
] as const;

/**
 * Least preheat of the AWS structural code for its listed carbon steels welded with low hydrogen, by thickness alone.
 *
 * Category B of the prequalified table: up to 19, 38.1 and 63.5 mm and above. It holds for the steels that the
 * code lists and for low-hydrogen processes only.
 *
 * @param thickness - plate thickness [m], > 0
 * @returns least preheat and interpass temperature [K]
 * @source US Army Corps of Engineers TI 809-26 table 3-1, after AWS D1.1 (confirmed)
 * @example
 * preheatPrequalified(0.05) // => 339.15
 */
export function preheatPrequalified(thickness: number): number {
  return ROWS.find(({ most }) => thickness <= most + 1e-9)!.celsius + ZERO_CELSIUS;
}
