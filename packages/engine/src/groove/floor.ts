import { heightAt } from './pass-section.ts';

/** The floor across the seam on an even grid, as depth below the plate's surface. */
export interface Floor {
  /** Offset of the first grid point from the centre line [m]. */
  readonly first: number;
  /** Grid step [m]. */
  readonly step: number;
  /** Depth at each grid point; 0: not gouged [m]. */
  readonly depth: Float64Array;
}

/** One pass as it meets the floor. */
export interface FloorPass {
  /** Offset of the pass from the centre line [m]. */
  readonly offset: number;
  /** Nominal width of the pass [m]. */
  readonly width: number;
  /** Depth it takes off below the local floor under the electrode [m]. */
  readonly depth: number;
}

/**
 * An untouched floor, wide enough for the passes to come.
 *
 * @param halfWidth - how far it reaches on either side of the centre line [m], > 0
 * @param step - grid step [m], > 0 and below `halfWidth`
 * @returns the floor [record]
 * @source none: bookkeeping
 * @example
 * flatFloor(0.002, 0.001).depth.length // => 5
 */
export function flatFloor(halfWidth: number, step: number): Floor {
  const side = Math.ceil(halfWidth / step - 1e-9);
  return { first: -side * step, step, depth: new Float64Array(2 * side + 1) };
}

/**
 * Depth of the floor at an offset, between grid points by a straight line.
 *
 * @param floor - the floor [record], any
 * @param offset - offset from the centre line [m], on the grid; beyond it the surface is untouched
 * @returns depth below the surface [m]
 * @source none: interpolation
 * @example
 * floorDepthAt(cutPass(flatFloor(0.02, 0.0005), { offset: 0, width: 0.016, depth: 0.01 }), 0) // => 0.01
 */
export function floorDepthAt(floor: Floor, offset: number): number {
  const place = (offset - floor.first) / floor.step;
  const index = Math.floor(place + 1e-9);
  if (index < 0 || index >= floor.depth.length) return 0;
  const low = floor.depth[index]!;
  const high = floor.depth[Math.min(index + 1, floor.depth.length - 1)]!;
  return low + (high - low) * Math.max(0, place - index);
}

/**
 * Runs one pass over the floor: its U is measured from the local floor under the electrode.
 *
 * Returns a new floor; the old one stays as it is.
 *
 * @param floor - the floor before [record], any
 * @param pass - offset, nominal width and depth of the pass [record], width > 0 and depth >= 0
 * @returns the floor after [record]
 * @source geometry
 * @example
 * Math.max(...cutPass(flatFloor(0.02, 0.0005), { offset: 0, width: 0.016, depth: 0.01 }).depth) // => 0.01
 */
export function cutPass(floor: Floor, pass: FloorPass): Floor {
  const depth = Float64Array.from(floor.depth);
  const radius = pass.width / 2;
  const bottom = floorDepthAt(floor, pass.offset) + pass.depth;
  for (let index = 0; index < depth.length; index += 1) {
    const distance = Math.abs(floor.first + index * floor.step - pass.offset);
    const cut = bottom - heightAt(radius, distance);
    if (cut > depth[index]!) depth[index] = cut;
  }
  return { ...floor, depth };
}
