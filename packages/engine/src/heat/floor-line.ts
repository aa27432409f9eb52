/** A place on the floor of a groove. */
export interface FloorPoint {
  /** From the groove's centre line [m]. */
  readonly offset: number;
  /** Below the plate's surface [m]. */
  readonly depth: number;
}

/** A floor across the section, from left to right; the plate's surface goes on at both ends. */
export type FloorLine = readonly FloorPoint[];

/** Depth of the floor at a place across [m]; of a step, the deeper side. */
export function depthAt(floor: FloorLine, offset: number): number {
  let depth = 0;
  for (let at = 0; at + 1 < floor.length; at += 1) {
    const from = floor[at]!;
    const to = floor[at + 1]!;
    if (offset < from.offset || offset > to.offset) continue;
    const run = to.offset - from.offset;
    const here =
      run > 0
        ? from.depth + ((to.depth - from.depth) * (offset - from.offset)) / run
        : Math.max(from.depth, to.depth);
    depth = Math.max(depth, here);
  }
  return depth;
}

/** The floor after one more pass, wherever the deeper of the two: a pass takes metal away and leaves none. */
export function closedFloor(floor: FloorLine): FloorLine {
  const first = floor[0];
  const last = floor.at(-1);
  if (first === undefined || last === undefined) return [];
  return [
    ...(first.depth > 0 ? [{ offset: first.offset, depth: 0 }] : []),
    ...floor,
    ...(last.depth > 0 ? [{ offset: last.offset, depth: 0 }] : []),
  ];
}
