import type { KitElectrode } from '../job/index.ts';

/** Which knowledge a result rests on. */
export interface KnowledgeName {
  /** Identifier: that of the published rows, or of what a shop has learned. */
  readonly id: string;
  /** Trials learned from [-]. */
  readonly trials: number;
  /** Gauged jobs learned from [-]. */
  readonly jobs: number;
  /** Day of the latest of them, as written in the shop's file; null where there are none. */
  readonly date: string | null;
  /** Whether it was made up, to try the program with; left out where it was not. */
  readonly invented?: true;
}

/** Standard deviations below the family, in ln depth or in the unit of the quantity. */
export interface SpreadLevels {
  /** Common to all passes of one job: batch, plate, day, height setting [-]. */
  readonly job: number;
  /** Common to one pass [-]. */
  readonly pass: number;
  /** A stationary process along the seam, Matern 3/2 [-]. */
  readonly seam: number;
}

/**
 * One weighted node of the belief about depth. Given its standard deviations everything is Gaussian:
 * ln(h / D) at place x of one pass = (1, ln q, angle term) . law + job + pass + seam(x).
 */
export interface DepthNode {
  /** Share of the node; the shares of a belief add up to 1 [-]. */
  readonly weight: number;
  /** Mean of level, slope and angle coefficient; the level holds the family's own [-]. */
  readonly mean: readonly number[];
  /** Their covariance, what is not known of the family included [-]. */
  readonly covariance: readonly (readonly number[])[];
  readonly levels: SpreadLevels;
}

/** One weighted node of the belief about a quantity without a law: extra width, or wear. */
export interface LevelNode {
  /** Share of the node; the shares of a belief add up to 1 [-]. */
  readonly weight: number;
  /** Mean of the family's level, in the quantity's unit [-]. */
  readonly mean: number;
  /** Variance of that level, in the quantity's unit squared [-]. */
  readonly variance: number;
  /** Standard deviation common to a job, in the quantity's unit [-]. */
  readonly job: number;
  /** Standard deviation common to a pass, in the quantity's unit [-]. */
  readonly pass: number;
}

/** What is known of depth, width and wear for one family of jobs: few weighted nodes, each Gaussian. */
export interface RemovalBelief {
  /** Identifier that a result names. */
  readonly id: string;
  /** ln(h / D) = a + b ln q + c (angle - 45 deg) / 15 deg and the levels of its spread. */
  readonly depth: readonly DepthNode[];
  /** Length of the seam process: Matern 3/2 with this range [m]. */
  readonly seamRange: number;
  /** Width less the electrode diameter [m]. */
  readonly extraWidth: readonly LevelNode[];
  /** ln of the electrode volume burnt per ampere-second [ln(m3/(A s))]. */
  readonly wear: readonly LevelNode[];
  /** Energy to heat and melt a unit volume of the metal [J/m3]. */
  readonly meltingEnergy: number;
  /** What is said of its reach, in words. */
  readonly remarks: readonly string[];
  /** Which knowledge it was made from. */
  readonly knowledge: KnowledgeName;
  /** The belief of each electrode of a kit, where a shop has learned them apart. */
  readonly byElectrode?: readonly ElectrodeBelief[];
}

/** What is known of removal with one electrode of a kit. */
export interface ElectrodeBelief {
  readonly electrode: Pick<KitElectrode, 'diameter' | 'kind'>;
  readonly belief: RemovalBelief;
}

/**
 * What is known of removal with one electrode: its own where a shop has learned electrodes apart.
 *
 * @param belief - what is known for a job [record], from `publishedBelief` or with electrodes of its own
 * @param electrode - the electrode [record], any
 * @returns the belief for it [record]
 * @source none: bookkeeping
 * @example
 * beliefOfElectrode(publishedBelief(metalOf('carbon_steel'), 'flat'), { diameter: 0.0127, kind: 'plain' }).id // => "published-2/carbon_steel/flat"
 */
export function beliefOfElectrode(
  belief: RemovalBelief,
  { diameter, kind }: Pick<KitElectrode, 'diameter' | 'kind'>,
): RemovalBelief {
  const own = belief.byElectrode?.find(
    ({ electrode }) => electrode.kind === kind && Math.abs(electrode.diameter - diameter) < 1e-6,
  );
  return own?.belief ?? belief;
}

/**
 * The belief that holds the level of the depth law least surely.
 *
 * @param beliefs - beliefs [list], at least one
 * @returns that belief [record]
 * @source none: bookkeeping
 * @example
 * widestBelief([publishedBelief(metalOf('carbon_steel'), 'flat'), publishedBelief(metalOf('carbon_steel'), 'overhead')]).id // => "published-2/carbon_steel/overhead"
 */
export function widestBelief(beliefs: readonly RemovalBelief[]): RemovalBelief {
  const width = ({ depth }: RemovalBelief): number =>
    depth.reduce((sum, { weight, covariance }) => sum + weight * covariance[0]![0]!, 0);
  return beliefs.reduce((widest, each) => (width(each) > width(widest) ? each : widest));
}

/**
 * Level, slope and angle coefficient of the depth law in the middle of a belief.
 *
 * @param belief - what is known of removal [record], from `publishedBelief`
 * @returns the means over the nodes [list]
 * @source definition
 * @example
 * middleLaw(publishedBelief(metalOf('carbon_steel'), 'flat'))[1] // => 1.391...
 */
export function middleLaw(belief: RemovalBelief): number[] {
  return [0, 1, 2].map((row) => belief.depth.reduce((sum, { weight, mean }) => sum + weight * mean[row]!, 0));
}

/**
 * Correlation of the seam process between two places of one pass.
 *
 * Matern 3/2: (1 + r) exp(-r) with r = sqrt(3) distance / range.
 *
 * @param distance - distance between the places [m], any sign
 * @param range - range of the process [m], > 0
 * @returns correlation [-]
 * @source Rasmussen and Williams, Gaussian Processes for Machine Learning (2006), equation 4.17
 * @example
 * seamCorrelation(0.25, 0.25) // => 0.483357...
 */
export function seamCorrelation(distance: number, range: number): number {
  const r = (Math.sqrt(3) * Math.abs(distance)) / range;
  return (1 + r) * Math.exp(-r);
}
