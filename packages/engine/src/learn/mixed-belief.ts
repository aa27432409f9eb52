import {
  evenWeights,
  type NestedGroup,
  type NestedInformation,
  type NestedPrior,
  type NestedSds,
  type NestedWeights,
  nestedInformation,
  nestedModel,
  outlierWeights,
  type SpreadMode,
  type SpreadNode,
  solveNested,
  spreadMode,
  spreadNodes,
} from '../numeric/index.ts';
import { SEAM_RANGE, type StartingSpread, startingDensity } from '../removal/index.ts';
import type { Effects } from './effects.ts';

/** Levels of spread of a quantity, in the order of its nodes; those a quantity does not have are left out. */
export interface LevelsLearned {
  readonly family: StartingSpread;
  readonly job: StartingSpread;
  readonly pass?: StartingSpread;
  readonly seam?: StartingSpread;
}

/** What a set of observations is learned from. */
export interface LearningTask {
  readonly groups: readonly NestedGroup[];
  readonly effects: Effects;
  /** What other shops' summaries say of the coefficients. */
  readonly known?: NestedInformation | undefined;
  readonly levels: LevelsLearned;
  /** Law of the published rows: mean and precision in units of a family's variance. */
  readonly rows: { readonly mean: readonly number[]; readonly precision: readonly (readonly number[])[] };
}

/** One weighted node of what was learned: given its standard deviations the coefficients are Gaussian. */
export interface LearnedNode {
  readonly weight: number;
  /** Standard deviation of each level; 0 for one the quantity does not have. */
  readonly sds: {
    readonly family: number;
    readonly job: number;
    readonly pass: number;
    readonly seam: number;
  };
  readonly mean: readonly number[];
  readonly covariance: readonly (readonly number[])[];
}

/** What was learned of one quantity. */
export interface Learned {
  readonly nodes: readonly LearnedNode[];
  readonly levelNames: readonly (keyof LevelsLearned)[];
  readonly mode: SpreadMode;
  readonly weights: NestedWeights;
  /** What the shop's own readings say of the coefficients, at the most probable spreads. */
  readonly information: NestedInformation;
}

/** Steps of the fixed point of the weights, and how often the spreads are found anew under them. */
const WEIGHT_STEPS = 4;
const ROUNDS = 3;

/**
 * Learns a quantity: the most probable spreads under a likelihood that weighs outliers down, nodes about them, and the
 * coefficients at each node in closed form.
 */
export function learnMixed(task: LearningTask): Learned {
  const { levels, effects } = task;
  const levelNames = (['family', 'job', 'pass', 'seam'] as const).filter(
    (name) => levels[name] !== undefined,
  );
  const starting = levelNames.map((name) => levels[name]!);
  const model = nestedModel(task.groups, effects.size, SEAM_RANGE, task.known);
  const sdsOf = (values: readonly number[]): LearnedNode['sds'] => {
    const sds = { family: 0, job: 0, pass: 0, seam: 0 };
    levelNames.forEach((name, i) => {
      sds[name] = values[i]!;
    });
    return sds;
  };
  let weights = evenWeights(model);
  const density = (values: readonly number[]): number => {
    const sds = sdsOf(values);
    const prior = priorOf(task, sds.family);
    return startingDensity(starting, values) + solveNested(model, nestedSds(sds), prior, weights).logMarginal;
  };
  // What is far out by the starting spreads (of jobs and passes, which are few: by twice) is weighed down first, so that
  // it cannot pass for a wide spread.
  let values: readonly number[] = starting.map(({ sd }, i) => (levelNames[i] === 'seam' ? sd : 2 * sd));
  let mode: SpreadMode | undefined;
  for (let round = 0; round < ROUNDS && task.groups.length > 0; round += 1) {
    const sds = sdsOf(values);
    const prior = priorOf(task, sds.family);
    for (let step = 0; step < WEIGHT_STEPS; step += 1) {
      weights = outlierWeights(model, nestedSds(sds), prior, weights);
    }
    mode = spreadMode(density, values);
    values = mode.sds;
  }
  mode ??= spreadMode(
    density,
    starting.map(({ sd }) => sd),
  );
  const nodes = spreadNodes(density, mode).map(({ weight, sds: values }: SpreadNode): LearnedNode => {
    const sds = sdsOf(values);
    const solved = solveNested(model, nestedSds(sds), priorOf(task, sds.family), weights);
    return { weight, sds, mean: solved.mean, covariance: solved.covariance() };
  });
  const information = nestedInformation(model, nestedSds(sdsOf(mode.sds)), weights);
  return { nodes, levelNames, mode, weights, information };
}

function nestedSds({ job, pass, seam }: LearnedNode['sds']): NestedSds {
  return { group: job, pass, seam };
}

/** The published law and the parts of the families as prior, at a family's spread. */
function priorOf({ rows, effects: { size, shares } }: LearningTask, family: number): NestedPrior {
  const law = rows.mean.length;
  const precision = Array.from({ length: size }, () => new Array<number>(size).fill(0));
  for (let r = 0; r < law; r += 1) {
    for (let c = 0; c < law; c += 1) precision[r]![c] = rows.precision[r]![c]! / family ** 2;
  }
  for (let i = law; i < size; i += 1) precision[i]![i] = 1 / (shares[i]! * family ** 2);
  return { mean: [...rows.mean, ...new Array<number>(size - law).fill(0)], precision };
}
