import type { Job, KitElectrode } from '../job/index.ts';
import type { Easing, LimitFunction } from '../limit/index.ts';
import type { RemovalBelief } from '../removal/index.ts';

import { type Merit, meritBy } from './effort.ts';
import { shopsOf } from './kept-shops.ts';
import { planningBelief } from './law.ts';
import type { PlanOutcome, Refusal } from './outcome.ts';
import { refuse } from './refuse.ts';
import { planOutcome } from './report.ts';
import type { ReportInput } from './report-input.ts';
import { search } from './search.ts';
import type { SearchTask } from './search-task.ts';
import { type Contender, confirm } from './settle.ts';
import { kindOfWay } from './way.ts';
import type { Feasible } from './weigh.ts';
import type { AfterCostFunction } from './whole-cost.ts';
import type { Work } from './work.ts';

/** Shops that ways are solved in, those in which hopeless ones are seen to be so, those in which what is told is solved for good, and those that had no part in any of it [-]. */
const SHOPS = { search: 1024, scout: 384, last: 4096, fair: 4096 } as const;
/** Passes that the search for a plan may run [-]: about three times what a wash of many tracks takes. */
const WORK = 20e6;
/** Passes that trying all the changes of a refused job may run [-]. */
const REFUSAL_WORK = 4e6;
/** Distance of their seeds from that of the others, so that they share no draw [-]. */
const LAST_SEED = 15_485_863;
const FAIR_SEED = 104_729;
/** Part of the objective by which a plan may be worse for being quicker [-] (judgement): less than prices are known to. */
const WORTH_THE_TIME = 0.01;
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
  if (found.best === undefined) {
    return { refusal: refuse({ ...input, work: { left: REFUSAL_WORK } }, found, within.easings ?? []) };
  }
  const told = [found.best, ...confirmed(found.best, found.others, input)];
  const best = bestOf(told, job);
  const rest = told.filter((each) => each !== best);
  const unbeaten = paretoSet(told);
  const report = reportOf(input);
  return {
    plan: planOutcome(best, report, { dominated: false, isPlan: true }),
    alternatives: rest
      .map((each) => planOutcome(each, report, { dominated: !unbeaten.includes(each), isPlan: false }))
      .sort((a, b) => a.jobTime.mean - b.jobTime.mean),
  };
}

/** Of what was found beside the best, what is worth telling, once it holds in fresh shops too. */
function confirmed(best: Feasible, others: readonly Contender[], input: SearchTask): Feasible[] {
  const rest = differing(others, best, input.job);
  const unbeaten = paretoSet([best, ...rest]).filter((each) => each !== best) as Contender[];
  const beaten = bestOfTheRest(
    rest.filter((each) => !unbeaten.includes(each)),
    [best, ...unbeaten],
  );
  return [...unbeaten, ...beaten]
    .slice(0, ALTERNATIVES_MOST)
    .flatMap((each) => confirm(input, each, () => undefined, input.draws) ?? []);
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
  const { best: least, others } = search(input);
  if (least === undefined) return undefined;
  const { objective } = job.plan;
  const most = meritBy(least.merit, objective) * (1 + WORTH_THE_TIME);
  const quicker = others.filter(
    ({ merit }) => merit.time < least.merit.time && meritBy(merit, objective) <= most,
  );
  const best = bestOf([least, ...confirmed(least, quicker, input)], job);
  return planOutcome(best, reportOf(input), { dominated: false, isPlan: false });
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
    last: shopsOf(planned, SHOPS.last, (seed + LAST_SEED) % 2 ** 31),
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

/** What is best by the objective; of those that are as good to within what no price is known to, the quickest: it has the fewest passes and stops. */
function bestOf<T extends { readonly merit: Merit }>(told: readonly T[], { plan: { objective } }: Job): T {
  const least = Math.min(...told.map(({ merit }) => meritBy(merit, objective)));
  const asGood = told.filter(({ merit }) => meritBy(merit, objective) <= least * (1 + WORTH_THE_TIME));
  return asGood.sort((a, b) => a.merit.time - b.merit.time)[0]!;
}

/**
 * The better of plans of a job, as the planner itself would choose: by the objective, and of those that are as good the quickest.
 *
 * @param job - the job [record], from `readJob`
 * @param plans - plans of it [list], at least one
 * @returns one of them [record]
 * @source as planJob
 * @example
 * const { plan } = demoAnswer.basis;
 * betterPlan(demoJob.job, [{ ...plan, currency: 'dearer', wholeCost: { mean: 1e6 } }, plan]).currency // => "EUR"
 */
export function betterPlan(job: Job, plans: readonly PlanOutcome[]): PlanOutcome {
  const merits = plans.map((plan) => ({
    plan,
    merit: { time: plan.jobTime.mean, cost: plan.wholeCost.mean, heat: plan.arcEnergy },
  }));
  return bestOf(merits, job).plan;
}

/** A set-up that works, confirmed or not. */
type Found = Feasible | Contender;

/** What is worth telling beside the plan: of set-ups that differ only in numbers the best, best first. */
function differing(others: readonly Contender[], best: Feasible, { plan: { objective } }: Job): Contender[] {
  const kind = ({ solved: { setup } }: Found): string =>
    JSON.stringify([
      setup.rig.electrode.diameter,
      setup.rig.electrode.kind,
      setup.rig.pattern.tracks,
      setup.way.tryout?.kind,
      setup.way.shares.length,
      setup.way.stops,
    ]);
  const seen = new Set([kind(best)]);
  return [...others]
    .sort((a, b) => meritBy(a.merit, objective) - meritBy(b.merit, objective))
    .filter((each) => {
      const own = kind(each);
      const fresh = !seen.has(own);
      seen.add(own);
      return fresh;
    });
}

/** Set-ups that none beats in time, cost and heat at once, in the order given. */
function paretoSet(found: readonly Found[]): Found[] {
  const keys = ['time', 'cost', 'heat'] as const;
  const beats = (a: Found, b: Found): boolean =>
    keys.every((key) => a.merit[key] <= b.merit[key]) && keys.some((key) => a.merit[key] < b.merit[key]);
  return found.filter((each) => !found.some((other) => beats(other, each)));
}

/** For comparison: the best beaten set-up of each electrode and each kind of way that no unbeaten one shows. */
function bestOfTheRest(beaten: readonly Contender[], unbeaten: readonly Found[]): Contender[] {
  const electrodeOf = ({ solved }: Found): KitElectrode => solved.setup.rig.electrode;
  const kindOf = ({ solved }: Found): string => kindOfWay(solved.setup.way);
  const electrodes = new Set(unbeaten.map(electrodeOf));
  const kinds = new Set(unbeaten.map(kindOf));
  return beaten.filter((each) => {
    const shown = electrodes.has(electrodeOf(each)) && kinds.has(kindOf(each));
    electrodes.add(electrodeOf(each));
    kinds.add(kindOf(each));
    return !shown;
  });
}
