import { CholeskyDecomposition, Matrix } from 'ml-matrix';
import { symmetricInverse } from './symmetric-inverse.ts';

/** What is known of a linear law y = x . beta + N(0, s2): a normal-inverse-gamma distribution. */
export interface RegressionBelief {
  /** Mean of the coefficients [-]. */
  readonly mean: readonly number[];
  /** Precision of the coefficients in units of 1/s2, row by row [-]. */
  readonly precision: readonly (readonly number[])[];
  /** Shape of the inverse gamma of s2 [-]. */
  readonly shape: number;
  /** Scale of the inverse gamma of s2 [-]. */
  readonly scale: number;
}

/** One observation: the regressors and the response. */
export interface Observation {
  /** Regressors [-]. */
  readonly x: readonly number[];
  /** Response [-]. */
  readonly y: number;
}

/** Location, spread and degrees of freedom of a Student-t prediction. */
export interface StudentPrediction {
  /** Location [-]. */
  readonly location: number;
  /** Spread: a quantile is location + spread times the t quantile [-]. */
  readonly spread: number;
  /** Degrees of freedom [-]. */
  readonly degrees: number;
}

/**
 * Updates a belief with observations, in closed form.
 *
 * P' = P + X'X; m' = P'^-1 (P m + X'y); a' = a + n/2; b' = b + (y'y + m'Pm - m''P'm')/2,
 * solved through Cholesky.
 *
 * @param belief - what is known before [record], precision positive definite, shape and scale > 0
 * @param observations - what was observed [list], each with as many regressors as coefficients
 * @returns what is known after [record]
 * @source Bishop, Pattern Recognition and Machine Learning (2006), section 3.3 and exercise 3.12; any conjugate linear model text
 * @example
 * updateBelief({ mean: [0], precision: [[1]], shape: 1, scale: 1 }, [{ x: [1], y: 2 }]) // => {"mean":[1],"precision":[[2]],"shape":1.5,"scale":2}
 */
export function updateBelief(
  belief: RegressionBelief,
  observations: readonly Observation[],
): RegressionBelief {
  if (observations.length === 0) return belief;
  const x = new Matrix(observations.map((row) => [...row.x]));
  const y = Matrix.columnVector(observations.map((row) => row.y));
  const before = new Matrix(belief.precision.map((row) => [...row]));
  const mean = Matrix.columnVector([...belief.mean]);
  const precision = Matrix.add(before, x.transpose().mmul(x));
  const pulled = Matrix.add(before.mmul(mean), x.transpose().mmul(y));
  const updated = new CholeskyDecomposition(precision).solve(pulled);
  // Squares of what is left over, in place of the difference of large sums, which loses digits.
  const residual = Matrix.sub(y, x.mmul(updated));
  const shift = Matrix.sub(updated, mean);
  const spread = residual.dot(residual) + shift.transpose().mmul(before).mmul(shift).get(0, 0);
  return {
    mean: updated.to1DArray(),
    precision: precision.to2DArray(),
    shape: belief.shape + observations.length / 2,
    scale: belief.scale + spread / 2,
  };
}

/**
 * Predicts the response at given regressors.
 *
 * Location x.m, spread sqrt(b/a (1 + x'P^-1 x)), 2a degrees of freedom.
 *
 * @param belief - what is known [record], precision positive definite
 * @param x - regressors [list], as many as coefficients
 * @returns the Student-t prediction [record]
 * @source Bishop, Pattern Recognition and Machine Learning (2006), section 3.3; any conjugate linear model text
 * @example
 * predict({ mean: [1], precision: [[2]], shape: 1.5, scale: 2 }, [1]) // => {"location":1,"spread":1.414213562,"degrees":3}
 */
export function predict(belief: RegressionBelief, x: readonly number[]): StudentPrediction {
  const row = Matrix.rowVector([...x]);
  const precision = new Matrix(belief.precision.map((line) => [...line]));
  const solved = new CholeskyDecomposition(precision).solve(row.transpose());
  const leverage = row.mmul(solved).get(0, 0);
  const location = x.reduce((sum, value, index) => sum + value * belief.mean[index]!, 0);
  return {
    location,
    spread: Math.sqrt((belief.scale / belief.shape) * (1 + leverage)),
    degrees: 2 * belief.shape,
  };
}

/**
 * Lower triangle L with L L' = P^-1, which turns standard normals into coefficient draws m + s L z.
 *
 * @param belief - what is known [record], precision positive definite
 * @returns the triangle, row by row [list]
 * @source Cholesky factor of the inverse precision
 * @example
 * coefficientFactor({ mean: [0], precision: [[4]], shape: 1, scale: 1 }) // => [[0.5]]
 */
export function coefficientFactor(belief: RegressionBelief): number[][] {
  return new CholeskyDecomposition(
    new Matrix(symmetricInverse(belief.precision)),
  ).lowerTriangularMatrix.to2DArray();
}
