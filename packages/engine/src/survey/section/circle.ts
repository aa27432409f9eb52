import { placeOrder } from '../../numeric/index.ts';

/** A circle; SI. */
export interface Circle {
  /** Centre across [m]. */
  readonly x: number;
  /** Centre upwards or downwards, in the frame of the points [m]. */
  readonly y: number;
  /** Radius [m]. */
  readonly radius: number;
}

/** A circle fitted to points by their distances from it. */
export interface CircleFit extends Circle {
  /** Standard uncertainty of the radius, from the scatter of the points [m]. */
  readonly radiusU: number;
  /** Degrees of freedom of that [-]. */
  readonly degrees: number;
  /** Root mean square distance of the points that count [m]. */
  readonly scatter: number;
  /** Sum of squared distances, each by its weight [m2]. */
  readonly squares: number;
  /** Weight of each point, 0 where it is an outlier [-]. */
  readonly weights: Float64Array;
}

const STEPS_MOST = 60;
/** Steps from a circle that is near [-]. */
const STEPS_NEAR = 3;
/** Rounds of weighing at most, and the move, as a part of the radius, below which it has settled [-]. */
const ROUNDS_MOST = 12;
const SETTLED = 1e-6;
/** Rounds in which the spread is taken anew [-]; held after that, since a spread that moves keeps the circle moving. */
const SPREADS = 3;
/** Distance in robust standard deviations from which a point counts nothing: Tukey's biweight at 95 % efficiency [-]. */
export const TUKEY = 4.685;
/** A median absolute deviation as a standard deviation of a normal distribution [-]. */
export const MAD = 1.4826;

/**
 * The circle of Taubin's algebraic fit: nearly unbiased on short arcs, and the start of a geometric fit.
 *
 * @param x - one coordinate of each point [m], at least three
 * @param y - the other coordinate of each point [m], as many
 * @returns the circle, or undefined where the points lie on a line [record]
 * @source Taubin, IEEE Transactions on Pattern Analysis and Machine Intelligence 13 (1991) 1115-1138; solved by Newton's method as in Chernov, Circular and Linear Regression (2010) (memory)
 * @example
 * taubinCircle([1, 2, 5, 7, 9, 3], [7, 6, 8, 7, 5, 7]).radius // => 4.879...
 */
export function taubinCircle(x: ArrayLike<number>, y: ArrayLike<number>): Circle | undefined {
  const n = x.length;
  if (n < 3) return undefined;
  let mx = 0;
  let my = 0;
  for (let i = 0; i < n; i += 1) {
    mx += x[i]! / n;
    my += y[i]! / n;
  }
  let scale = 0;
  for (let i = 0; i < n; i += 1) scale = Math.max(scale, Math.abs(x[i]! - mx), Math.abs(y[i]! - my));
  if (!(scale > 0)) return undefined;
  let xx = 0;
  let yy = 0;
  let xy = 0;
  let xz = 0;
  let yz = 0;
  let zz = 0;
  for (let i = 0; i < n; i += 1) {
    const a = (x[i]! - mx) / scale;
    const b = (y[i]! - my) / scale;
    const z = a * a + b * b;
    xx += (a * a) / n;
    yy += (b * b) / n;
    xy += (a * b) / n;
    xz += (a * z) / n;
    yz += (b * z) / n;
    zz += (z * z) / n;
  }
  const mean = xx + yy;
  const spread = xx * yy - xy * xy;
  const a3 = 4 * mean;
  const a2 = -3 * mean * mean - zz;
  const a1 = zz * mean + 4 * spread * mean - xz * xz - yz * yz - mean ** 3;
  const a0 = xz * xz * yy + yz * yz * xx - zz * spread - 2 * xz * yz * xy + mean * mean * spread;
  let root = 0;
  let value = Number.POSITIVE_INFINITY;
  for (let step = 0; step < STEPS_MOST; step += 1) {
    const next = a0 + root * (a1 + root * (a2 + root * a3));
    if (Math.abs(next) >= Math.abs(value)) break;
    value = next;
    const slope = a1 + root * (2 * a2 + root * 3 * a3);
    if (slope === 0) break;
    const moved = root - value / slope;
    if (!(moved >= 0) || moved === root) break;
    root = moved;
  }
  const determinant = root * root - root * mean + spread;
  if (Math.abs(determinant) < 1e-14) return undefined;
  const cx = (xz * (yy - root) - yz * xy) / determinant / 2;
  const cy = (yz * (xx - root) - xz * xy) / determinant / 2;
  return {
    x: mx + cx * scale,
    y: my + cy * scale,
    radius: scale * Math.sqrt(cx * cx + cy * cy + mean),
  };
}

