/** A Gaussian process as it stands at places that were read and at places that are asked for. */
export interface GaussianPrior {
  /** Covariance between the places read, row by row [unit of the values squared]. */
  readonly read: readonly (readonly number[])[];
  /** Covariance of each place asked for with each place read [unit of the values squared]. */
  readonly across: readonly (readonly number[])[];
  /** Variance at each place asked for [unit of the values squared]. */
  readonly asked: readonly number[];
}

/** What readings say of a Gaussian process. */
export interface GaussianPosterior {
  /** Mean at each place asked for [unit of the values]. */
  readonly mean: readonly number[];
  /** Variance of the process there, without the noise of a reading [unit squared]. */
  readonly variance: readonly number[];
  /** ln of the density of the readings; NaN with an unknown mean [-]. */
  readonly lnDensity: number;
}

/**
 * Conditions a Gaussian process on readings, exactly: cubic in their number.
 *
 * With an unknown mean this is ordinary kriging: the mean is estimated from the readings, and what is not known of
 * it adds to the variance.
 *
 * @param prior - covariances [record], positive definite
 * @param values - readings, less the mean where it is known [list], as many as places read
 * @param noise - standard deviation of each reading [list], >= 0
 * @param mean - whether the mean is known, and then 0 [text], known or unknown
 * @returns means and variances at the places asked for [record]
 * @source Rasmussen and Williams, Gaussian Processes for Machine Learning (2006), algorithm 2.1; ordinary kriging: Isaaks and Srivastava, An Introduction to Applied Geostatistics (1989), chapter 12
 * @example
 * conditionGaussian({ read: [[1]], across: [[0.5]], asked: [1] }, [2], [1], 'known') // => {"mean":[0.5],"variance":[0.875],"lnDensity":-2.265512123484645}
 */
export function conditionGaussian(
  prior: GaussianPrior,
  values: readonly number[],
  noise: readonly number[],
  mean: 'known' | 'unknown',
): GaussianPosterior {
  const n = values.length;
  if (n === 0) {
    return { mean: prior.asked.map(() => 0), variance: [...prior.asked], lnDensity: 0 };
  }
  const lower = choleskyOf(prior.read, noise);
  const solve = (right: readonly number[]): number[] => solveWith(lower, right);
  const dot = (a: readonly number[], b: readonly number[]): number =>
    a.reduce((sum, value, i) => sum + value * b[i]!, 0);
  const ones = values.map(() => 1);
  const onesSolved = mean === 'unknown' ? solve(ones) : [];
  const weight = mean === 'unknown' ? dot(ones, onesSolved) : 0;
  const middle = mean === 'unknown' ? dot(onesSolved, values) / weight : 0;
  const away = values.map((value) => value - middle);
  const solved = solve(away);
  const means: number[] = [];
  const variances: number[] = [];
  for (const [k, across] of prior.across.entries()) {
    const row = forwards(lower, across);
    let explained = 0;
    for (let i = 0; i < n; i += 1) explained += row[i]! * row[i]!;
    const left = mean === 'unknown' ? (1 - dot(onesSolved, across)) ** 2 / weight : 0;
    means.push(middle + dot(across, solved));
    variances.push(Math.max(0, prior.asked[k]! - explained + left));
  }
  let logs = 0;
  for (let i = 0; i < n; i += 1) logs += Math.log(lower[i]![i]!);
  const lnDensity =
    mean === 'known' ? -0.5 * dot(away, solved) - logs - (n / 2) * Math.log(2 * Math.PI) : Number.NaN;
  return { mean: means, variance: variances, lnDensity };
}

/** Lower factor of a positive definite matrix, its diagonal grown by the variance of each reading; row by row. */
function choleskyOf(matrix: readonly (readonly number[])[], noise: readonly number[]): Float64Array[] {
  const lower: Float64Array[] = [];
  for (const [i, from] of matrix.entries()) {
    const row = new Float64Array(i + 1);
    for (let j = 0; j < i; j += 1) row[j] = (from[j]! - dotUpTo(row, lower[j]!, j)) / lower[j]![j]!;
    row[i] = Math.sqrt(Math.max(from[i]! + noise[i]! ** 2 - dotUpTo(row, row, i), Number.MIN_VALUE));
    lower.push(row);
  }
  return lower;
}

/** Product of two rows over their first elements; four sums at once, for the processor's sake. */
function dotUpTo(a: Float64Array, b: Float64Array, count: number): number {
  let [s0, s1, s2, s3] = [0, 0, 0, 0];
  let k = 0;
  for (; k + 3 < count; k += 4) {
    s0 += a[k]! * b[k]!;
    s1 += a[k + 1]! * b[k + 1]!;
    s2 += a[k + 2]! * b[k + 2]!;
    s3 += a[k + 3]! * b[k + 3]!;
  }
  for (; k < count; k += 1) s0 += a[k]! * b[k]!;
  return s0 + s1 + (s2 + s3);
}

/** Solves with the lower factor alone. */
function forwards(lower: readonly Float64Array[], right: readonly number[]): Float64Array {
  const out = new Float64Array(lower.length);
  for (let i = 0; i < lower.length; i += 1) out[i] = (right[i]! - dotUpTo(lower[i]!, out, i)) / lower[i]![i]!;
  return out;
}

/** Solves with the whole matrix. */
function solveWith(lower: readonly Float64Array[], right: readonly number[]): number[] {
  const out = forwards(lower, right);
  for (let i = lower.length - 1; i >= 0; i -= 1) {
    const row = lower[i]!;
    const value = out[i]! / row[i]!;
    out[i] = value;
    for (let j = 0; j < i; j += 1) out[j]! -= row[j]! * value;
  }
  return [...out];
}
