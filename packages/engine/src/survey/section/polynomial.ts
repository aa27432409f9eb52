import { MAD, medianOf, TUKEY } from './circle.ts';

/** A polynomial through points, y on x, with what its coefficients are good to. */
export interface PolynomialFit {
  /** Middle of the x values; the polynomial is in (x - centre) / scale. */
  readonly centre: number;
  /** Half of their range. */
  readonly scale: number;
  /** Coefficients from the constant up. */
  readonly coefficients: readonly number[];
  /** Inverse of the normal matrix; times the variance of one point it is the covariance. */
  readonly inverse: readonly (readonly number[])[];
  /** Variance of one point about the polynomial, correlation of neighbours counted in. */
  readonly variance: number;
  /** Sum of squared residuals, each by its weight. */
  readonly squares: number;
  /** Points that count, less the coefficients. */
  readonly degrees: number;
  /** Weight of each point, 0 where it is an outlier. */
  readonly weights: Float64Array;
}

const ROUNDS = 5;
/** Rounds in which the spread is taken anew [-]; held after that, since a spread that moves keeps the curve moving. */
const SPREADS = 2;

/**
 * Fits a polynomial robustly: least squares, then Tukey's weights about the median spread.
 *
 * Undefined where there are too few points for the order.
 */
export function fitPolynomial(
  x: Float64Array,
  y: Float64Array,
  order: number,
  robust = true,
): PolynomialFit | undefined {
  const n = x.length;
  const size = order + 1;
  if (n < size + 1) return undefined;
  let low = x[0]!;
  let high = x[0]!;
  for (let i = 0; i < n; i += 1) {
    if (x[i]! < low) low = x[i]!;
    if (x[i]! > high) high = x[i]!;
  }
  const centre = (low + high) / 2;
  const scale = (high - low) / 2;
  if (!(scale > 0)) return undefined;
  const perScale = 1 / scale;
  const t = new Float64Array(n);
  for (let i = 0; i < n; i += 1) t[i] = (x[i]! - centre) * perScale;
  const weights = new Float64Array(n).fill(1);
  const away = new Float64Array(n);
  const sorted = new Float64Array(n);
  let spread = 0;
  let solved = solve(t, y, weights, size);
  for (let round = 0; robust && round < ROUNDS && solved !== undefined; round += 1) {
    residuals(solved.coefficients, t, y, away);
    if (round < SPREADS) {
      for (let i = 0; i < n; i += 1) sorted[i] = Math.abs(away[i]!);
      spread = MAD * medianOf(sorted);
    }
    if (!(spread > 0)) break;
    const perReach = 1 / (TUKEY * spread);
    let changed = 0;
    for (let i = 0; i < n; i += 1) {
      const share = away[i]! * perReach;
      const left = Math.max(0, 1 - share * share);
      const weight = left * left;
      const by = Math.abs(weight - weights[i]!);
      if (by > changed) changed = by;
      weights[i] = weight;
    }
    const next = solve(t, y, weights, size);
    if (next === undefined) break;
    solved = next;
    if (changed < 0.02) break;
  }
  if (solved === undefined) return undefined;
  residuals(solved.coefficients, t, y, away);
  let squares = 0;
  let total = 0;
  let lag = 0;
  let before = 0;
  for (let i = 0; i < n; i += 1) {
    const w = weights[i]!;
    if (w === 0) continue;
    const r = away[i]!;
    squares += w * r * r;
    total += w;
    lag += r * before;
    before = r;
  }
  const degrees = total - size;
  if (!(degrees >= 1)) return undefined;
  // Tukey's weights cut the tails of good points too: at the normal, the weighted variance is that much too small
  const thin = robust ? ROBUST_VARIANCE : 1;
  const correlation = Math.min(0.95, Math.max(0, lag / Math.max(squares, 1e-300) - 1.5 / Math.sqrt(n)));
  const variance = (squares / degrees) * thin * ((1 + correlation) / (1 - correlation));
  return { centre, scale, ...solved, variance, squares, degrees, weights };
}

