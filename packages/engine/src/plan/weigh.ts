import type { Job } from '../job/index.ts';
import type { Candidate, LimitFunction } from '../limit/index.ts';
import type { RemovalBelief } from '../removal/index.ts';
import { candidateOf, energiesOf } from './candidate-of.ts';
import { type Effort, effortOf, type Merit, meritOf } from './effort.ts';
import { type Miss, type MissNote, missOf } from './miss.ts';
import type { ShopDraws } from './shop-draws.ts';
import type { Solved, SolveTask } from './solve.ts';
import { type AfterCostFunction, wholeCosts } from './whole-cost.ts';
import type { Work } from './work.ts';

/** A set-up that meets every demand and every hard limit, with what it takes. */
export interface Feasible {
  readonly task: SolveTask;
  readonly solved: Solved;
  readonly candidate: Candidate;
  readonly effort: Effort;
  /** Cost of the whole job in a part of the shops, in the job's currency [-]. */
  readonly wholeCost: Float64Array;
  readonly merit: Merit;
}

/** What the search works with. */
export interface SearchInput {
  readonly job: Job;
  readonly posterior: RemovalBelief;
  readonly limits: readonly LimitFunction[];
  readonly draws: ShopDraws;
  /** A few shops in which hopeless set-ups are seen to be so. */
  readonly scouts: ShopDraws;
  /** Shops that have no part in solving: a set-up must keep its chances there too. */
  readonly fair: ShopDraws;
  /** Stop at the first plan that works: enough to know whether there is one. */
  readonly firstOnly: boolean;
  /** Money for everything beside the arc; left out: the arc's side alone is weighed. */
  readonly afterCost: AfterCostFunction | undefined;
  /** Work that the search may do. */
  readonly work: Work;
}

/** The same for one electrode, with what the others have found. */
export interface ElectrodeSearch extends SearchInput {
  /** Set-ups found with other electrodes: what one of them surely beats in time, cost and heat is not worth solving. */
  readonly rivals: readonly Merit[];
}

/** Holds a solved set-up to every limit; undefined where a hard one fails. */
export function weigh(
  input: SearchInput,
  task: SolveTask,
  solved: Solved,
  width: number,
  miss: MissNote,
): Feasible | undefined {
  const { job, limits, fair } = input;
  let worst: Candidate | undefined;
  for (const logEnergy of energiesOf(solved)) {
    const candidate = candidateOf(task, solved, logEnergy, width);
    worst ??= candidate;
    for (const check of limits) {
      const failed = check(candidate, job).filter((limit) => limit.hard && limit.verdict === 'fails');
      if (failed.length > 0) {
        for (const limit of failed) miss(missOf(limit));
        return undefined;
      }
    }
  }
  const effort = effortOf(solved.setup, solved.outcomes, fair, job, task.run.passLength);
  const short = stockMiss(task, effort, STOCK_SHARE);
  if (short !== undefined) {
    miss(short);
    return undefined;
  }
  if (worst === undefined) return undefined;
  const wholeCost =
    input.afterCost === undefined
      ? effort.cost
      : wholeCosts(effort, solved.outcomes, solved.setup.pattern, job.seam.length, input.afterCost);
  return { task, solved, candidate: worst, effort, wholeCost, merit: meritOf(effort, wholeCost) };
}

/** Share of the shops for which the stock must do [-]. */
const STOCK_SHARE = 0.9;

/** The stock that is missing, if it does not do for this share of the shops; tracks: the effort is of one of so many. */
export function stockMiss(task: SolveTask, effort: Effort, share: number, tracks = 1): Miss | undefined {
  const { count, diameter } = task.base.electrode;
  // An electrode begun on one track goes on to the next, so of several tracks only whole ones add up.
  const needs = effort.electrodes.map((begun) => (begun - 1) * tracks + 1);
  const placeOf = (part: number): number => Math.floor(part * (needs.length - 1));
  const served = needs.reduce((shops, need) => (need <= count ? shops + 1 : shops), 0);
  if (served > placeOf(share)) return undefined;
  const needed = needs.sort()[placeOf(STOCK_SHARE)]!;
  return {
    constraint: 'electrode_stock',
    title: 'Electrodes in stock',
    demand: needed,
    limit: count,
    unit: 'electrodes',
    remedy: `${needed - count} more electrodes of ${(diameter * 1000).toFixed(1)} mm`,
    size: needed / Math.max(1, count) - 1,
  };
}
