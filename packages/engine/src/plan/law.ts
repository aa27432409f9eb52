import type { RemovalBelief, SpreadLevels } from '../removal/index.ts';

/** The belief about depth as one normal distribution: what tables are worked out from. */
export interface DepthLaw {
  /** Mean of level, slope and angle coefficient [-]. */
  readonly mean: readonly [number, number, number];
  /** Their covariance, what is not known of the family included [-]. */
  readonly covariance: readonly (readonly number[])[];
  /** Standard deviations below the family, in ln depth [-]. */
  readonly levels: SpreadLevels;
  /** Range of the process along the seam [m]. */
  readonly seamRange: number;
}

const laws = new WeakMap<RemovalBelief, DepthLaw>();

/** Mean and variance of a belief taken over its nodes; the same record for the same belief. */
export function lawOf(belief: RemovalBelief): DepthLaw {
  const law = laws.get(belief) ?? makeLaw(belief);
  laws.set(belief, law);
  return law;
}

function makeLaw(belief: RemovalBelief): DepthLaw {
  const { depth, seamRange } = belief;
  const over = (value: (node: (typeof depth)[number]) => number): number =>
    depth.reduce((sum, node) => sum + node.weight * value(node), 0);
  const mean = [0, 1, 2].map((row) => over((node) => node.mean[row]!)) as [number, number, number];
  const covariance = [0, 1, 2].map((r) =>
    [0, 1, 2].map((c) =>
      over((node) => node.covariance[r]![c]! + (node.mean[r]! - mean[r]!) * (node.mean[c]! - mean[c]!)),
    ),
  );
  const level = (key: keyof SpreadLevels): number => Math.sqrt(over((node) => node.levels[key] ** 2));
  return {
    mean,
    covariance,
    levels: { job: level('job'), pass: level('pass'), seam: level('seam') },
    seamRange,
  };
}

/** Median of ln(depth / diameter) at a ln specific energy and an angle term [-]. */
export function middleDepth(law: DepthLaw, logEnergy: number, angleTerm: number): number {
  const [level, slope, angle] = law.mean;
  return level + slope * logEnergy + angle * angleTerm;
}

/** Covariance, in ln depth, of what is common to two settings of one job: family and job. */
export function commonCovariance(law: DepthLaw, one: number, other: number, angleTerm: number): number {
  const [level, slope, angle] = law.covariance;
  const row = rowAt(level!, other, angleTerm) + one * rowAt(slope!, other, angleTerm);
  return row + angleTerm * rowAt(angle!, other, angleTerm) + law.levels.job ** 2;
}

function rowAt(row: readonly number[], energy: number, angleTerm: number): number {
  return row[0]! + row[1]! * energy + row[2]! * angleTerm;
}

const planning = new WeakMap<RemovalBelief, RemovalBelief>();

/**
 * The belief that plans are made with: every standard deviation at its most likely value, the first node of each list.
 * That a standard deviation may be another is what learning heals; a plan that paid for it now would be made of the
 * doubt about the doubt. The same record for the same belief.
 *
 * @param belief - what is known of removal [record], from `publishedBelief`
 * @returns the belief with one node of each kind [record]
 * @source judgement, no source
 * @example
 * planningBelief(publishedBelief(metalOf('carbon_steel'), 'flat')).depth.length // => 1
 */
export function planningBelief(belief: RemovalBelief): RemovalBelief {
  const made = planning.get(belief) ?? atMostLikely(belief);
  planning.set(belief, made);
  return made;
}

function atMostLikely(belief: RemovalBelief): RemovalBelief {
  const first = <T extends { readonly weight: number }>(nodes: readonly T[]): readonly T[] => [
    { ...nodes[0]!, weight: 1 },
  ];
  return {
    ...belief,
    depth: first(belief.depth),
    extraWidth: first(belief.extraWidth),
    wear: first(belief.wear),
  };
}
