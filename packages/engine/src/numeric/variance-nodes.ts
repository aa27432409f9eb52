import { CholeskyDecomposition, Matrix } from 'ml-matrix';
import { symmetricInverse } from './symmetric-inverse.ts';

/** One weighted set of standard deviations. */
export interface SpreadNode {
  /** Share of this node; the shares add up to 1 [-]. */
  readonly weight: number;
  /** The standard deviations, in the order asked for [-]. */
  readonly sds: readonly number[];
}

/** What a search for the most probable standard deviations found. */
export interface SpreadMode {
  /** The standard deviations with the greatest density in their logarithms [-]. */
  readonly sds: readonly number[];
  /** Covariance of their logarithms from the curvature at the top [-]. */
  readonly covariance: readonly (readonly number[])[];
}

/** Half step of the differences, in ln of a standard deviation [-]. */
const STEP = 0.02;
/** Longest step of the search in one logarithm [-]. */
const STRIDE_MOST = 0.8;
const STEPS_MOST = 40;
/** The search ends when no logarithm moves by more than this [-]. */
const SETTLED = 1e-3;
/** Least curvature taken for a direction in which the density is flat or bends up [-]. */
const CURVATURE_LEAST = 0.05;

/**
 * Finds the most probable standard deviations and how surely they are known.
 *
 * Newton's steps in the logarithms, by differences; a step that leads down is halved.
 *
 * @param logDensity - ln of the density of the logarithms, up to a constant [-], finite for positive values
 * @param start - where to start [list], each > 0
 * @returns mode and covariance of the logarithms [record]
 * @source Newton's method; the curvature at the top as precision: Laplace's method, any text on Bayesian computation
 * @example
 * spreadMode(([sd]) => -4 * Math.log(sd) - 2 / sd ** 2, [3]).sds // => [1.000]
 */
export function spreadMode(
  logDensity: (sds: readonly number[]) => number,
  start: readonly number[],
): SpreadMode {
  const at = (logs: readonly number[]): number => logDensity(logs.map(Math.exp));
  let logs = start.map(Math.log);
  let here = at(logs);
  let bend = curvature(at, logs, here);
  for (let step = 0; step < STEPS_MOST; step += 1) {
    const move = newtonMove(bend);
    let next = logs.map((value, i) => value + move[i]!);
    let there = at(next);
    for (let halving = 0; halving < 8 && !(there > here - 1e-9); halving += 1) {
      next = next.map((value, i) => (value + logs[i]!) / 2);
      there = at(next);
    }
    const moved = Math.max(...next.map((value, i) => Math.abs(value - logs[i]!)));
    if (!(there > here - 1e-9)) break;
    logs = next;
    here = there;
    bend = curvature(at, logs, here);
    if (moved < SETTLED) break;
  }
  return { sds: logs.map(Math.exp), covariance: symmetricInverse(bend.precision) };
}

/**
 * Carries what is known of standard deviations on few weighted nodes: the mode, and two to each direction of the
 * curvature's factor. Means of smooth functions over the nodes are means over the density; each node's weight is
 * corrected by the density that it truly has, so that a lopsided density stays so.
 *
 * @param logDensity - ln of the density of the logarithms, up to a constant [-], finite for positive values
 * @param mode - the mode and its covariance [record], from `spreadMode`
 * @returns 2 d + 1 nodes for d standard deviations [list]
 * @source spherical cubature of degree 3 with a centre, importance-weighted, as in Rue, Martino and Chopin, JRSS B 71 (2009) 319-392, section 6.5 (memory)
 * @example
 * spreadNodes(([sd]) => -4 * Math.log(sd) - 2 / sd ** 2, spreadMode(([sd]) => -4 * Math.log(sd) - 2 / sd ** 2, [1])).length // => 3
 */
export function spreadNodes(logDensity: (sds: readonly number[]) => number, mode: SpreadMode): SpreadNode[] {
  const size = mode.sds.length;
  const factor = new CholeskyDecomposition(
    new Matrix(mode.covariance.map((row) => [...row])),
  ).lowerTriangularMatrix.to2DArray();
  const radius = Math.sqrt(size + 2);
  const top = logDensity(mode.sds);
  const nodes = [{ sds: mode.sds, weight: 2 / (size + 2) }];
  for (let direction = 0; direction < size; direction += 1) {
    for (const side of [-1, 1]) {
      const sds = mode.sds.map((sd, i) => sd * Math.exp(side * radius * factor[i]![direction]!));
      // The density against the normal one of the same curvature, which falls by exp(-radius^2 / 2) out there.
      const correction = Math.exp(logDensity(sds) - top + radius ** 2 / 2);
      nodes.push({ sds, weight: correction / (2 * (size + 2)) });
    }
  }
  const total = nodes.reduce((sum, { weight }) => sum + weight, 0);
  return nodes.map(({ sds, weight }) => ({ sds, weight: weight / total }));
}

interface Bend {
  readonly gradient: readonly number[];
  /** Minus the second derivatives, made positive definite. */
  readonly precision: readonly (readonly number[])[];
}

/** Gradient and curvature by differences: two values to each logarithm and one to each pair. */
function curvature(at: (logs: readonly number[]) => number, logs: readonly number[], here: number): Bend {
  const size = logs.length;
  const moved = (...directions: readonly number[]): number[] =>
    logs.map((value, i) => value + STEP * directions.filter((each) => each === i).length);
  const up = logs.map((_, i) => at(moved(i)));
  const down = logs.map((_, i) => at(logs.map((value, k) => (k === i ? value - STEP : value))));
  const gradient = up.map((value, i) => (value - down[i]!) / (2 * STEP));
  const precision = logs.map(() => new Array<number>(size).fill(0));
  for (let i = 0; i < size; i += 1) {
    precision[i]![i] = Math.max(CURVATURE_LEAST, (2 * here - up[i]! - down[i]!) / STEP ** 2);
    for (let k = 0; k < i; k += 1) {
      const cross = -(at(moved(i, k)) - up[i]! - up[k]! + here) / STEP ** 2;
      const most = (0.9 * Math.sqrt(precision[i]![i]! * precision[k]![k]!)) / Math.max(1, size - 1);
      // Kept diagonally dominant, so that a rough difference cannot turn the top into a saddle.
      precision[i]![k] = Math.max(-most, Math.min(most, cross));
      precision[k]![i] = precision[i]![k]!;
    }
  }
  return { gradient, precision };
}

/** The step to where the gradient vanishes, shortened if it is long. */
function newtonMove({ gradient, precision }: Bend): number[] {
  const step = new CholeskyDecomposition(new Matrix(precision.map((row) => [...row])))
    .solve(Matrix.columnVector([...gradient]))
    .to1DArray();
  const longest = Math.max(...step.map(Math.abs));
  return longest > STRIDE_MOST ? step.map((value) => (value * STRIDE_MOST) / longest) : step;
}