/**
 * The circle from which points lie least far: Levenberg-Marquardt on the distances, from Taubin's circle.
 *
 * Robust: distances are weighed by Tukey's biweight about their median spread, so that single wild points do not pull.
 *
 * @param x - one coordinate of each point [m], at least four
 * @param y - the other coordinate of each point [m], as many
 * @param robust - whether wild points are weighed down [yes or no], either; left out: yes
 * @returns the circle with the uncertainty of its radius, or undefined where the points have none [record]
 * @source Gander, Golub and Strebel, BIT 34 (1994) 558-578; weights: Beaton and Tukey, Technometrics 16 (1974) 147-185 (memory)
 * @example
 * geometricCircle([1, 2, 5, 7, 9, 3], [7, 6, 8, 7, 5, 7], false).radius // => 4.714...
 */
export function geometricCircle(
  x: ArrayLike<number>,
  y: ArrayLike<number>,
  robust = true,
): CircleFit | undefined {
  const start = taubinCircle(x, y);
  const n = x.length;
  if (start === undefined || n < 4) return undefined;
  const weights = new Float64Array(n).fill(1);
  // where weights follow, the first circle need only be near
  let circle = leastDistances(x, y, weights, start, robust ? STEPS_NEAR : STEPS_MOST);
  const away = new Float64Array(n);
  const sorted = new Float64Array(n);
  let spread = Number.NaN;
  for (let round = 0; robust && round < ROUNDS_MOST && circle !== undefined; round += 1) {
    distances(x, y, circle, away);
    if (round < SPREADS) {
      for (let i = 0; i < n; i += 1) sorted[i] = Math.abs(away[i]!);
      spread = MAD * medianOf(sorted);
    }
    weigh(away, spread, circle, weights);
    const move = moveOf(sumsOf(x, y, weights, circle), 1);
    const next: Circle | undefined = move && moved(circle, move);
    if (next === undefined || !(next.radius < 1e6 * start.radius)) return undefined;
    const by = Math.abs(move![1]) + Math.abs(move![2]);
    circle = next;
    if (by < SETTLED * circle.radius) break;
  }
  return circle === undefined ? undefined : describeFit(x, y, weights, circle, robust);
}

/** Distance of each point from a circle, above 0 outside. */
function distances(x: ArrayLike<number>, y: ArrayLike<number>, circle: Circle, away: Float64Array): void {
  for (let i = 0; i < away.length; i += 1) {
    const dx = x[i]! - circle.x;
    const dy = y[i]! - circle.y;
    away[i] = Math.sqrt(dx * dx + dy * dy) - circle.radius;
  }
}

/** Tukey's weights of distances about their spread; all as they were where there is none. */
function weigh(away: Float64Array, spread: number, circle: Circle, weights: Float64Array): void {
  if (!(spread > 1e-12 * circle.radius)) return;
  const perReach = 1 / (TUKEY * spread);
  for (let i = 0; i < away.length; i += 1) {
    const share = away[i]! * perReach;
    const left = Math.max(0, 1 - share * share);
    weights[i] = left * left;
  }
}

/** Sums over the points: normal matrix (upper half), gradient, squares. */
interface Sums {
  readonly matrix: readonly [number, number, number, number, number, number];
  readonly gradient: readonly [number, number, number];
  readonly squares: number;
}

function sumsOf(x: ArrayLike<number>, y: ArrayLike<number>, weights: Float64Array, circle: Circle): Sums {
  let uu = 0;
  let uv = 0;
  let vv = 0;
  let u1 = 0;
  let v1 = 0;
  let n1 = 0;
  let gu = 0;
  let gv = 0;
  let g1 = 0;
  let squares = 0;
  for (let i = 0; i < x.length; i += 1) {
    const w = weights[i]!;
    if (w === 0) continue;
    const dx = x[i]! - circle.x;
    const dy = y[i]! - circle.y;
    const length = Math.sqrt(dx * dx + dy * dy) || 1e-300;
    const u = dx / length;
    const v = dy / length;
    const r = length - circle.radius;
    uu += w * u * u;
    uv += w * u * v;
    vv += w * v * v;
    u1 += w * u;
    v1 += w * v;
    n1 += w;
    gu += w * u * r;
    gv += w * v * r;
    g1 += w * r;
    squares += w * r * r;
  }
  return { matrix: [uu, uv, u1, vv, v1, n1], gradient: [gu, gv, g1], squares };
}

