import { CholeskyDecomposition, Matrix } from 'ml-matrix';

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
  const matrix = new Matrix(
    prior.read.map((row, i) => row.map((value, j) => (i === j ? value + noise[i]! ** 2 : value))),
  );
  const factor = new CholeskyDecomposition(matrix);
  const lower = factor.lowerTriangularMatrix;
  const solve = (right: readonly number[]): number[] =>
    factor.solve(Matrix.columnVector([...right])).to1DArray();
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
  const row = new Float64Array(n);
  for (const [k, across] of prior.across.entries()) {
    let explained = 0;
    for (let i = 0; i < n; i += 1) {
      let sum = across[i]!;
      for (let j = 0; j < i; j += 1) sum -= lower.get(i, j) * row[j]!;
      row[i] = sum / lower.get(i, i);
      explained += row[i]! ** 2;
    }
    const left = mean === 'unknown' ? (1 - dot(onesSolved, across)) ** 2 / weight : 0;
    means.push(middle + dot(across, solved));
    variances.push(Math.max(0, prior.asked[k]! - explained + left));
  }
  let logs = 0;
  for (let i = 0; i < n; i += 1) logs += Math.log(lower.get(i, i));
  const lnDensity =
    mean === 'known' ? -0.5 * dot(away, solved) - logs - (n / 2) * Math.log(2 * Math.PI) : Number.NaN;
  return { mean: means, variance: variances, lnDensity };
}
