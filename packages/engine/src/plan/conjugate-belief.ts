import { type RegressionBelief, symmetricInverse } from '../numeric/index.ts';
import type { RemovalBelief } from '../removal/index.ts';

/** Shape given to the noise of a pass [-]: its standard deviation is nearly fixed. */
const SHAPE = 20;

/** The belief with its levels put together: what a job has in common in the coefficients, what a pass has as noise. */
export interface ConjugateBelief {
  readonly depth: RegressionBelief;
  readonly extraWidth: RegressionBelief;
  readonly wear: RegressionBelief;
}

/** Means and variances of a belief as normal-inverse-gamma laws, which the planner draws from and updates. */
export function conjugateBelief(belief: RemovalBelief): ConjugateBelief {
  return {
    depth: moments(
      belief.depth.map(({ weight, mean, covariance, levels }) => ({
        weight,
        mean,
        covariance: covariance.map((row, r) =>
          row.map((value, c) => value + (r + c === 0 ? levels.job ** 2 : 0)),
        ),
        noise: levels.pass ** 2 + levels.seam ** 2,
      })),
    ),
    extraWidth: moments(belief.extraWidth.map(levelMoments)),
    wear: moments(belief.wear.map(levelMoments)),
  };
}

interface Moments {
  readonly weight: number;
  readonly mean: readonly number[];
  readonly covariance: readonly (readonly number[])[];
  readonly noise: number;
}

function levelMoments({ weight, mean, variance, job, pass }: RemovalBelief['wear'][number]): Moments {
  return { weight, mean: [mean], covariance: [[variance]], noise: job ** 2 + pass ** 2 };
}

function moments(nodes: readonly Moments[]): RegressionBelief {
  const average = (of: (node: Moments) => number): number =>
    nodes.reduce((sum, node) => sum + node.weight * of(node), 0);
  const mean = nodes[0]!.mean.map((_, row) => average((node) => node.mean[row]!));
  const noise = average((node) => node.noise);
  const covariance = mean.map((middle, r) =>
    mean.map((other, c) =>
      average((node) => node.covariance[r]![c]! + (node.mean[r]! - middle) * (node.mean[c]! - other)),
    ),
  );
  return {
    mean,
    precision: symmetricInverse(covariance.map((row) => row.map((value) => value / noise))),
    shape: SHAPE,
    scale: noise * SHAPE,
  };
}
