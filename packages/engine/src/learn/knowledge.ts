import type { Metal } from '../material/index.ts';
import {
  type DepthNode,
  type LevelNode,
  PUBLISHED_PRIOR,
  publishedBelief,
  type RemovalBelief,
  STARTING_DEPTH,
  STARTING_WEAR,
  STARTING_WIDTH,
} from '../removal/index.ts';
import { columnsOf, type Effects, effectsOf, partsOf } from './effects.ts';
import { depthGroups, wearGroups, widthGroups } from './learned-quantities.ts';
import { type LearnedNode, type LevelsLearned, learnMixed } from './mixed-belief.ts';
import type { Family, ShopObservation } from './observation.ts';
import type { ReadTrials } from './read-trials.ts';
import type { Knowledge, LearnedQuantity } from './shop-knowledge.ts';
import { informationOf, partsOfSummaries, pooledLevels } from './summary.ts';
import type { QuantitySummary, ShopSummary } from './summary-schema.ts';

/** What a shop's own observations are learned beside. */
export interface LearningInput {
  /** Name of the shop. */
  readonly shop: string;
  /** Identifier that results name: made from the revision of the shop's file. */
  readonly id: string;
  readonly observations: readonly ShopObservation[];
  /** Whether the observations were made up; left out where they were not. */
  readonly invented?: true;
  /** Summaries of shops; one of this shop is that of its earlier work, and counts where there are no observations. */
  readonly others?: readonly ShopSummary[];
}

/**
 * Learns from a shop's trials and gauged jobs.
 *
 * @param input - the shop, the identifier of its file and its observations [record], passes with at least one reading
 * @returns what the shop knows [record]
 * @source derived: linear mixed model with the published rows as prior; see docs/decisions/spread-in-four-levels.md
 * @example
 * learnFrom({ shop: 'yard', id: 'x', observations: [] }).name.jobs // => 0
 */
export function learnFrom(input: LearningInput): Knowledge {
  const { shop } = input;
  const observations = [...input.observations].sort((a, b) => byDay(a, b));
  // what is here as it was gauged is not counted from a summary again
  const others = (input.others ?? []).filter((each) => observations.length === 0 || each.shop !== shop);
  const own = observations.flatMap(({ family }) => partsOf(family, shop));
  const learned = (
    law: readonly string[],
    groupsOf: typeof depthGroups,
    starting: LevelsLearned,
    rows: (typeof PUBLISHED_PRIOR)['depth'],
    quantities: readonly QuantitySummary[],
  ): LearnedQuantity => {
    const effects = effectsOf(law, [...own, ...partsOfSummaries(quantities)]);
    const levels = pooledLevels(starting, quantities);
    const groups = groupsOf(observations, effects, shop);
    const known = informationOf(quantities, effects);
    return { effects, starting: levels, learned: learnMixed({ groups, effects, known, levels, rows }) };
  };
  const { depth, extraWidth, wear } = PUBLISHED_PRIOR;
  const invented = input.invented === true || others.some((each) => each.invented === 'yes');
  const days = [observations.at(-1)?.date, ...others.map(({ date }) => date)].filter(
    (day) => day !== undefined,
  );
  return {
    name: {
      id: input.id,
      trials: others.reduce((sum, { trials }) => sum + trials, countOf(observations, 'trial')),
      jobs: others.reduce((sum, { jobs }) => sum + jobs, countOf(observations, 'job')),
      date: days.sort().at(-1) ?? null,
      ...(invented && { invented: true }),
    },
    shop,
    observations,
    others,
    depth: learned(
      ['level', 'slope', 'angle'],
      depthGroups,
      STARTING_DEPTH,
      depth,
      others.map((each) => each.depth),
    ),
    extraWidth: learned(
      ['level'],
      widthGroups,
      STARTING_WIDTH,
      extraWidth,
      others.map((each) => each.extra_width),
    ),
    wear: learned(
      ['level'],
      wearGroups,
      STARTING_WEAR,
      wear,
      others.map((each) => each.wear),
    ),
  };
}

function countOf(observations: readonly ShopObservation[], kind: ShopObservation['kind']): number {
  return observations.filter((each) => each.kind === kind).length;
}

/**
 * Learns from a shop's trials file; its revision is in the name of what was learned.
 *
 * @param read - the trials as read [record], from `readTrials`
 * @returns what the shop knows [record]
 * @source none: composition
 * @example
 * knowledgeOf(readTrials('furrow_trials: 1\nshop: yard\nentries: []').value).shop // => "yard"
 */