/** What is left of each point above a polynomial in `t`. */
function residuals(
  coefficients: readonly number[],
  t: Float64Array,
  y: Float64Array,
  away: Float64Array,
): void {
  if (coefficients.length > 3) {
    for (let i = 0; i < t.length; i += 1) away[i] = y[i]! - value(coefficients, t[i]!);
    return;
  }
  const [a = 0, b = 0, c = 0] = coefficients;
  for (let i = 0; i < t.length; i += 1) away[i] = y[i]! - a - t[i]! * (b + t[i]! * c);
}

/** Factor on the weighted variance that makes it right for a fit by Tukey's weights, from the moments of the normal distribution [-]. */
export const ROBUST_VARIANCE = 1.164;

function value(coefficients: readonly number[], t: number): number {
  let sum = 0;
  for (let k = coefficients.length - 1; k >= 0; k -= 1) sum = sum * t + coefficients[k]!;
  return sum;
}

/** The polynomial at a place. */
export function polynomialAt(fit: PolynomialFit, x: number): number {
  return value(fit.coefficients, (x - fit.centre) / fit.scale);
}

/** Its slope at a place. */
export function slopeAt(fit: PolynomialFit, x: number): number {
  const t = (x - fit.centre) / fit.scale;
  let sum = 0;
  for (let k = fit.coefficients.length - 1; k >= 1; k -= 1) sum = sum * t + k * fit.coefficients[k]!;
  return sum / fit.scale;
}

/** Variance of the polynomial's value at a place. */
export function varianceAt(fit: PolynomialFit, x: number): number {
  const t = (x - fit.centre) / fit.scale;
  const powers = fit.coefficients.map((_, k) => t ** k);
  return fit.variance * quadratic(fit.inverse, powers);
}

/** Variance of the polynomial's slope at a place. */
export function slopeVarianceAt(fit: PolynomialFit, x: number): number {
  const t = (x - fit.centre) / fit.scale;
  const powers = fit.coefficients.map((_, k) => (k === 0 ? 0 : (k * t ** (k - 1)) / fit.scale));
  return fit.variance * quadratic(fit.inverse, powers);
}

function quadratic(matrix: readonly (readonly number[])[], vector: readonly number[]): number {
  let sum = 0;
  for (let i = 0; i < vector.length; i += 1)
    for (let j = 0; j < vector.length; j += 1) sum += vector[i]! * matrix[i]![j]! * vector[j]!;
  return sum;
}

function solve(
  t: Float64Array,
  y: Float64Array,
  weights: Float64Array,
  size: number,
): { coefficients: number[]; inverse: number[][] } | undefined {
  const sums = size <= 3 ? lowSums(t, y, weights) : powerSums(t, y, weights, size);
  const rows: number[][] = [];
  for (let i = 0; i < size; i += 1) {
    const row: number[] = [];
    for (let j = 0; j < size; j += 1) row.push(sums.powers[i + j]!);
    rows.push(row);
  }
  const inverse = inverseOf(rows);
  if (inverse === undefined) return undefined;
  const coefficients: number[] = [];
  for (const row of inverse) {
    let sum = 0;
    for (let j = 0; j < size; j += 1) sum += row[j]! * sums.right[j]!;
    coefficients.push(sum);
  }
  return { coefficients, inverse };
}

/** Weighted sums of the powers of t, and of y times them. */
interface PowerSums {
  readonly powers: ArrayLike<number>;
  readonly right: ArrayLike<number>;
}

function powerSums(t: Float64Array, y: Float64Array, weights: Float64Array, size: number): PowerSums {
  const powers = new Float64Array(2 * size - 1);
  const right = new Float64Array(size);
  for (let i = 0; i < t.length; i += 1) {
    let power = weights[i]!;
    if (power === 0) continue;
    for (let k = 0; k < 2 * size - 1; k += 1) {
      powers[k]! += power;
      if (k < size) right[k]! += power * y[i]!;
      power *= t[i]!;
    }
  }
  return { powers, right };
}

