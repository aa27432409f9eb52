import type { Job } from '../job/index.ts';
import type { Metal } from '../material/index.ts';
import { type SpreadNode, spreadMode, spreadNodes, symmetricInverse } from '../numeric/index.ts';
import type { LevelNode, RemovalBelief } from './belief.ts';
import type { RowFit } from './fit-prior.ts';
import { PUBLISHED_PRIOR } from './published-prior.ts';
import {
  OTHER_METAL,
  OTHER_POSITION,
  SEAM_RANGE,
  STARTING_DEPTH,
  STARTING_WEAR,
  STARTING_WIDTH,
  type StartingSpread,
  startingDensity,
} from './starting-spread.ts';

/** Identifier of what the published rows say, before any shop has learned. */
const PUBLISHED_ID = 'published-2';

/**
 * The published belief for a metal and a position: what a shop without trials starts from.
 *
 * The rows are for carbon steel in the flat position and come from many rigs, so that nearly all of their scatter is
 * what is not known of this shop. For another metal the melting energy carries the law over, and its level is held less
 * surely; so for another position.
 *
 * @param metal - the metal [record], from `metalOf`
 * @param position - position of the work [text], flat, horizontal, vertical_down or overhead
 * @param rows - what the operating rows say [record], from `fitRemovalPrior`, or left out for the published ones
 * @returns the belief with its name and remarks [record]
 * @source TWI Job Knowledge 12 (memory) through `npm run fit`; spread below the family and widening: judgement, no source
 * @example
 * publishedBelief(metalOf('carbon_steel'), 'flat').id // => "published-2/carbon_steel/flat"
 */
export function publishedBelief(
  metal: Metal,
  position: Job['seam']['position'],
  rows: RowFit = PUBLISHED_PRIOR,
): RemovalBelief {
  const unit = symmetricInverse(rows.depth.precision);
  const level = levelVariance(metal, position);
  return {
    id: `${PUBLISHED_ID}/${metal.family}/${position}`,
    depth: startingNodes(STARTING_DEPTH).map(({ weight, sds }) => {
      const [family, job, pass, seam] = sds as [number, number, number, number];
      return {
        weight,
        mean: rows.depth.mean,
        covariance: unit.map((row, r) =>
          row.map((value, c) => family ** 2 * (value + (r === 0 && c === 0 ? level : 0))),
        ),
        levels: { job, pass, seam },
      };
    }),
    seamRange: SEAM_RANGE,
    extraWidth: levelNodes(STARTING_WIDTH, rows.extraWidth),
    wear: levelNodes(STARTING_WEAR, rows.wear),
    meltingEnergy: metal.meltingEnergy.value,
    remarks: reachRemarks(metal, position),
    knowledge: { id: PUBLISHED_ID, trials: 0, jobs: 0, date: null },
  };
}

/** Variance of a family's level about the law of the rows, in those of a family of their metal and position. */
function levelVariance(metal: Metal, position: Job['seam']['position']): number {
  return 1 + (metal.depthLawFitted ? 0 : OTHER_METAL ** 2) + (position === 'flat' ? 0 : OTHER_POSITION ** 2);
}

/** What is said of the reach of the rows for a metal and a position, in words. */
function reachRemarks(metal: Metal, position: Job['seam']['position']): string[] {
  return [
    ...(metal.depthLawFitted
      ? []
      : [
          `The depth law is fitted to carbon steel; for ${metal.title.toLowerCase()} it is carried over by the melting energy and held less surely. Try it on scrap first.`,
        ]),
    ...(position === 'flat'
      ? []
      : [
          `The depth law is fitted to flat work; for the ${position.replace('_', ' ')} position it is held less surely. Try it on scrap first.`,
        ]),
  ];
}

const made = new WeakMap<object, readonly SpreadNode[]>();

/** The nodes of starting spreads; the same for every metal and position, so worked out once. */
function startingNodes(starting: Readonly<Record<string, StartingSpread>>): readonly SpreadNode[] {
  const known = made.get(starting);
  if (known !== undefined) return known;
  const each = Object.values(starting);
  const density = (sds: readonly number[]): number => startingDensity(each, sds);
  const nodes = spreadNodes(
    density,
    spreadMode(
      density,
      each.map(({ sd }) => sd),
    ),
  );
  made.set(starting, nodes);
  return nodes;
}

/** Nodes of a quantity without a law: its level as the rows have it, for a new family. */
function levelNodes(
  starting: Readonly<Record<string, StartingSpread>>,
  rows: { readonly mean: readonly number[]; readonly precision: readonly (readonly number[])[] },
): LevelNode[] {
  return startingNodes(starting).map(({ weight, sds }) => {
    const [family, job, pass = 0] = sds as [number, number, number?];
    return {
      weight,
      mean: rows.mean[0]!,
      variance: family ** 2 * (1 + 1 / rows.precision[0]![0]!),
      job,
      pass,
    };
  });
}
