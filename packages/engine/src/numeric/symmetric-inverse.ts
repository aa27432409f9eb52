import { CholeskyDecomposition, Matrix } from 'ml-matrix';

/**
 * Inverse of a symmetric positive definite matrix, symmetric to the last bit.
 *
 * Rounding leaves the two halves of an inverse a little apart, and a Cholesky decomposition refuses that.
 *
 * @param rows - the matrix, row by row [list], symmetric and positive definite
 * @returns the inverse, row by row [list]
 * @source Cholesky decomposition, any numerical analysis text
 * @example
 * symmetricInverse([[4, 0], [0, 2]]) // => [[0.25, 0], [0, 0.5]]
 */
export function symmetricInverse(rows: readonly (readonly number[])[]): number[][] {
  const decomposition = new CholeskyDecomposition(new Matrix(rows.map((row) => [...row])));
  const inverse = decomposition.solve(Matrix.eye(rows.length));
  return Matrix.add(inverse, inverse.transpose()).mul(0.5).to2DArray();
}
