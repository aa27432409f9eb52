import { CholeskyDecomposition, Matrix } from 'ml-matrix';
import {
  noiseSquares,
  type PassSummary,
  type SeamReadings,
  seamReadings,
  summarisePass,
} from './seam-readings.ts';

/** One reading of a pass. */
export interface NestedReading {
  /** Place along the pass, in the unit of the range [-]. */
  readonly place: number;
  /** What was read [-]. */
  readonly value: number;
  /** Variance of the reading's own noise [-]. */
  readonly variance: number;
}

/** One pass: the regressors that all its readings share, only those that are not 0, and its readings. */
export interface NestedPass {
  /** Columns of the coefficients [list]. */
  readonly columns: readonly number[];
  /** Regressor at each of these columns [list]. */
  readonly regressors: readonly number[];
  /** Variance of its own level and of its process, over those of one pass; left out: 1 [-]. */
  readonly share?: number;
  readonly readings: readonly NestedReading[];
}

/** Passes that share a draw of the group level. */
export type NestedGroup = readonly NestedPass[];

/** Standard deviations of the levels below the coefficients. */
export interface NestedSds {
  /** Common to a group [-]. */
  readonly group: number;
  /** Common to a pass [-]. */
  readonly pass: number;
  /** Of the process along a pass [-]. */
  readonly seam: number;
}

/** Normal prior of the coefficients. */
export interface NestedPrior {
  /** Means [list]. */
  readonly mean: readonly number[];
  /** Precision, row by row [list]. */
  readonly precision: readonly (readonly number[])[];
}

/** What divides the variance of each group's level, each pass's level and each reading's noise; 1: as it is. */
export interface NestedWeights {
  /** One to each group [-]. */
  readonly group: Float64Array;
  /** One to each pass, by group [-]. */
  readonly pass: readonly Float64Array[];
  /** One to each reading, by group and pass [-]. */
  readonly reading: readonly (readonly Float64Array[])[];
}

/** A model ready to be solved many times. */
export interface NestedModel {
  /** Number of coefficients [-]. */
  readonly size: number;
  readonly groups: readonly (readonly PreparedPass[])[];
  /** What is known of the coefficients from readings that are not here. */
  readonly known?: NestedInformation | undefined;
}

/** What readings say of the coefficients at given standard deviations: all that a Gaussian model needs of them. */
export interface NestedInformation {
  /** Precision, row by row [list]. */
  readonly precision: readonly (readonly number[])[];
  /** Precision times the best coefficients [list]. */
  readonly pull: readonly number[];
}

interface PreparedPass {
  /** Columns that any pass of the group has; one list for all of them. */
  readonly touched: readonly number[];
  /** Place of each column among those that the group touches. */
  readonly places: readonly number[];
  readonly columns: readonly number[];
  readonly regressors: readonly number[];
  readonly share: number;
  readonly seam: SeamReadings;
}

/** What a model says of its coefficients, given the standard deviations. */
export interface NestedSolution {
  /** ln of the marginal likelihood, coefficients integrated out; flat ones make it that of REML [-]. */
  readonly logMarginal: number;
  /** ln of the likelihood at the best coefficients: that of maximum likelihood where there is no prior [-]. */
  readonly logProfile: number;
  /** Mean of the coefficients [list]. */
  readonly mean: readonly number[];
  /** Their covariance, worked out when asked for [list]. */
  readonly covariance: () => number[][];
}

/**
 * Gets a model ready: readings in order, gaps worked out once.
 *
 * @param groups - groups of passes [list], each pass with at least one reading
 * @param size - number of coefficients [-], at least 1
 * @param range - range of the Matern 3/2 process along a pass [-], > 0
 * @param known - what is known of the coefficients from elsewhere [record], from `nestedInformation`, or left out
 * @returns the model [record]
 * @source none: bookkeeping
 * @example
 * nestedModel([[{ columns: [0], regressors: [1], readings: [{ place: 0, value: 2, variance: 1 }] }]], 1, 1).size // => 1
 */
export function nestedModel(
  groups: readonly NestedGroup[],
  size: number,
  range: number,
  known?: NestedInformation,
): NestedModel {
  return {
    size,
    known,
    groups: groups.map((passes) => {
      const touched = [...new Set(passes.flatMap(({ columns }) => columns))];
      return passes.map(({ columns, regressors, share = 1, readings }) => ({
        touched,
        places: columns.map((column) => touched.indexOf(column)),
        columns,
        regressors,
        share,
        seam: seamReadings(readings, range),
      }));
    }),
  };
}

