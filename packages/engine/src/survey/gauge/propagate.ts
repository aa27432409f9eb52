import { type DrawStream, drawStream } from '../../numeric/index.ts';

/** One input of a measurement. */
export interface UncertainInput {
  /** Best estimate [unit of the input]. */
  readonly value: number;
  /** Standard uncertainty [unit of the input]. */
  readonly u: number;
  /** Degrees of freedom of that; left out: very many [-]. */
  readonly degrees?: number;
}

/** What a measurement is good to, by the law of propagation. */
export interface Propagated {
  /** Best estimate [unit of the result]. */
  readonly value: number;
  /** Standard uncertainty, first order [unit of the result]. */
  readonly u: number;
  /** The same with the terms of second order of independent inputs [unit of the result]. */
  readonly uSecond: number;
  /** Effective degrees of freedom [-]. */
  readonly degrees: number;
}

/**
 * Carries uncertainties of inputs through a model: the law of propagation, with correlations.
 *
 * @param model - result of the inputs [function], smooth about their values
 * @param inputs - the inputs [list], each u >= 0
 * @param correlation - correlation of two inputs by their places [function], -1 to 1; left out: none
 * @returns estimate and uncertainties [record]
 * @source JCGM 100:2008 (GUM), 5.1.2 with its note (second order), 5.2.2 (correlations), G.4.1 (degrees of freedom)
 * @example
 * propagate(([a, b]) => a * b, [{ value: 2, u: 0.1 }, { value: 3, u: 0.2 }]).u // => 0.5
 */
export function propagate(
  model: (values: readonly number[]) => number,
  inputs: readonly UncertainInput[],
  correlation: (one: number, other: number) => number = () => 0,
): Propagated {
  const values = inputs.map(({ value }) => value);
  const steps = inputs.map(({ value, u }) => (u > 0 ? u : Math.max(Math.abs(value), 1)) * 1e-2);
  const at = (moves: Readonly<Record<number, number>>): number =>
    model(values.map((value, i) => value + (moves[i] ?? 0) * steps[i]!));
  const value = model(values);
  const slopes = inputs.map((_, i) => (at({ [i]: 1 }) - at({ [i]: -1 })) / (2 * steps[i]!));
  const parts = slopes.map((slope, i) => slope * inputs[i]!.u);
  let variance = 0;
  parts.forEach((one, i) => {
    parts.forEach((other, j) => {
      variance += one * other * (i === j ? 1 : correlation(i, j));
    });
  });
  let second = 0;
  inputs.forEach((one, i) => {
    inputs.forEach((other, j) => {
      if (one.u === 0 || other.u === 0) return;
      const mixed =
        i === j
          ? (at({ [i]: 1 }) - 2 * value + at({ [i]: -1 })) / steps[i]! ** 2
          : (at({ [i]: 1, [j]: 1 }) -
              at({ [i]: 1, [j]: -1 }) -
              at({ [i]: -1, [j]: 1 }) +
              at({ [i]: -1, [j]: -1 })) /
            (4 * steps[i]! * steps[j]!);
      second += 0.5 * (mixed * one.u * other.u) ** 2;
    });
  });
  const degrees =
    variance ** 2 /
    parts.reduce(
      (sum, part, i) => sum + (inputs[i]!.degrees === undefined ? 0 : part ** 4 / inputs[i]!.degrees!),
      0,
    );
  return { value, u: Math.sqrt(variance), uSecond: Math.sqrt(variance + second), degrees };
}

/** What a measurement is good to, by draws. */
export interface DrawnResult {
  /** Mean of the results [unit of the result]. */
  readonly value: number;
  /** Their standard deviation [unit of the result]. */
  readonly u: number;
  /** Lower end of the interval that holds 95 % with equal tails [unit of the result]. */
  readonly low: number;
  /** Upper end of it [unit of the result]. */
  readonly high: number;
}

/**
 * Carries distributions of inputs through a model by draws: what the law of propagation is checked with.
 *
 * @param model - one result from a stream of draws [function], any
 * @param count - draws [-], at least 1000
 * @param seed - seed [-], a whole number from 0 to 2^31 - 1
 * @returns mean, standard deviation and interval [record]
 * @source JCGM 101:2008, 7
 * @example
 * Math.abs(propagateByDraws((draws) => 3 + draws.normal(), 20000, 1).value - 3) < 0.03 // => true
 */
export function propagateByDraws(
  model: (draws: DrawStream) => number,
  count: number,
  seed: number,
): DrawnResult {
  const stream = drawStream(seed);
  const results = Float64Array.from({ length: count }, () => model(stream)).sort();
  const value = results.reduce((sum, each) => sum + each, 0) / count;
  const variance = results.reduce((sum, each) => sum + (each - value) ** 2, 0) / (count - 1);
  return {
    value,
    u: Math.sqrt(variance),
    low: results[Math.floor(0.025 * count)]!,
    high: results[Math.ceil(0.975 * count) - 1]!,
  };
}
