import { faceLength } from '../groove/index.ts';

/** A groove's section along its seam, as cost asks for it. */
export interface GrooveSection {
  /** Area of the section: volume per length of seam [m2]. */
  readonly areaPerLength: number;
  /** Width at the plate's surface [m]. */
  readonly topWidth: number;
  /** Depth of its deepest point [m]. */
  readonly depth: number;
  /** Length of the seam [m]. */
  readonly seamLength: number;
}

/**
 * Area of a plain groove of this width and depth.
 *
 * Shallower than half its width: the circular segment through both shoulders and the root. Deeper: a half circle
 * below upright walls. The two meet at half the width.
 *
 * @param width - width at the plate's surface [m], > 0
 * @param depth - depth at the root [m], >= 0
 * @returns area of the section [m2]
 * @source geometry
 * @example
 * plainGrooveArea(0.014, 0.006) // => 0.0000635253...
 * plainGrooveArea(0.012, 0.01) // => 0.000104548...
 */
export function plainGrooveArea(width: number, depth: number): number {
  if (depth <= 0) return 0;
  if (depth >= width / 2) return (Math.PI / 8) * width ** 2 + width * (depth - width / 2);
  const radius = rootRadius(width, depth);
  const halfAngle = Math.acos(1 - depth / radius);
  return radius ** 2 * (halfAngle - Math.sin(halfAngle) * Math.cos(halfAngle));
}

/** Length of a plain groove's face across the seam, from shoulder over root to shoulder [m]. */
export function plainFace(width: number, depth: number): number {
  return depth <= 0 ? width : faceLength({ width: 2 * rootRadius(width, depth), depth });
}

/**
 * Area of a groove after its face was ground back everywhere by the same allowance.
 *
 * A + P s + pi s2 / 2: the outline moved outwards by s, for a groove without inward corners (half of Steiner's
 * formula for the groove and its mirror image). P is the face of a plain groove of the same width and depth; the face
 * of several tracks is longer, and its area then comes out a little low (2.4 % on the demo wash of six tracks).
 *
 * @param section - the groove as gouged [record], width > 0, depth >= 0
 * @param allowance - how much is ground off, at right angles to the face [m], >= 0
 * @returns area of the ground section [m2]
 * @source geometry: Steiner's formula for parallel outlines
 * @example
 * const cut = { areaPerLength: 104.548668e-6, topWidth: 0.012, depth: 0.01, seamLength: 1 };
 * groundArea(cut, 0.0015) // => 0.000148357...
 */
export function groundArea(section: GrooveSection, allowance: number): number {
  const face = plainFace(section.topWidth, section.depth);
  return section.areaPerLength + face * allowance + (Math.PI / 2) * allowance ** 2;
}

/** Radius at the root: of the circle through both shoulders and the root, or half the width of a deeper groove [m]. */
function rootRadius(width: number, depth: number): number {
  return depth >= width / 2 ? width / 2 : (width ** 2 / 4 + depth ** 2) / (2 * depth);
}
