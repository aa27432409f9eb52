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
  for (const value of x) {
    low = Math.min(low, value);
    high = Math.max(high, value);
  }
  const centre = (low + high) / 2;
  const scale = (high - low) / 2;
  if (!(scale > 0)) return undefined;
  const weights = new Float64Array(n).fill(1);
  const away = new Float64Array(n);
  const sorted = new Float64Array(n);
  let solved = solve(x, y, weights, centre, scale, size);
  for (let round = 0; robust && round < ROUNDS && solved !== undefined; round += 1) {
    for (let i = 0; i < n; i += 1)
      away[i] = Math.abs(y[i]! - value(solved.coefficients, (x[i]! - centre) / scale));
    sorted.set(away);
    const spread = MAD * medianOf(sorted);
    if (!(spread > 0)) break;
    let changed = 0;
    for (let i = 0; i < n; i += 1) {
      const share = away[i]! / (TUKEY * spread);
      const weight = share < 1 ? (1 - share * share) ** 2 : 0;
      changed = Math.max(changed, Math.abs(weight - weights[i]!));
      weights[i] = weight;
    }
    const next = solve(x, y, weights, centre, scale, size);
    if (next === undefined) break;
    solved = next;
    if (changed < 0.02) break;
  }
  if (solved === undefined) return undefined;
  let squares = 0;
  let total = 0;
  let lag = 0;
  let before: number | undefined;
  for (let i = 0; i < n; i += 1) {
    const w = weights[i]!;
    if (w === 0) continue;
    const r = y[i]! - value(solved.coefficients, (x[i]! - centre) / scale);
    squares += w * r * r;
    total += w;
    if (before !== undefined) lag += r * before;
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
  x: Float64Array,
  y: Float64Array,
  weights: Float64Array,
  centre: number,
  scale: number,
  size: number,
): { coefficients: number[]; inverse: number[][] } | undefined {
  const sums = new Float64Array(2 * size - 1);
  const right = new Float64Array(size);
  for (let i = 0; i < x.length; i += 1) {
    const w = weights[i]!;
    if (w === 0) continue;
    const t = (x[i]! - centre) / scale;
    let power = w;
    for (let k = 0; k < 2 * size - 1; k += 1) {
      sums[k]! += power;
      if (k < size) right[k]! += power * y[i]!;
      power *= t;
    }
  }
  const inverse = inverseOf(
    Array.from({ length: size }, (_, i) => Array.from({ length: size }, (__, j) => sums[i + j]!)),
  );
  if (inverse === undefined) return undefined;
  const coefficients = inverse.map((row) => row.reduce((sum, each, j) => sum + each * right[j]!, 0));
  return { coefficients, inverse };
}

/** Inverse of a small positive definite matrix by Gauss and Jordan; undefined where it is singular. */
export function inverseOf(rows: readonly (readonly number[])[]): number[][] | undefined {
  const n = rows.length;
  const a = rows.map((row, i) => [...row, ...rows.map((_, j) => (i === j ? 1 : 0))]);
  const most = Math.max(...rows.map((row, i) => Math.abs(row[i]!)));
  for (let k = 0; k < n; k += 1) {
    let pivot = k;
    for (let i = k + 1; i < n; i += 1) if (Math.abs(a[i]![k]!) > Math.abs(a[pivot]![k]!)) pivot = i;
    if (!(Math.abs(a[pivot]![k]!) > 1e-13 * most)) return undefined;
    [a[k], a[pivot]] = [a[pivot]!, a[k]!];
    const head = a[k]![k]!;
    for (let j = 0; j < 2 * n; j += 1) a[k]![j]! /= head;
    for (let i = 0; i < n; i += 1) {
      if (i === k) continue;
      const factor = a[i]![k]!;
      if (factor === 0) continue;
      for (let j = 0; j < 2 * n; j += 1) a[i]![j]! -= factor * a[k]![j]!;
    }
  }
  return a.map((row) => row.slice(n));
}
