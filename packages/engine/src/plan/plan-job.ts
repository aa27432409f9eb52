import type { Job, KitElectrode } from '../job/index.ts';
import type { Easing, LimitFunction } from '../limit/index.ts';
import type { RemovalBelief } from '../removal/index.ts';

import { meritBy } from './effort.ts';
import { shopsOf } from './kept-shops.ts';
import { planningBelief } from './law.ts';
import type { PlanOutcome, Refusal } from './outcome.ts';
import { refuse } from './refuse.ts';
import { planOutcome } from './report.ts';
import type { ReportInput } from './report-input.ts';
import { search } from './search.ts';
import type { SearchTask } from './search-task.ts';
import { kindOfWay } from './way.ts';
import type { Feasible } from './weigh.ts';
import type { AfterCostFunction } from './whole-cost.ts';
import type { Work } from './work.ts';

/** Shops that ways are solved in, those in which hopeless ones are seen to be so, and those that had no part in either [-]. */
const SHOPS = { search: 1024, scout: 128, fair: 4096 } as const;
/** Passes that the search for a plan may run [-]: about three times what a wash of many tracks takes. */
const WORK = 20e6;
/** Passes that trying all the changes of a refused job may run [-]. */
const REFUSAL_WORK = 4e6;
/** Distance between the seeds of the two, so that they share no draw [-]. */
const FAIR_SEED = 104_729;
/** Part of the objective by which a plan may be worse for being quicker [-]. */
const UNNOTICED = 0.003;
/** Alternatives told besides the plan, at most [-]. */
const ALTERNATIVES_MOST = 5;

/** What the planner finds: a plan with its alternatives, or a refusal; SI. */
export type PlanResult =
  | { readonly plan: PlanOutcome; readonly alternatives: readonly PlanOutcome[] }
  | { readonly refusal: Refusal };

/** What a job is planned within, beside its own document. */
export interface PlanWithin {
  /** Limit functions of the rooms that have any. */
  readonly limits: readonly LimitFunction[];
  /** What eases those limits, tried where nothing is found; left out: none. */
  readonly easings?: readonly Easing[];
  /** Money and time for everything beside the arc, from the groove left behind; left out: the arc's side alone. */
  readonly afterCost?: AfterCostFunction;
  /** Work that the search may do, less what it did when it is done; left out: about three times what a wash of many tracks takes. */
  readonly work?: Work;
}

/**
 * Finds the passes that make the wanted groove surely enough at the least cost, time or heat, or tells why none do.
 *
 * Ways (blind, after a trial, after a run-in, in layers with gauging between), electrodes, currents, tracks and layers
 * are enumerated and forecast in closed form; the most promising are solved in shops drawn from what is known of
 * removal, the same shops for every candidate. What is told is counted once more in shops that had no part in the
 * search. Same inputs, same plan.
 *
 * @param job - the job [record], from `readJob`
 * @param belief - what is known of removal [record], from `publishedBelief`
 * @param within - limits, what eases them, and the money beside the arc [record], see PlanWithin
 * @returns plan and alternatives, or a refusal [record]
 * @source derived: chance-constrained planning over the removal law
 * @example
 * const belief = publishedBelief(metalOf('carbon_steel'), 'flat');
 * planJob(demoJob.job, belief, { limits: [], easings: [], afterCost: afterCostOf(demoJob.job) }).plan.currency // => "EUR"
 */
export function planJob(job: Job, belief: RemovalBelief, within: PlanWithin): PlanResult {
  const input = taskOf(job, belief, within, true);
  const found = search(input);
  const { feasible } = found;
  const best = bestOf(feasible, job);
  if (best === undefined) {
    return { refusal: refuse({ ...input, work: { left: REFUSAL_WORK } }, found, within.easings ?? []) };
  }
  const rest = differing(
    feasible.filter((each) => each !== best),
    best,
    job,
  );
  const unbeaten = paretoSet([best, ...rest]);
  const beaten = bestOfTheRest(
    rest.filter((each) => !unbeaten.includes(each)),
    unbeaten,
  );
  const others = [...unbeaten.filter((each) => each !== best), ...beaten].slice(0, ALTERNATIVES_MOST);
  const report = reportOf(input);
  return {
    plan: planOutcome(best, report, { dominated: false, isPlan: true }),
    alternatives: others
      .map((each) => planOutcome(each, report, { dominated: beaten.includes(each), isPlan: false }))
      .sort((a, b) => a.jobTime.mean - b.jobTime.mean),
  };
}