export function knowledgeOf({ trials, observations, revision }: ReadTrials): Knowledge {
  return learnFrom({
    shop: trials.shop,
    id: `${trials.shop}-${revision.slice(0, 12)}`,
    observations,
    ...(trials.invented === 'yes' && { invented: true }),
  });
}

/** Days first, then names, so that the order in the file does not matter. */
function byDay(a: ShopObservation, b: ShopObservation): number {
  return a.date < b.date ? -1 : a.date > b.date ? 1 : a.id < b.id ? -1 : a.id > b.id ? 1 : 0;
}

/**
 * What a shop's knowledge says of one family: the belief that a plan for it starts from.
 *
 * A family without data borrows from what it has in common with others: the shop, metal, position, electrode, torch.
 *
 * @param knowledge - what the shop knows [record], from `learnFrom`
 * @param metal - the metal [record], from `metalOf`
 * @param family - the family of the work [record], of that metal
 * @returns the belief [record]
 * @source derived: marginal of the coefficients of a linear mixed model
 * @example
 * beliefOfFamily(learnFrom({ shop: 'yard', id: 'x', observations: [] }), metalOf('carbon_steel'), { metal: 'carbon_steel', position: 'flat', electrode: 'jointed', band: 'middle' }).depth.length // => 9
 */
export function beliefOfFamily(knowledge: Knowledge, metal: Metal, family: Family): RemovalBelief {
  const published = publishedBelief(metal, family.position);
  const parts = partsOf(family, knowledge.shop);
  const seen = knowledge.observations.some(
    (each) => each.family.metal === family.metal && each.family.position === family.position,
  );
  return {
    id: `${knowledge.name.id}/${metal.family}/${family.position}`,
    depth: knowledge.depth.learned.nodes.map((node) => depthNode(node, knowledge.depth.effects, parts)),
    seamRange: published.seamRange,
    extraWidth: levelNodes(knowledge.extraWidth, parts),
    wear: levelNodes(knowledge.wear, parts),
    meltingEnergy: published.meltingEnergy,
    // Where the shop has its own figures for metal and position, the rows' reach is no longer the point.
    remarks: seen ? [] : published.remarks,
    knowledge: knowledge.name,
  };
}

type Parts = readonly (readonly [string, number])[];

/** The law of a family at one node: its parts added to the level, what no part is known of added to its variance. */
function depthNode(node: LearnedNode, effects: Effects, parts: Parts): DepthNode {
  const { columns, unseen } = columnsOf(effects, parts);
  const rows = [[0, ...columns], [1], [2]];
  return {
    weight: node.weight,
    mean: rows.map((row) => row.reduce((sum, i) => sum + node.mean[i]!, 0)),
    covariance: rows.map((row, r) =>
      rows.map(
        (column, c) =>
          row.reduce((sum, i) => column.reduce((inner, k) => inner + node.covariance[i]![k]!, sum), 0) +
          (r === 0 && c === 0 ? unseen * node.sds.family ** 2 : 0),
      ),
    ),
    levels: { job: node.sds.job, pass: node.sds.pass, seam: node.sds.seam },
  };
}

/** A setting of a family: the parts of its level, and its regressors. */
export interface LawPoint {
  readonly parts: Parts;
  readonly x: readonly number[];
}

/** Covariance of what the law says of two settings at one node; what no column stands for they share by name. */
export function lawCovariance(
  { effects }: LearnedQuantity,
  node: LearnedNode,
  one: LawPoint,
  other: LawPoint,
): number {
  const entries = ({ parts, x }: LawPoint): readonly (readonly [number, number])[] => [
    ...x.map((value, i) => [i, value] as const),
    ...columnsOf(effects, parts).columns.map((column) => [column, 1] as const),
  ];
  const shared = one.parts.reduce(
    (sum, [name, share]) =>
      effects.names.includes(name) || !other.parts.some(([another]) => another === name) ? sum : sum + share,
    0,
  );
  const b = entries(other);
  return entries(one).reduce(
    (sum, [i, u]) => b.reduce((inner, [k, v]) => inner + u * v * node.covariance[i]![k]!, sum),
    shared * node.sds.family ** 2,
  );
}

function levelNodes({ learned, effects }: LearnedQuantity, parts: Parts): LevelNode[] {
  const { columns, unseen } = columnsOf(effects, parts);
  const row = [0, ...columns];
  return learned.nodes.map(({ weight, sds, mean, covariance }) => ({
    weight,
    mean: row.reduce((sum, i) => sum + mean[i]!, 0),
    variance:
      row.reduce((sum, i) => row.reduce((inner, k) => inner + covariance[i]![k]!, sum), 0) +
      unseen * sds.family ** 2,
    job: sds.job,
    pass: sds.pass,
  }));
}
