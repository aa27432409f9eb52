import { FOOT } from '../quantity/index.ts';

/** Volume for each welder below which fans are asked for: 10 000 ft3 [m3]. */
export const ROOM_PER_WELDER = 10_000 * FOOT ** 3;
/** Ceiling below which fans are asked for: 16 ft [m]. */
export const LEAST_CEILING = 16 * FOOT;
/** Air flow of fans for each welder: 2000 ft3/min [m3/s]. */
export const FLOW_PER_WELDER = (2000 * FOOT ** 3) / 60;

/** A room as the rule looks at it; null where something is not known. */
export interface VentilatedRoom {
  /** Volume [m3]. */
  readonly volume: number | null;
  /** Height of the ceiling [m]. */
  readonly ceiling: number | null;
  /** Whether partitions or the like hinder the cross-draught. */
  readonly barriers: boolean | null;
  /** Torches burning at once [-]. */
  readonly torches: number;
}

/**
 * Whether the rule for welders asks for fans in a room: true, false, or null where what is known does not decide.
 *
 * Fans are asked for below 10 000 ft3 a welder, under a ceiling below 16 ft, or where barriers hinder the draught.
 * Written for welders; a gouging torch gives off far more, so the rule is a floor and no design.
 *
 * @param room - volume, ceiling, barriers and torches [record], null where not known
 * @returns whether fans are asked for [-]
 * @source 29 CFR 1910.252(c)(2) (confirmed)
 * @example
 * asksForFans({ volume: 200, ceiling: 6, barriers: false, torches: 1 }) // => true
 * asksForFans({ volume: 900, ceiling: 6, barriers: null, torches: 1 }) // => null
 */
export function asksForFans({ volume, ceiling, barriers, torches }: VentilatedRoom): boolean | null {
  const found = [
    volume === null ? null : volume < ROOM_PER_WELDER * torches,
    ceiling === null ? null : ceiling < LEAST_CEILING,
    barriers,
  ];
  if (found.includes(true)) return true;
  return found.includes(null) ? null : false;
}
