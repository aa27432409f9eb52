import { depthRegressors, type PassSetting, PUBLISHED_PRIOR } from '../removal/index.ts';

/** Passes on top of each other whose depths were gauged together, as one pass of the law. */
export interface LayersTogether {
  /** Regressors of the law, each pass by its part of the depth. */
  readonly regressors: readonly number[];
  /** What is added to ln of the depth of all of them to make it that of one [-]. */
  readonly toOne: number;
  /** Variance of what each pass has for itself, level and course, over that of one pass [-]. */
  readonly share: number;
  /** Part of the depth that each pass takes off, in the order given [-]. */
  readonly parts: readonly number[];
}

/**
 * What a depth says that several passes took off together: the law is linear in ln depth, and so is ln of a sum about
 * the parts that the published law gives each pass.
 *
 * With parts w: ln(sum) + w . ln w = sum of w times ln depth of each. What the job has in common stays whole; what each
 * pass has for itself averages out, to the sum of w squared.
 */
export function layersTogether(settings: readonly PassSetting[], meltingEnergy: number): LayersTogether {
  const rows = settings.map((setting) => depthRegressors(setting, meltingEnergy));
  const { mean } = PUBLISHED_PRIOR.depth;
  const depths = rows.map((row) => Math.exp(row.reduce((sum, value, i) => sum + value * mean[i]!, 0)));
  const whole = depths.reduce((sum, depth) => sum + depth, 0);
  const parts = depths.map((depth) => depth / whole);
  const overParts = (of: (part: number, pass: number) => number): number =>
    parts.reduce((sum, part, pass) => sum + of(part, pass), 0);
  return {
    regressors: rows[0]!.map((_, column) => overParts((part, pass) => part * rows[pass]![column]!)),
    toOne: overParts((part) => part * Math.log(part)),
    share: overParts((part) => part ** 2),
    parts,
  };
}
