import { FOOT } from '../quantity/index.ts';

/** Least radius of the zone: 35 ft [m]. */
export const LEAST_RADIUS = 35 * FOOT;
/** Horizontal reach of sparks of thermal cutting up to a working height of 3 m [m]. */
const CUTTING_REACH = 10;
/** Working height from which the reach grows [m]. */
const USUAL_HEIGHT = 3;
/** Growth of the reach for each metre of height [-]. */
const GROWTH = 0.5;

/** How far sparks may fly. */
export interface FireZone {
  /** All round the arc, on the floor of the work and below it [m]. */
  readonly radius: number;
  /** Ahead of the torch, along its jet [m]. */
  readonly ahead: number;
  /** Upwards [m]. */
  readonly up: number;
  /** Downwards [m]. */
  readonly down: number;
}

/** What a job states of its zone; it can only enlarge it. */
export interface FireZoneWanted {
  /** Radius that the site asks for [m]. */
  readonly radius?: number | undefined;
  /** Reach ahead of the torch that the site asks for [m]. */
  readonly ahead: number;
  /** Height of the work above the floor below [m]. */
  readonly height: number;
}

/**
 * Reach of sparks of thermal cutting across the floor by the working height.
 *
 * 10 m up to a height of 3 m, half a metre more for each metre above it. Gouging has no row of its own; it is
 * treated as thermal cutting, or worse along the jet.
 *
 * @param height - height of the work above the floor below [m], >= 0
 * @returns horizontal reach [m]
 * @source DGUV Information 209-015 figure 4-1; DGUV Regel 100-500 chapter 2.26 annex 2 (confirmed)
 * @example
 * sparkReach(8) // => 12.5
 */
export function sparkReach(height: number): number {
  return CUTTING_REACH + GROWTH * Math.max(0, height - USUAL_HEIGHT);
}

/**
 * The fire zone: the greatest of the rules that apply, never less than 35 ft all round.
 *
 * Ahead of the torch the jet carries melt farther than the circle, so the zone has a longer lobe there.
 *
 * @param wanted - what the site asks for [record], distances >= 0
 * @returns radius, reach ahead, up and down [m]
 * @source 29 CFR 1910.252(a)(2) (confirmed); DGUV Information 209-015 (confirmed); guidance beyond 35 ft (confirmed)
 * @example
 * fireZone({ ahead: 22.86, height: 2 }) // => {"radius":10.668,"ahead":22.86,"up":4,"down":20}
 */
export function fireZone({ radius = 0, ahead, height }: FireZoneWanted): FireZone {
  const all = Math.max(LEAST_RADIUS, sparkReach(height), radius);
  return { radius: all, ahead: Math.max(all, ahead), up: 4, down: Math.max(20, height) };
}
