import type { DrawStream } from '../../numeric/index.ts';
import { type SeamReading, type SeamSpread, type SeamStates, seamStates } from './seam-states.ts';

/** What prediction and readings together say along a seam. */
export interface SeamPosterior {
  /** Places [m]. */
  readonly at: readonly number[];
  /** Mean at each, less the mean of the prediction [unit of the readings]. */
  readonly mean: readonly number[];
  /** Standard deviation at each [unit of the readings]. */
  readonly sd: readonly number[];
  /** Covariance of one place, by its index, with all. */
  readonly covarianceWith: (index: number) => Float64Array;
  /** One course as it may be. */
  readonly draw: (stream: DrawStream) => Float64Array;
}

/**
 * Fuses a prediction along a seam with readings: a Gaussian process with a common part and a Matern 3/2 course.
 *
 * Solved by a filter that is linear in the number of readings; the same to rounding as the exact answer
 * (`conditionGaussian`), which a test compares up to 500 readings.
 *
 * @param spread - standard deviations and range [record], course and range > 0
 * @param readings - readings less the prediction [list], each with a standard deviation > 0
 * @param at - places asked for [list], rising
 * @returns the process at the places asked for [record]
 * @source Hartikainen and Särkkä, IEEE MLSP 2010 (memory), held to Rasmussen and Williams, Gaussian Processes for Machine Learning (2006), algorithm 2.1
 * @example
 * fuseSeam({ common: 1, course: 0.5, range: 0.25 }, [{ at: 1, value: 1, sd: 0.5 }], [1]).mean // => [0.8333333333333333]
 */
export function fuseSeam(
  spread: SeamSpread,
  readings: readonly SeamReading[],
  at: readonly number[],
): SeamPosterior {
  const states = seamStates(spread, readings, at);
  const places = placesIn(states, at);
  const pick = (whole: Float64Array): Float64Array => Float64Array.from(places, (index) => whole[index]!);
  return {
    at,
    mean: [...pick(states.mean)],
    sd: [...pick(states.variance)].map(Math.sqrt),
    covarianceWith: (index) => pick(states.covarianceWith(places[index]!)),
    draw: (stream) => pick(states.draw(stream)),
  };
}

/** Index of each place asked for among all places of the states. */
function placesIn(states: SeamStates, at: readonly number[]): Uint32Array {
  const out = new Uint32Array(at.length);
  let k = 0;
  for (const [i, place] of at.entries()) {
    while (k < states.at.length - 1 && Math.abs(states.at[k + 1]! - place) <= Math.abs(states.at[k]! - place))
      k += 1;
    out[i] = k;
  }
  return out;
}