/** Levenberg-Marquardt on the distances; few steps where the start is near. */
function leastDistances(
  x: ArrayLike<number>,
  y: ArrayLike<number>,
  weights: Float64Array,
  start: Circle,
  steps: number,
): Circle | undefined {
  let circle = start;
  let damping = 1e-6;
  let sums = sumsOf(x, y, weights, circle);
  for (let step = 0; step < steps; step += 1) {
    const move = moveOf(sums, 1 + damping);
    if (move === undefined) return undefined;
    const next = moved(circle, move);
    const nextSums = sumsOf(x, y, weights, next);
    if (!Number.isFinite(nextSums.squares) || next.radius > 1e6 * start.radius) return undefined;
    if (nextSums.squares <= sums.squares) {
      circle = next;
      sums = nextSums;
      damping = Math.max(damping / 10, 1e-14);
      if (Math.abs(move[0]) + Math.abs(move[1]) + Math.abs(move[2]) < 1e-10 * circle.radius) break;
    } else {
      damping *= 100;
      if (damping > 1e12) break;
    }
  }
  return circle;
}

/** The Gauss-Newton step of centre and radius, damped by a factor on the diagonal; undefined where the points leave it open. */
function moveOf({ matrix, gradient: [gx, gy, gr] }: Sums, grown: number): Move | undefined {
  const inverse = inverse3(matrix, grown);
  if (inverse === undefined) return undefined;
  const [a, b, c] = inverse as [number[], number[], number[]];
  return [
    a[0]! * gx + a[1]! * gy + a[2]! * gr,
    b[0]! * gx + b[1]! * gy + b[2]! * gr,
    c[0]! * gx + c[1]! * gy + c[2]! * gr,
  ];
}

/** A step of centre across, centre upwards and radius [m]. */
type Move = readonly [number, number, number];

function moved(circle: Circle, [x, y, radius]: Move): Circle {
  return { x: circle.x + x, y: circle.y + y, radius: circle.radius + radius };
}

/** Inverse of a symmetric 3 x 3 matrix from its upper half, its diagonal grown by a factor. */
function inverse3(half: Sums['matrix'], grown: number): number[][] | undefined {
  const [a, b, c, e, f, i] = [half[0] * grown, half[1], half[2], half[3] * grown, half[4], half[5] * grown];
  const determinant = a * (e * i - f * f) - b * (b * i - f * c) + c * (b * f - e * c);
  if (!(Math.abs(determinant) > 1e-300)) return undefined;
  const ab = (c * f - b * i) / determinant;
  const ac = (b * f - c * e) / determinant;
  const bc = (b * c - a * f) / determinant;
  return [
    [(e * i - f * f) / determinant, ab, ac],
    [ab, (a * i - c * c) / determinant, bc],
    [ac, bc, (a * e - b * b) / determinant],
  ];
}

/** Uncertainty of the radius by the sandwich of the scatter that each point shows: noise of a profiler is upright, not along the normals. */
function describeFit(
  x: ArrayLike<number>,
  y: ArrayLike<number>,
  weights: Float64Array,
  circle: Circle,
  robust: boolean,
): CircleFit | undefined {
  const inverse = inverse3(sumsOf(x, y, weights, circle).matrix, 1);
  if (inverse === undefined) return undefined;
  const row = inverse[2]!;
  let variance = 0;
  let squares = 0;
  let total = 0;
  let lag = 0;
  let before: number | undefined;
  for (let i = 0; i < x.length; i += 1) {
    const w = weights[i]!;
    if (w === 0) continue;
    const dx = x[i]! - circle.x;
    const dy = y[i]! - circle.y;
    const length = Math.sqrt(dx * dx + dy * dy) || 1e-300;
    const r = length - circle.radius;
    const influence = (row[0]! * dx) / length + (row[1]! * dy) / length + row[2]!;
    variance += (w * r * influence) ** 2;
    squares += w * r * r;
    total += w;
    if (before !== undefined) lag += r * before;
    before = r;
  }
  const degrees = total - 3;
  if (degrees < 1) return undefined;
  const correlation = Math.min(
    0.95,
    Math.max(0, lag / Math.max(squares, 1e-300) - 1.5 / Math.sqrt(x.length)),
  );
  const inflation = ((total / degrees) * (1 + correlation)) / (1 - correlation);
  return {
    ...circle,
    radiusU: Math.sqrt(variance * inflation * (robust ? ROBUST_SANDWICH : 1)),
    degrees,
    scatter: Math.sqrt(squares / degrees),
    squares,
    weights,
  };
}

/** Factor on the sandwich of weighted residuals that makes it right for a fit by Tukey's weights: (mean weight over mean slope of the influence) squared, at the normal [-]. */
const ROBUST_SANDWICH = 1.458;

/** Median of values, which are put into another order on the way. */
export function medianOf(values: Float64Array): number {
  const n = values.length;
  if (n === 0) return Number.NaN;
  const half = n >> 1;
  placeOrder(values, half, 0, n - 1);
  const upper = values[half]!;
  if (n % 2 === 1) return upper;
  let lower = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < half; i += 1) if (values[i]! > lower) lower = values[i]!;
  return (lower + upper) / 2;
}
