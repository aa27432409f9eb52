import type { NestedInformation } from '../numeric/index.ts';
import type { StartingSpread } from '../removal/index.ts';
import { type Effects, shareOf } from './effects.ts';
import type { LevelsLearned } from './mixed-belief.ts';
import type { Knowledge, LearnedQuantity } from './shop-knowledge.ts';
import type { QuantitySummary, ShopSummary } from './summary-schema.ts';

/** Levels below the family, whose spreads a summary tells. */
const LEVELS = ['job', 'pass', 'seam'] as const;

/** What another shop's spread weighs at most, in observations [-]: shops differ in steadiness (judgement, no source). */
const OTHER_WORTH_MOST = 6;

/**
 * What a shop has learned, as other shops can use it: no reading, no setting, no date but the latest.
 *
 * @param knowledge - what the shop knows of its own trials alone [record], from `knowledgeOf`
 * @returns the summary [record]
 * @source derived: sufficient statistics of a linear Gaussian model at its most probable spreads
 * @example
 * summaryOf(learnFrom({ shop: 'yard', id: 'yard-1', observations: [] })).trials // => 0
 */
export function summaryOf({ name, shop, depth, extraWidth, wear }: Knowledge): ShopSummary {
  return {
    shop,
    id: name.id,
    trials: name.trials,
    jobs: name.jobs,
    ...(name.date !== null && { date: name.date }),
    ...(name.invented === true && { invented: 'yes' as const }),
    depth: quantitySummary(depth),
    extra_width: quantitySummary(extraWidth),
    wear: quantitySummary(wear),
  };
}

function quantitySummary({ learned, effects, starting }: LearnedQuantity): QuantitySummary {
  const { information, levelNames, mode } = learned;
  const spread = (name: (typeof LEVELS)[number]) => {
    const at = levelNames.indexOf(name);
    const start = starting[name];
    if (at < 0 || start === undefined) return {};
    // a variance that is known to worth v has a spread of its logarithm of 1 / (2 v)
    const whole = 1 / (2 * mode.covariance[at]![at]!);
    const worth = Math.max(0, whole - start.worth);
    const square = worth === 0 ? 0 : (whole * mode.sds[at]! ** 2 - start.worth * start.sd ** 2) / worth;
    return { [name]: { sd: square > 0 ? Math.sqrt(square) : mode.sds[at]!, worth } };
  };
  return {
    columns: [...effects.names],
    information: information.precision.flatMap((row, r) => row.slice(0, r + 1)),
    pull: [...information.pull],
    spreads: Object.assign({}, ...LEVELS.map(spread)) as QuantitySummary['spreads'],
  };
}

/**
 * Puts summaries together: each shop once, the later of two of one shop.
 *
 * Neither the order nor how often a summary is there matters.
 *
 * @param summaries - summaries of any shops [list], may be none
 * @returns each shop's latest, by name [list]
 * @source none: a join of sets, each shop's summaries put in order
 * @example
 * mergeSummaries([]) // => []
 */
export function mergeSummaries(summaries: readonly ShopSummary[]): ShopSummary[] {
  const latest = new Map<string, ShopSummary>();
  for (const summary of summaries) {
    const before = latest.get(summary.shop);
    if (before === undefined || isLater(summary, before)) latest.set(summary.shop, summary);
  }
  return [...latest.values()].sort((a, b) => (a.shop < b.shop ? -1 : a.shop > b.shop ? 1 : 0));
}

/** A whole order of the summaries of one shop: by day, then what it rests on, then content. */
function isLater(one: ShopSummary, other: ShopSummary): boolean {
  const [a, b] = [one, other].map((each) => [
    each.date ?? '',
    String(each.trials + each.jobs).padStart(9, '0'),
    each.id,
    JSON.stringify(each),
  ]) as [string[], string[]];
  const at = a.findIndex((value, i) => value !== b[i]);
  return at >= 0 && a[at]! > b[at]!;
}

/** Names of the parts that summaries have columns for, with their shares. */
export function partsOfSummaries(
  quantities: readonly QuantitySummary[],
): readonly (readonly [string, number])[] {
  return quantities.flatMap(({ columns }) =>
    columns.flatMap((name) => {
      const share = shareOf(name);
      return share === undefined ? [] : [[name, share] as const];
    }),
  );
}

/** What summaries say of the coefficients of a model with these columns. */
export function informationOf(
  quantities: readonly QuantitySummary[],
  { names, size }: Effects,
): NestedInformation | undefined {
  if (quantities.length === 0) return undefined;
  const precision = Array.from({ length: size }, () => new Array<number>(size).fill(0));
  const pull = new Array<number>(size).fill(0);
  for (const { columns, information, pull: own } of quantities) {
    const places = columns.map((name) => names.indexOf(name));
    let next = 0;
    places.forEach((row, r) => {
      pull[row]! += own[r]!;
      for (let c = 0; c <= r; c += 1) {
        const value = information[next]!;
        next += 1;
        precision[row]![places[c]!]! += value;
        if (c < r) precision[places[c]!]![row]! += value;
      }
    });
  }
  return { precision, pull };
}

/** Starting spreads of a shop that knows those of others: theirs count as a few observations each. */
export function pooledLevels(levels: LevelsLearned, quantities: readonly QuantitySummary[]): LevelsLearned {
  const pooled = (name: (typeof LEVELS)[number]): StartingSpread | undefined => {
    const start = levels[name];
    if (start === undefined) return undefined;
    let [worth, square] = [start.worth, start.worth * start.sd ** 2];
    for (const { spreads } of quantities) {
      const other = spreads[name];
      if (other === undefined) continue;
      const counted = Math.min(OTHER_WORTH_MOST, other.worth);
      worth += counted;
      square += counted * other.sd ** 2;
    }
    return { sd: Math.sqrt(square / worth), worth };
  };
  const [job, pass, seam] = LEVELS.map(pooled);
  return {
    family: levels.family,
    job: job ?? levels.job,
    ...(pass !== undefined && { pass }),
    ...(seam !== undefined && { seam }),
  };
}
