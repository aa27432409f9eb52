import { type NormalPart, normalProbability } from '../numeric/index.ts';

/**
 * Continuous ranked probability score of a mixture of normal distributions: how far a prediction was from what came.
 *
 * Sum w A(y - m, s2) - 1/2 sum w w' A(m - m', s2 + s2'), with A(m, s2) = E |N(m, s2)|. A part without variance is a point.
 *
 * @param parts - the parts [list], at least one, variances >= 0
 * @param seen - what came [-], any
 * @returns the score, less is better [-]
 * @source Grimit, Gneiting, Berrocal and Johnson, QJRMS 132 (2006) 2925-2942, equation 5 (memory); checked in published/
 * @example
 * crpsOfMixture([{ weight: 1, mean: 0, variance: 1 }], 0) // => 0.233694977255
 */
export function crpsOfMixture(parts: readonly NormalPart[], seen: number): number {
  let score = 0;
  for (const one of parts) {
    score += one.weight * meanDistance(seen - one.mean, one.variance);
    for (const other of parts) {
      score -=
        0.5 * one.weight * other.weight * meanDistance(one.mean - other.mean, one.variance + other.variance);
    }
  }
  return score;
}

/** Mean of |N(mean, variance)|. */
function meanDistance(mean: number, variance: number): number {
  if (variance === 0) return Math.abs(mean);
  const sd = Math.sqrt(variance);
  const z = mean / sd;
  return mean * (2 * normalProbability(z) - 1) + 2 * sd * (Math.exp(-(z * z) / 2) / Math.sqrt(2 * Math.PI));
}
