import { Matrix, SingularValueDecomposition } from 'ml-matrix';

/** A point of a section: offset across the seam and depth below the surface. */
export interface SectionPoint {
  /** Offset from the centre line [m]. */
  readonly offset: number;
  /** Depth below the surface [m]. */
  readonly depth: number;
}

/**
 * Radius of the circle that fits points best, in the algebraic least-squares sense.
 *
 * Solves x2 + y2 = 2 a x + 2 b y + c on centred points; R = sqrt(c + a2 + b2). Points on a line have
 * no circle: the answer is then undefined.
 *
 * @param points - points of the section [list], at least three
 * @returns radius, or undefined if the points lie on a line [m]
 * @source Kasa, IEEE Transactions on Instrumentation and Measurement 25 (1976) 8-14 (memory)
 * @example
 * fitRadius([{ offset: -3, depth: 4 }, { offset: 0, depth: 5 }, { offset: 3, depth: 4 }, { offset: 5, depth: 0 }]) // => 5
 */
export function fitRadius(points: readonly SectionPoint[]): number | undefined {
  if (points.length < 3) return undefined;
  const meanOffset = points.reduce((sum, point) => sum + point.offset, 0) / points.length;
  const meanDepth = points.reduce((sum, point) => sum + point.depth, 0) / points.length;
  const centred = points.map((point) => [point.offset - meanOffset, point.depth - meanDepth] as const);
  const scale = Math.max(...centred.map(([x, y]) => Math.hypot(x, y)));
  if (!(scale > 0)) return undefined;
  const rows = centred.map(([x, y]) => [(2 * x) / scale, (2 * y) / scale, 1]);
  const squares = centred.map(([x, y]) => (x * x + y * y) / (scale * scale));
  const decomposition = new SingularValueDecomposition(new Matrix(rows), { autoTranspose: true });
  if (decomposition.rank < 3) return undefined;
  const solved = decomposition.solve(Matrix.columnVector(squares)).to1DArray();
  const [a, b, c] = [solved[0]!, solved[1]!, solved[2]!];
  return scale * Math.sqrt(c + a * a + b * b);
}
