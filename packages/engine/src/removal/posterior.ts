import type { Job } from '../job/index.ts';
import type { Metal } from '../material/index.ts';
import { type RegressionBelief, symmetricInverse, updateBelief } from '../numeric/index.ts';
import { type RemovalBelief, type RemovalRow, removalObservations } from './fit-prior.ts';
import { PUBLISHED_PRIOR } from './published-prior.ts';

/** A belief about removal with its name and the metal it is for. */
export interface RemovalPosterior {
  /** Identifier that a result names. */
  readonly id: string;
  readonly belief: RemovalBelief;
  /** Energy to heat and melt a unit volume of the metal [J/m3]. */
  readonly meltingEnergy: number;
  /** What is said of its reach, in words. */
  readonly remarks: readonly string[];
}

/** Standard deviation added to the level of the depth law where no row is for this metal [-] (judgement, no source). */
const OTHER_METAL_SD = 0.25;
/** The same where no row is for this position [-] (judgement, no source). */
const OTHER_POSITION_SD = 0.2;

/**
 * The published belief for a metal and a position: the parent of what a shop learns.
 *
 * The rows are for carbon steel in the flat position. For another metal the melting energy carries the law
 * over, and its level is held less surely; so for another position.
 *
 * @param metal - the metal [record], from `metalOf`
 * @param position - position of the work [text], flat, horizontal, vertical_down or overhead
 * @returns the belief with its name and remarks [record]
 * @source TWI Job Knowledge 12 (memory) through `npm run fit`; widening: judgement, no source
 * @example
 * publishedPosterior(metalOf('carbon_steel'), 'flat').id // => "published-1/carbon_steel/flat"
 */
export function publishedPosterior(metal: Metal, position: Job['seam']['position']): RemovalPosterior {
  const remarks: string[] = [];
  let variance = 0;
  if (!metal.depthLawFitted) {
    variance += OTHER_METAL_SD ** 2;
    remarks.push(
      `The depth law is fitted to carbon steel; for ${metal.title.toLowerCase()} it is carried over by the melting energy and held less surely. Try it on scrap first.`,
    );
  }
  if (position !== 'flat') {
    variance += OTHER_POSITION_SD ** 2;
    remarks.push(
      `The depth law is fitted to flat work; for the ${position.replace('_', ' ')} position it is held less surely. Try it on scrap first.`,
    );
  }
  return {
    id: `published-1/${metal.family}/${position}`,
    belief: { ...PUBLISHED_PRIOR, depth: widenLevel(PUBLISHED_PRIOR.depth, variance) },
    meltingEnergy: metal.meltingEnergy.value,
    remarks,
  };
}

/**
 * Updates a belief with measured passes, in closed form.
 *
 * @param posterior - what is known before [record], from `publishedPosterior` or an earlier update
 * @param trials - measured passes [list], depths > 0; width and wear where they were measured
 * @returns what is known after; its name counts the trials [record]
 * @source normal-inverse-gamma update, see `updateBelief`
 * @example
 * updatePosterior(publishedPosterior(metalOf('carbon_steel'), 'flat'), []).id // => "published-1/carbon_steel/flat"
 */
export function updatePosterior(
  posterior: RemovalPosterior,
  trials: readonly RemovalRow[],
): RemovalPosterior {
  if (trials.length === 0) return posterior;
  const seen = removalObservations(trials, posterior.meltingEnergy);
  return {
    ...posterior,
    id: `${posterior.id}+${trials.length}`,
    belief: {
      depth: updateBelief(posterior.belief.depth, seen.depth),
      extraWidth: updateBelief(posterior.belief.extraWidth, seen.extraWidth),
      wear: updateBelief(posterior.belief.wear, seen.wear),
    },
  };
}

/** Adds variance to the level (first coefficient) of a law, in units of the response. */
function widenLevel(belief: RegressionBelief, variance: number): RegressionBelief {
  if (variance === 0) return belief;
  const covariance = symmetricInverse(belief.precision);
  const noise = belief.scale / (belief.shape - 1);
  covariance[0]![0]! += variance / noise;
  return { ...belief, precision: symmetricInverse(covariance) };
}