/**
 * Weights of 1 for every group, pass and reading of a model.
 *
 * @param model - the model [record], from `nestedModel`
 * @returns the weights [record]
 * @source none: bookkeeping
 * @example
 * evenWeights(nestedModel([[]], 1, 1)).group.length // => 1
 */
export function evenWeights({ groups }: NestedModel): NestedWeights {
  return {
    group: new Float64Array(groups.length).fill(1),
    pass: groups.map((passes) => new Float64Array(passes.length).fill(1)),
    reading: groups.map((passes) => passes.map(({ seam }) => new Float64Array(seam.values.length).fill(1))),
  };
}

/**
 * Solves a linear mixed model of readings in passes in groups, given its standard deviations: exact.
 *
 * value = x . beta + group + pass + seam(place) + noise. Each pass is summed up by a state-space filter, each group's
 * level is taken out by a rank-one update, so that the work grows with the number of readings and the size of beta.
 *
 * @param model - the model [record], from `nestedModel`
 * @param sds - standard deviations of the levels [record], >= 0; several readings of a pass need noise or a seam process
 * @param prior - normal prior of the coefficients [record], or undefined for flat ones
 * @param weights - what divides the variances [record], from `evenWeights` or `outlierWeights`
 * @returns likelihoods, coefficients and their covariance [record]
 * @source Pinheiro and Bates, Mixed-Effects Models in S and S-PLUS (2000), section 2.2 (memory); Hartikainen and Sarkka, MLSP 2010 (memory)
 * @example
 * const model = nestedModel([[{ columns: [0], regressors: [1], readings: [{ place: 0, value: 2, variance: 0 }] }], [{ columns: [0], regressors: [1], readings: [{ place: 0, value: 4, variance: 0 }] }]], 1, 1);
 * solveNested(model, { group: 1, pass: 1, seam: 0 }, undefined, evenWeights(model)).mean // => [3]
 */
export function solveNested(
  model: NestedModel,
  sds: NestedSds,
  prior: NestedPrior | undefined,
  weights: NestedWeights,
): NestedSolution {
  const { size } = model;
  const precision = prior?.precision.map((row) => Float64Array.from(row)) ?? emptySquare(size);
  const pull = new Float64Array(size);
  let outer = 0;
  if (prior !== undefined) {
    for (let r = 0; r < size; r += 1) {
      for (let c = 0; c < size; c += 1) pull[r]! += prior.precision[r]![c]! * prior.mean[c]!;
      outer += pull[r]! * prior.mean[r]!;
    }
  }
  const { known } = model;
  if (known !== undefined) {
    for (let r = 0; r < size; r += 1) {
      pull[r]! += known.pull[r]!;
      for (let c = 0; c < size; c += 1) precision[r]![c]! += known.precision[r]![c]!;
    }
  }
  outer += addGroups(model, sds, weights, precision, pull);
  const factor = new CholeskyDecomposition(new Matrix(precision.map((row) => [...row])));
  const mean = factor.solve(Matrix.columnVector([...pull])).to1DArray();
  const explained = mean.reduce((sum, value, i) => sum + value * pull[i]!, 0);
  const before = prior === undefined ? 0 : logDeterminant(new Matrix(prior.precision.map((row) => [...row])));
  const after = factor.lowerTriangularMatrix.diagonal().reduce((sum, value) => sum + 2 * Math.log(value), 0);
  return {
    logMarginal: -0.5 * (outer - explained + after - before),
    logProfile: -0.5 * (outer - explained),
    mean,
    covariance: () => {
      const inverse = factor.solve(Matrix.eye(size));
      // Symmetric to the last bit, as a Cholesky decomposition of it asks for.
      return Matrix.add(inverse, inverse.transpose()).mul(0.5).to2DArray();
    },
  };
}

/**
 * What the readings of a model say of its coefficients, prior and what is known from elsewhere left out.
 *
 * @param model - the model [record], from `nestedModel`
 * @param sds - standard deviations of the levels [record], >= 0
 * @param weights - what divides the variances [record], from `evenWeights` or `outlierWeights`
 * @returns precision and pull [record]
 * @source Pinheiro and Bates, Mixed-Effects Models in S and S-PLUS (2000), section 2.2 (memory)
 * @example
 * const model = nestedModel([[{ columns: [0], regressors: [1], readings: [{ place: 0, value: 2, variance: 1 }] }]], 1, 1);
 * nestedInformation(model, { group: 1, pass: 0, seam: 0 }, evenWeights(model)).pull // => [1]
 */
