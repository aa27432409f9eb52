import type { GrooveFrame } from './groove-frame.ts';
import { fitPolynomial, slopeAt, slopeVarianceAt } from './polynomial.ts';
import { declined, type Measured, measured } from './quantity.ts';

/** Stretch of the depth over which a wall's angle is read, from the surface down [-]. */
const WALL_PART = [0.15, 0.5] as const;
/** Turn of a wall from one end of its stretch to the other above which it is no straight wall [rad]. */
const STRAIGHT = (12 * Math.PI) / 180;

/** Angle of a wall against the square to the plate line [rad], by a robust straight line; noise lies in the depth. */
export function wallAngle(
  frame: GrooveFrame,
  inside: number,
  deepestAt: number,
  depth: number,
  side: -1 | 1,
  slopeVariance: number,
): Measured {
  const { u, d, smooth, spacing } = frame;
  const base = frame.shoulder[side < 0 ? 0 : 1];
  const span = depth - base;
  let outer = inside;
  while (outer !== deepestAt && smooth[outer]! - base < WALL_PART[0] * span) outer -= side;
  let inner = outer;
  while (inner !== deepestAt && smooth[inner]! - base < WALL_PART[1] * span) inner -= side;
  const count = Math.abs(inner - outer);
  if (count < 4) return declined('the wall is too steep for the points that lie on it');
  const first = side < 0 ? outer : inner + 1;
  const t = Float64Array.from({ length: count }, (_, k) => -side * u[first + k]!);
  const down = Float64Array.from({ length: count }, (_, k) => d[first + k]!);
  for (let k = 1; k < count; k += 1) {
    if (Math.abs(t[k]! - t[k - 1]!) > 6 * spacing && Math.abs(down[k]! - down[k - 1]!) > 0.15 * span)
      return declined('points are missing on the wall: it lies in shadow');
  }
  const line = fitPolynomial(t, down, 1);
  if (line === undefined) return declined('too few points lie on the wall');
  const slope = line.coefficients[1]! / line.scale;
  if (!(slope > 0)) return declined('the wall does not fall towards the root');
  const curve = count >= 8 ? fitPolynomial(t, down, 2) : undefined;
  if (curve !== undefined) {
    const ends = [curve.centre - curve.scale, curve.centre + curve.scale] as const;
    const turns = ends.map((end) => Math.atan(slopeAt(curve, end)));
    const turn = Math.abs(turns[1]! - turns[0]!);
    const sure = 3 * Math.sqrt(slopeVarianceAt(curve, ends[0]) + slopeVarianceAt(curve, ends[1]));
    const perSlope = 1 + Math.tan(Math.min(...turns)) ** 2;
    if (turn > STRAIGHT && turn > sure / perSlope)
      return declined('the wall is round and has no straight part');
  }
  const variance = slopeVarianceAt(line, line.centre);
  const angle = Math.atan2(1, slope);
  return measured(angle, Math.sqrt(variance / (1 + slope * slope) ** 2 + slopeVariance), line.degrees);
}