/**
 * Finds the plan of a job and nothing beside it: no alternatives, no worth of measuring, no reason where there is none.
 *
 * @param job - the job [record], from `readJob`
 * @param belief - what is known of removal [record], from `publishedBelief`
 * @param within - limits and the money beside the arc [record], see PlanWithin
 * @returns the plan; undefined where none is found [record]
 * @source as planJob
 * @example
 * const belief = publishedBelief(metalOf('carbon_steel'), 'flat');
 * planAlone(demoJob.job, belief, { limits: [], afterCost: afterCostOf(demoJob.job) }).currency // => "EUR"
 */
export function planAlone(job: Job, belief: RemovalBelief, within: PlanWithin): PlanOutcome | undefined {
  const input = taskOf(job, belief, within, false);
  const best = bestOf(search(input).feasible, job);
  return best && planOutcome(best, reportOf(input), { dominated: false, isPlan: false });
}

function taskOf(job: Job, belief: RemovalBelief, within: PlanWithin, compared: boolean): SearchTask {
  const { seed } = job.plan;
  const planned = planningBelief(belief);
  return {
    job,
    belief: planned,
    limits: within.limits,
    draws: shopsOf(planned, SHOPS.search, seed),
    scouts: shopsOf(planned, SHOPS.scout, seed),
    fair: shopsOf(planned, SHOPS.fair, (seed + FAIR_SEED) % 2 ** 31),
    firstOnly: false,
    compared,
    afterCost: within.afterCost,
    work: within.work ?? { left: WORK },
  };
}

function reportOf({ job, belief, limits, fair }: SearchTask): ReportInput {
  return { job, belief, limits, draws: fair };
}

/** What is best by the objective; of those that are as good to within what nobody notices, the quickest. */
function bestOf(feasible: readonly Feasible[], { plan: { objective } }: Job): Feasible | undefined {
  const least = Math.min(...feasible.map(({ merit }) => meritBy(merit, objective)));
  const asGood = feasible.filter(({ merit }) => meritBy(merit, objective) <= least * (1 + UNNOTICED));
  return asGood.sort((a, b) => a.merit.time - b.merit.time)[0];
}

/** Better by the objective. */
function isBetter(a: Feasible, b: Feasible, { plan: { objective } }: Job): boolean {
  return meritBy(a.merit, objective) < meritBy(b.merit, objective);
}

/** What is worth telling beside the plan: of set-ups that differ only in numbers the best, best first. */
function differing(feasible: readonly Feasible[], best: Feasible, job: Job): Feasible[] {
  const kind = ({ solved: { setup } }: Feasible): string =>
    JSON.stringify([
      setup.rig.electrode.diameter,
      setup.rig.electrode.kind,
      setup.rig.pattern.tracks,
      setup.way.tryout?.kind,
      setup.way.shares.length,
      setup.way.stops,
    ]);
  const seen = new Set([kind(best)]);
  return [...feasible]
    .sort((a, b) => (isBetter(a, b, job) ? -1 : 1))
    .filter((each) => {
      const own = kind(each);
      const fresh = !seen.has(own);
      seen.add(own);
      return fresh;
    });
}

/** Set-ups that none beats in time, cost and heat at once, in the order given. */
function paretoSet(feasible: readonly Feasible[]): Feasible[] {
  const keys = ['time', 'cost', 'heat'] as const;
  const beats = (a: Feasible, b: Feasible): boolean =>
    keys.every((key) => a.merit[key] <= b.merit[key]) && keys.some((key) => a.merit[key] < b.merit[key]);
  return feasible.filter((each) => !feasible.some((other) => beats(other, each)));
}

/** For comparison: the best beaten set-up of each electrode and each kind of way that no unbeaten one shows. */
function bestOfTheRest(beaten: readonly Feasible[], unbeaten: readonly Feasible[]): Feasible[] {
  const electrodeOf = ({ solved }: Feasible): KitElectrode => solved.setup.rig.electrode;
  const kindOf = ({ solved }: Feasible): string => kindOfWay(solved.setup.way);
  const electrodes = new Set(unbeaten.map(electrodeOf));
  const kinds = new Set(unbeaten.map(kindOf));
  return beaten.filter((each) => {
    const shown = electrodes.has(electrodeOf(each)) && kinds.has(kindOf(each));
    electrodes.add(electrodeOf(each));
    kinds.add(kindOf(each));
    return !shown;
  });
}
