/** Tilt of the walls a pass leaves, from the vertical [rad]: near-vertical with a small flare (judgement, no source). */
export const WALL_FLARE = (3 * Math.PI) / 180;

const SIN = Math.sin(WALL_FLARE);
const COS = Math.cos(WALL_FLARE);
const TAN = Math.tan(WALL_FLARE);

/** The section one pass cuts from the floor under it. */
export interface PassSection {
  /** Nominal width: twice the radius of the circular bottom [m]. */
  readonly width: number;
  /** Depth below the local floor at the centre line [m]. */
  readonly depth: number;
}

/**
 * Height above the bottom at which the arc of a pass goes over into its wall.
 *
 * @param radius - radius of the bottom [m], > 0
 * @returns the height R (1 - sin flare) [m]
 * @source geometry: a line tangent to a circle
 * @example
 * arcHeight(0.008) // => 0.0075813...
 */
export function arcHeight(radius: number): number {
  return radius * (1 - SIN);
}

/**
 * Half width of a pass at a height above its bottom.
 *
 * A circular bottom of radius R up to the tangent, then walls that flare out.
 *
 * @param radius - radius of the bottom [m], > 0
 * @param height - height above the bottom [m], >= 0
 * @returns half width [m]
 * @source geometry
 * @example
 * halfWidthAt(0.008, 0.004) // => 0.00692820323
 */
export function halfWidthAt(radius: number, height: number): number {
  const tangent = arcHeight(radius);
  if (height <= tangent) return Math.sqrt(Math.max(0, height * (2 * radius - height)));
  return radius * COS + (height - tangent) * TAN;
}

/**
 * Height of a pass's outline above its bottom at a lateral distance from its centre line.
 *
 * The inverse of `halfWidthAt`.
 *
 * @param radius - radius of the bottom [m], > 0
 * @param distance - lateral distance from the centre line [m], >= 0
 * @returns height above the bottom [m]
 * @source geometry
 * @example
 * heightAt(0.008, 0.00692820323) // => 0.004
 */
export function heightAt(radius: number, distance: number): number {
  const tangent = radius * COS;
  if (distance <= tangent) return radius - Math.sqrt(radius * radius - distance * distance);
  return arcHeight(radius) + (distance - tangent) / TAN;
}

/**
 * Width at the surface of the section that one pass cuts into a flat floor.
 *
 * A pass shallower than its radius is the circular segment; a deeper one has flared walls.
 *
 * @param section - nominal width and depth [record], width > 0 and depth >= 0
 * @returns width at the surface [m]
 * @source geometry
 * @example
 * passWidth({ width: 0.016, depth: 0.004 }) // => 0.0138564065
 */
export function passWidth(section: PassSection): number {
  return 2 * halfWidthAt(section.width / 2, section.depth);
}

/**
 * Area of the section that one pass cuts into a flat floor, in closed form.
 *
 * A circular segment up to the tangent; above it a trapezium.
 *
 * @param section - nominal width and depth [record], width > 0 and depth >= 0
 * @returns area [m2]
 * @source geometry: circular segment and trapezium
 * @example
 * passArea({ width: 0.016, depth: 0.01 }) // => 0.000132787...
 */
export function passArea(section: PassSection): number {
  const radius = section.width / 2;
  const tangent = arcHeight(radius);
  const arc = Math.min(section.depth, tangent);
  const halfAngle = Math.acos(1 - arc / radius);
  const segment = radius * radius * (halfAngle - Math.sin(halfAngle) * Math.cos(halfAngle));
  if (section.depth <= tangent) return segment;
  const wall = section.depth - tangent;
  return segment + wall * (2 * radius * COS + wall * TAN);
}

/**
 * Length of the face that a pass leaves, across the section from shoulder over bottom to shoulder.
 *
 * The arc of a shallow pass; of one deeper than its radius a half circle with upright walls above it: the flare of the
 * walls, which passArea counts, changes the length by less than a thousandth.
 *
 * @param section - nominal width and depth [record], width > 0 and depth >= 0
 * @returns length of the face [m]
 * @source geometry: circular arc and upright walls
 * @example
 * faceLength({ width: 0.016, depth: 0.004 }) // => 0.0167551608...
 * faceLength({ width: 0.016, depth: 0.01 }) // => 0.0291327412...
 */
export function faceLength({ width, depth }: PassSection): number {
  const radius = width / 2;
  return 2 * radius * Math.acos(Math.max(0, 1 - depth / radius)) + 2 * Math.max(0, depth - radius);
}