export function nestedInformation(
  model: NestedModel,
  sds: NestedSds,
  weights: NestedWeights,
): NestedInformation {
  const precision = emptySquare(model.size);
  const pull = new Float64Array(model.size);
  addGroups(model, sds, weights, precision, pull);
  return { precision: precision.map((row) => [...row]), pull: [...pull] };
}

/** Adds what the groups say of the coefficients; minus twice the ln likelihood that depends on none of them. */
function addGroups(
  model: NestedModel,
  sds: NestedSds,
  weights: NestedWeights,
  precision: readonly Float64Array[],
  pull: Float64Array,
): number {
  let outer = 0;
  for (let g = 0; g < model.groups.length; g += 1) {
    const sums = sumGroup(model, sds, weights, g);
    outer += sums.rest + sums.square - sums.pull ** 2 * sums.variance;
    const { touched, regressors } = sums;
    addPasses(precision, pull, sums.passes);
    for (let r = 0; r < touched.length; r += 1) {
      pull[touched[r]!]! -= regressors[r]! * sums.pull * sums.variance;
      const row = precision[touched[r]!]!;
      for (let c = 0; c < touched.length; c += 1)
        row[touched[c]!]! -= regressors[r]! * regressors[c]! * sums.variance;
    }
  }
  return outer;
}

/** What of a model does not fit the rest: chances, from a second, ten times wider spread that any of them may be of. */
const OUTLIER_SHARE = 0.01;
const OUTLIER_VARIANCE = 100;

/**
 * Weighs down what does not fit: groups, passes and readings whose own draw is too far out for their level.
 *
 * A contaminated normal likelihood: any draw is, with a small chance, of a tenfold standard deviation. The weight is
 * the mean precision over both, given the mean square of the draw; one step of the fixed point.
 *
 * @param model - the model [record], from `nestedModel`
 * @param sds - standard deviations of the levels [record], > 0
 * @param prior - normal prior of the coefficients [record], or undefined for flat ones
 * @param weights - the weights so far [record], each above 0
 * @returns the weights after one step [record]
 * @source Little and Rubin, Statistical Analysis with Missing Data, contaminated normal model (memory); share 0.01 and tenfold spread: judgement
 * @example
 * const model = nestedModel([[{ columns: [0], regressors: [1], readings: [{ place: 0, value: 2, variance: 1 }] }]], 1, 1);
 * outlierWeights(model, { group: 1, pass: 1, seam: 1 }, undefined, evenWeights(model)).group[0] > 0.9 // => true
 */
export function outlierWeights(
  model: NestedModel,
  sds: NestedSds,
  prior: NestedPrior | undefined,
  weights: NestedWeights,
): NestedWeights {
  const solution = solveNested(model, sds, prior, weights);
  const covariance = solution.covariance();
  const group = new Float64Array(model.groups.length);
  const pass: Float64Array[] = [];
  const reading: Float64Array[][] = [];
  for (let g = 0; g < model.groups.length; g += 1) {
    const sums = sumGroup(model, sds, weights, g);
    const { touched, regressors, variance } = sums;
    let seen = sums.pull;
    let doubt = 0;
    touched.forEach((row, r) => {
      seen -= regressors[r]! * solution.mean[row]!;
      touched.forEach((column, c) => {
        doubt += regressors[r]! * covariance[row]![column]! * regressors[c]!;
      });
    });
    const level = variance * seen;
    group[g] = weightOf(level ** 2 + variance + variance ** 2 * doubt, sds.group ** 2);
    const passWeights = new Float64Array(sums.passes.length);
    const readingWeights: Float64Array[] = [];
    sums.passes.forEach(({ columns, regressors: x, mean, variance: spread }, k) => {
      const expected = columns.reduce((sum, c, i) => sum + x[i]! * solution.mean[c]!, level);
      const { seam, share } = model.groups[g]![k]!;
      const own = (share * sds.pass ** 2) / weights.pass[g]![k]!;
      const part = own / spread;
      const off = part * (mean - expected);
      passWeights[k] = weightOf(off ** 2 + own * (1 - part), share * sds.pass ** 2);
      readingWeights.push(
        noiseSquares(seam, Math.sqrt(share) * sds.seam, expected + off, weights.reading[g]![k]!).map(
          (square) => weightOf(square, 1),
        ),
      );
    });
    pass.push(passWeights);
    reading.push(readingWeights);
  }
  return { group, pass, reading };
}

