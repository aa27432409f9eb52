/** mu0 / (2 pi) [T m/A]. */
const CONSTANT = 2e-7;

/** Flux density from which people with an implanted device are at risk [T]. */
export const IMPLANT_FIELD = 0.5e-3;
/** Flux density from which loose steel may fly near strong sources [T]. */
export const PROJECTILE_FIELD = 3e-3;

/**
 * Static magnetic field beside one long straight lead.
 *
 * B = mu0 I / (2 pi r), other leads far away; ripple of the source is not in it.
 *
 * @param current - current [A], >= 0
 * @param distance - distance from the lead [m], > 0
 * @returns flux density [T]
 * @source electromagnetism textbook (derived)
 * @example
 * fieldOfLead(1000, 0.4) // => 0.0005
 */
export function fieldOfLead(current: number, distance: number): number {
  return (CONSTANT * current) / distance;
}

/**
 * Static magnetic field beside outgoing and return lead laid together.
 *
 * B = mu0 I / (2 pi) (1/r - 1/(r + d)), in the plane of both leads, r from the nearer one.
 *
 * @param current - current [A], >= 0
 * @param distance - distance from the nearer lead [m], > 0
 * @param apart - distance between the two leads [m], > 0
 * @returns flux density [T]
 * @source electromagnetism textbook (derived)
 * @example
 * fieldOfPair(1000, 0.4, 0.05) // => 0.00005555555556
 */
export function fieldOfPair(current: number, distance: number, apart: number): number {
  return CONSTANT * current * (1 / distance - 1 / (distance + apart));
}

/**
 * Distance from one long straight lead at which the field has fallen to a value.
 *
 * r = mu0 I / (2 pi B).
 *
 * @param current - current [A], >= 0
 * @param field - flux density [T], > 0
 * @returns distance [m]
 * @source electromagnetism textbook (derived)
 * @example
 * distanceFromLead(1000, 0.0005) // => 0.4
 */
export function distanceFromLead(current: number, field: number): number {
  return (CONSTANT * current) / field;
}

/**
 * Distance from the nearer of two leads laid together at which the field has fallen to a value.
 *
 * The positive root of r2 + d r - mu0 I d / (2 pi B) = 0.
 *
 * @param current - current [A], >= 0
 * @param field - flux density [T], > 0
 * @param apart - distance between the two leads [m], > 0
 * @returns distance [m]
 * @source electromagnetism textbook (derived)
 * @example
 * distanceFromPair(1000, 0.0002, 0.05) // => 0.2
 */
export function distanceFromPair(current: number, field: number, apart: number): number {
  const product = (CONSTANT * current * apart) / field;
  // the root written so that nothing cancels where the leads lie far apart
  return (2 * product) / (apart + Math.sqrt(apart ** 2 + 4 * product));
}
