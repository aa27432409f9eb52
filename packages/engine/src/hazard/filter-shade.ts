import type { Source } from '../limit/index.ts';

/** Current at which OSHA's table of shades ends [A]. */
export const SHADE_TABLE_END = 1000;
/** Where the least shade comes from. */
export const SHADE_SOURCE: Source = { text: '29 CFR 1910.133(a)(5), Table I-1', provenance: 'confirmed' };

/** A shade number by the current, with its source. */
export interface ShadeByCurrent {
  /** Shade number [-]; null: the table has no row for this current. */
  readonly shade: number | null;
  readonly source: Source;
}

/** Lower ends of the ranges and their numbers, EN 169 [A]. */
const EN_169: readonly (readonly [from: number, to: number, shade: number])[] = [
  [125, 175, 10],
  [175, 225, 11],
  [225, 275, 12],
  [275, 350, 13],
  [350, 450, 14],
  [450, Number.POSITIVE_INFINITY, 15],
];

/**
 * Least filter shade for air carbon-arc cutting by current.
 *
 * 10 under 500 A, 11 from 500 to 1000 A; the table has no row above 1000 A.
 *
 * @param current - current [A], > 0
 * @returns shade number, or null outside the table [record]
 * @source 29 CFR 1910.133(a)(5), Table I-1 (confirmed)
 * @example
 * leastShade(800).shade // => 11
 * leastShade(1200).shade // => null
 */
export function leastShade(current: number): ShadeByCurrent {
  const shade = current > SHADE_TABLE_END ? null : current < 500 ? 10 : 11;
  return { shade, source: SHADE_SOURCE };
}

/**
 * Filter shade suggested for comfort by current.
 *
 * 12 under 500 A, 14 from 500 to 1000 A.
 *
 * @param current - current [A], > 0
 * @returns shade number, or null outside the table [record]
 * @source ANSI Z49.1 (memory)
 * @example
 * suggestedShade(800).shade // => 14
 */
export function suggestedShade(current: number): ShadeByCurrent {
  const shade = current > SHADE_TABLE_END ? null : current < 500 ? 12 : 14;
  return { shade, source: { text: 'ANSI Z49.1, suggested shades', provenance: 'memory' } };
}

/**
 * Scale number that EN 169 recommends for air-arc gouging by current.
 *
 * 10 from 125 A up to 15 above 450 A; darker than the American least at the same current.
 *
 * @param current - current [A], > 0
 * @returns scale number, or null below the table [record]
 * @source EN 169:2002 Annex A, superseded by EN ISO 16321 (memory)
 * @example
 * europeanShade(800).shade // => 15
 */
export function europeanShade(current: number): ShadeByCurrent {
  const row = EN_169.find(([from, to]) => current >= from && current < to);
  return {
    shade: row?.[2] ?? null,
    source: { text: 'EN 169:2002 Annex A, superseded by EN ISO 16321', provenance: 'memory' },
  };
}

/**
 * Share of the light that a shade lets through.
 *
 * N = 1 + (7/3) log10(1/tau), the definition of the scale; it does not choose a filter.
 *
 * @param shade - shade number [-], 1 to 20
 * @returns luminous transmittance [-]
 * @source ANSI Z87.1 and EN 169, definition (memory)
 * @example
 * shadeTransmittance(11) // => 0.00005179474679
 */
export function shadeTransmittance(shade: number): number {
  return 10 ** ((-3 / 7) * (shade - 1));
}
