/** One substance of a mixture in the breathing zone. */
export interface MixturePart {
  /** Concentration, or time-weighted mean of it [mg/m3]. */
  readonly concentration: number;
  /** Its limit, in the same unit [mg/m3]. */
  readonly limit: number;
}

const EIGHT_HOURS = 8 * 3600;

/**
 * Mean concentration over eight hours of spells in a shift.
 *
 * E = sum(C T) / 8 h; ceilings are not averaged.
 *
 * @param spells - concentration [mg/m3] and time [s] of each spell [list], may be empty
 * @returns mean concentration [mg/m3]
 * @source 29 CFR 1910.1000(d)(1) (confirmed)
 * @example
 * shiftConcentration([{ concentration: 4, time: 7200 }, { concentration: 1, time: 21600 }]) // => 1.75
 */
export function shiftConcentration(
  spells: readonly { readonly concentration: number; readonly time: number }[],
): number {
  return spells.reduce((sum, { concentration, time }) => sum + concentration * time, 0) / EIGHT_HOURS;
}

/**
 * Additive index of a mixture; over 1 fails.
 *
 * E_m = sum(C_i / L_i), for substances of like effect; the set of limits must be named beside it.
 *
 * @param parts - concentrations with their limits [list], limits > 0
 * @returns index [-]
 * @source 29 CFR 1910.1000(d)(2) (confirmed)
 * @example
 * mixtureIndex([{ concentration: 500, limit: 1000 }, { concentration: 45, limit: 200 }, { concentration: 40, limit: 200 }]) // => 0.925
 */
export function mixtureIndex(parts: readonly MixturePart[]): number {
  return parts.reduce((sum, { concentration, limit }) => sum + concentration / limit, 0);
}
