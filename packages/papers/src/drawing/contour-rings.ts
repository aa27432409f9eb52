import type { DrawingPoint } from './drawing.ts';

/** Values at the crossings of a grid of lines. */
export interface ValueGrid {
  /** Places of the columns, increasing [drawing unit]. */
  readonly x: readonly number[];
  /** Places of the rows, increasing [drawing unit]. */
  readonly y: readonly number[];
  /** Values, along a row first; each a finite number. */
  readonly values: Float64Array;
}

/** A place of a contour; `rim` where it runs along the edge of the grid and not through it. */
export interface ContourPoint extends DrawingPoint {
  readonly rim: boolean;
}

/**
 * Rings around where the values reach a level, by marching squares: the outer ones clockwise on the drawing, holes
 * the other way round. Where the level reaches the edge of the grid, the ring runs along that edge.
 */
export function contourRings({ x, y, values }: ValueGrid, level: number): ContourPoint[][] {
  const [columns, rows] = [x.length, y.length];
  // one ring of cells beyond the edge is colder than everything, so that every ring closes
  const width = columns + 2;
  const place = (list: readonly number[], index: number): number =>
    list[Math.min(list.length - 1, Math.max(0, index - 1))] ?? 0;
  const beyond = (column: number, row: number): boolean =>
    column < 1 || column > columns || row < 1 || row > rows;
  const valueAt = (column: number, row: number): number =>
    beyond(column, row) ? Number.NEGATIVE_INFINITY : (values[(row - 1) * columns + column - 1] ?? 0);
  const after = new Map<number, number>();
  for (let row = 0; row <= rows; row += 1) {
    for (let column = 0; column <= columns; column += 1) {
      const corners = [
        valueAt(column, row),
        valueAt(column + 1, row),
        valueAt(column + 1, row + 1),
        valueAt(column, row + 1),
      ] as const;
      // an edge is named by the crossing at its upper left end and its direction
      const edges = [
        2 * (row * width + column),
        2 * (row * width + column + 1) + 1,
        2 * ((row + 1) * width + column),
        2 * (row * width + column) + 1,
      ] as const;
      for (const [from, to] of cellLines(corners, level)) after.set(edges[from], edges[to]);
    }
  }
  const pointOn = (edge: number): ContourPoint => {
    const start = edge >> 1;
    const [column, row] = [start % width, Math.floor(start / width)];
    const [nextColumn, nextRow] = edge % 2 === 0 ? [column + 1, row] : [column, row + 1];
    const rim = beyond(column, row) || beyond(nextColumn, nextRow);
    const [from, to] = [valueAt(column, row), valueAt(nextColumn, nextRow)];
    const share = rim ? 0 : (level - from) / (to - from);
    const mix = (list: readonly number[], one: number, other: number): number =>
      place(list, one) + share * (place(list, other) - place(list, one));
    return { x: mix(x, column, nextColumn), y: mix(y, row, nextRow), rim };
  };
  return ringsOf(after).map((ring) => ring.map(pointOn));
}

type Side = 0 | 1 | 2 | 3;

/** Lines through one cell, from side to side (top, right, bottom, left) with the hot part on their right. */
function cellLines(
  [topLeft, topRight, bottomRight, bottomLeft]: readonly [number, number, number, number],
  level: number,
): readonly (readonly [Side, Side])[] {
  const hot = (value: number): number => (value >= level ? 1 : 0);
  const which = 8 * hot(topLeft) + 4 * hot(topRight) + 2 * hot(bottomRight) + hot(bottomLeft);
  if (which === 5 || which === 10) {
    // a saddle: the mean tells whether the hot corners hang together
    const together = topLeft + topRight + bottomRight + bottomLeft >= 4 * level;
    return SADDLES[which === 10 ? 'falling' : 'rising'][together ? 'together' : 'apart'];
  }
  return LINES[which] ?? [];
}

const LINES: Readonly<Record<number, readonly (readonly [Side, Side])[]>> = {
  1: [[3, 2]],
  2: [[2, 1]],
  3: [[3, 1]],
  4: [[1, 0]],
  6: [[2, 0]],
  7: [[3, 0]],
  8: [[0, 3]],
  9: [[0, 2]],
  11: [[0, 1]],
  12: [[1, 3]],
  13: [[1, 2]],
  14: [[2, 3]],
};

/** Hot corners on the falling diagonal (top left, bottom right) or on the rising one. */
const SADDLES = {
  falling: {
    together: [
      [0, 1],
      [2, 3],
    ],
    apart: [
      [0, 3],
      [2, 1],
    ],
  },
  rising: {
    together: [
      [3, 0],
      [1, 2],
    ],
    apart: [
      [1, 0],
      [3, 2],
    ],
  },
} as const satisfies Record<string, Record<string, readonly (readonly [Side, Side])[]>>;

/** Chains of edges that lead back to where they began. */
function ringsOf(after: Map<number, number>): number[][] {
  const rings: number[][] = [];
  for (const start of after.keys()) {
    const ring: number[] = [];
    let edge: number | undefined = start;
    while (edge !== undefined && after.has(edge)) {
      ring.push(edge);
      const next: number | undefined = after.get(edge);
      after.delete(edge);
      edge = next;
    }
    if (ring.length > 2) rings.push(ring);
  }
  return rings;
}
