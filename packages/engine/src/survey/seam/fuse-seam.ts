import type { DrawStream } from '../../numeric/index.ts';
import { seamCorrelation } from '../../removal/index.ts';
import { conditionGaussian } from './condition-gaussian.ts';
import { type SeamReading, type SeamSpread, type SeamStates, seamStates } from './seam-states.ts';

/** Readings up to which the exact answer is taken [-]. */
const EXACT_MOST = 100;

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
 * Up to 100 readings are solved exactly, more by a filter that is linear in their number; both give the same.
 *
 * @param spread - standard deviations and range [record], course and range > 0
 * @param readings - readings less the prediction [list], each with a standard deviation > 0
 * @param at - places asked for [list], rising
 * @param way - how it is solved [text], exact or states; left out: by the number of readings
 * @returns the process at the places asked for [record]
 * @source Rasmussen and Williams, Gaussian Processes for Machine Learning (2006), algorithm 2.1
 * @example
 * fuseSeam({ common: 1, course: 0.5, range: 0.25 }, [{ at: 1, value: 1, sd: 0.5 }], [1]).mean // => [0.8333333333333333]
 */
export function fuseSeam(
  spread: SeamSpread,
  readings: readonly SeamReading[],
  at: readonly number[],
  way: 'exact' | 'states' = readings.length <= EXACT_MOST ? 'exact' : 'states',
): SeamPosterior {
  const states = lazily(() => seamStates(spread, readings, at));
  const places = lazily(() => placesIn(states(), at));
  const pick = (whole: Float64Array): Float64Array => Float64Array.from(places(), (index) => whole[index]!);
  const later = {
    at,
    covarianceWith: (index: number): Float64Array => pick(states().covarianceWith(places()[index]!)),
    draw: (stream: DrawStream): Float64Array => pick(states().draw(stream)),
  };
  if (way === 'states') {
    return {
      ...later,
      mean: [...pick(states().mean)],
      sd: [...pick(states().variance)].map(Math.sqrt),
    };
  }
  const covariance = (a: number, b: number): number =>
    spread.common ** 2 + spread.course ** 2 * seamCorrelation(a - b, spread.range);
  const { mean, variance } = conditionGaussian(
    {
      read: readings.map((one) => readings.map((other) => covariance(one.at, other.at))),
      across: at.map((place) => readings.map((one) => covariance(place, one.at))),
      asked: at.map(() => spread.common ** 2 + spread.course ** 2),
    },
    readings.map(({ value }) => value),
    readings.map(({ sd }) => sd),
    'known',
  );
  return { ...later, mean, sd: variance.map(Math.sqrt) };
}

function lazily<T>(make: () => T): () => T {
  let made: T | undefined;
  return () => {
    made ??= make();
    return made;
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