/** The same up to a parabola, which nearly all fits are: sums in registers take half of the time. */
function lowSums(t: Float64Array, y: Float64Array, weights: Float64Array): PowerSums {
  let [s0, s1, s2, s3, s4, r0, r1, r2] = [0, 0, 0, 0, 0, 0, 0, 0];
  for (let i = 0; i < t.length; i += 1) {
    const w = weights[i]!;
    const wt = w * t[i]!;
    const wtt = wt * t[i]!;
    s0 += w;
    s1 += wt;
    s2 += wtt;
    s3 += wtt * t[i]!;
    s4 += wtt * t[i]! * t[i]!;
    r0 += w * y[i]!;
    r1 += wt * y[i]!;
    r2 += wtt * y[i]!;
  }
  return { powers: [s0, s1, s2, s3, s4], right: [r0, r1, r2] };
}

/** Inverse of a small positive definite matrix by Gauss and Jordan; undefined where it is singular. */
export function inverseOf(rows: readonly (readonly number[])[]): number[][] | undefined {
  const n = rows.length;
  if (n === 3) return inverse3x3(rows);
  const wide = 2 * n;
  const a = new Float64Array(n * wide);
  let most = 0;
  for (let i = 0; i < n; i += 1) {
    for (let j = 0; j < n; j += 1) a[i * wide + j] = rows[i]![j]!;
    a[i * wide + n + i] = 1;
    most = Math.max(most, Math.abs(rows[i]![i]!));
  }
  for (let k = 0; k < n; k += 1) {
    // the matrix is positive definite, so its own diagonal is the pivot
    const head = a[k * wide + k]!;
    if (!(head > 1e-13 * most)) return undefined;
    for (let j = 0; j < wide; j += 1) a[k * wide + j]! /= head;
    for (let i = 0; i < n; i += 1) {
      const factor = a[i * wide + k]!;
      if (i === k || factor === 0) continue;
      for (let j = k; j < wide; j += 1) a[i * wide + j]! -= factor * a[k * wide + j]!;
    }
  }
  const out: number[][] = [];
  for (let i = 0; i < n; i += 1) {
    const row: number[] = [];
    for (let j = 0; j < n; j += 1) row.push(a[i * wide + n + j]!);
    out.push(row);
  }
  return out;
}

/** Inverse of a symmetric 3 x 3 matrix, its rows scaled to a diagonal of 1 first. */
function inverse3x3(rows: readonly (readonly number[])[]): number[][] | undefined {
  const [d0, d1, d2] = [rows[0]![0]!, rows[1]![1]!, rows[2]![2]!];
  const most = Math.max(d0, d1, d2);
  if (!(Math.min(d0, d1, d2) > 1e-13 * most)) return undefined;
  const [g0, g1, g2] = [1 / Math.sqrt(d0), 1 / Math.sqrt(d1), 1 / Math.sqrt(d2)];
  const b = rows[0]![1]! * g0 * g1;
  const c = rows[0]![2]! * g0 * g2;
  const f = rows[1]![2]! * g1 * g2;
  const determinant = 1 + 2 * b * c * f - f * f - b * b - c * c;
  if (!(determinant > 1e-13)) return undefined;
  const ab = ((c * f - b) / determinant) * g0 * g1;
  const ac = ((b * f - c) / determinant) * g0 * g2;
  const bc = ((b * c - f) / determinant) * g1 * g2;
  return [
    [((1 - f * f) / determinant) * g0 * g0, ab, ac],
    [ab, ((1 - c * c) / determinant) * g1 * g1, bc],
    [ac, bc, ((1 - b * b) / determinant) * g2 * g2],
  ];
}