/** Mean precision of a draw in units of the narrow one, given its mean square; a level that does not vary has no outlier. */
function weightOf(meanSquare: number, variance: number): number {
  if (variance === 0) return 1;
  const square = meanSquare / variance;
  const narrow = (1 - OUTLIER_SHARE) * Math.exp(-square / 2);
  const wide = (OUTLIER_SHARE * Math.exp(-square / 2 / OUTLIER_VARIANCE)) / Math.sqrt(OUTLIER_VARIANCE);
  const chance = wide / (narrow + wide);
  return 1 - chance + chance / OUTLIER_VARIANCE;
}

/** Seam spreads whose summaries are kept: the middle one of a search, and one to either side [-]. */
const KEPT_SEAMS = 3;
const kept = new WeakMap<NestedWeights, Map<number, readonly (readonly PassSummary[])[]>>();

/** Summaries of all passes; the other levels change more often than the seam's, so the latest ones are kept. */
function summariesOf(
  model: NestedModel,
  seamSd: number,
  weights: NestedWeights,
): readonly (readonly PassSummary[])[] {
  const known = kept.get(weights) ?? new Map<number, readonly (readonly PassSummary[])[]>();
  kept.set(weights, known);
  const before = known.get(seamSd);
  if (before !== undefined) return before;
  const made = model.groups.map((passes, g) =>
    passes.map(({ seam, share }, k) =>
      summarisePass(seam, Math.sqrt(share) * seamSd, weights.reading[g]![k]!),
    ),
  );
  if (known.size >= KEPT_SEAMS) known.delete(known.keys().next().value!);
  known.set(seamSd, made);
  return made;
}

interface SummedPass {
  readonly columns: readonly number[];
  readonly regressors: readonly number[];
  readonly mean: number;
  /** Variance of the mean about the coefficients and the group's level. */
  readonly variance: number;
}

interface GroupSums {
  readonly passes: readonly SummedPass[];
  /** Columns that any pass of the group has. */
  readonly touched: readonly number[];
  /** Precision-weighted sums over the passes, by the columns touched. */
  readonly regressors: Float64Array;
  readonly pull: number;
  readonly square: number;
  /** Variance of the group's level given the coefficients. */
  readonly variance: number;
  /** Minus twice the ln likelihood that depends on no coefficient. */
  readonly rest: number;
}

function sumGroup(model: NestedModel, sds: NestedSds, weights: NestedWeights, g: number): GroupSums {
  const groupVariance = sds.group ** 2 / weights.group[g]!;
  const touched = model.groups[g]![0]?.touched ?? [];
  const regressors = new Float64Array(touched.length);
  let [precision, pull, square, rest] = [0, 0, 0, 0];
  const summaries = summariesOf(model, sds.seam, weights);
  const passes = model.groups[g]!.map(({ columns, places, regressors: x, share }, k): SummedPass => {
    const summary = summaries[g]![k]!;
    const variance = summary.variance + (share * sds.pass ** 2) / weights.pass[g]![k]!;
    precision += 1 / variance;
    pull += summary.mean / variance;
    square += summary.mean ** 2 / variance;
    rest += summary.rest + Math.log(variance);
    for (let i = 0; i < places.length; i += 1) regressors[places[i]!]! += x[i]! / variance;
    return { columns, regressors: x, mean: summary.mean, variance };
  });
  return {
    passes,
    touched,
    regressors,
    pull,
    square,
    variance: groupVariance / (1 + groupVariance * precision),
    rest: rest + Math.log1p(groupVariance * precision),
  };
}

function addPasses(
  precision: readonly Float64Array[],
  pull: Float64Array,
  passes: readonly SummedPass[],
): void {
  for (const { columns, regressors, mean, variance } of passes) {
    for (let i = 0; i < columns.length; i += 1) {
      pull[columns[i]!]! += (regressors[i]! * mean) / variance;
      const row = precision[columns[i]!]!;
      // In this order of factors both halves of the matrix round alike.
      for (let k = 0; k < columns.length; k += 1)
        row[columns[k]!]! += (regressors[i]! * regressors[k]!) / variance;
    }
  }
}

function emptySquare(size: number): Float64Array[] {
  return Array.from({ length: size }, () => new Float64Array(size));
}

function logDeterminant(matrix: Matrix): number {
  return new CholeskyDecomposition(matrix).lowerTriangularMatrix
    .diagonal()
    .reduce((sum, value) => sum + 2 * Math.log(value), 0);
}
