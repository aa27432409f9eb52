import type { Job } from '../job/index.ts';
import type { LimitFunction } from '../limit/index.ts';
import type { RemovalBelief } from '../removal/index.ts';
import { shopsOf } from './kept-shops.ts';
import { refuse } from './refuse.ts';
import { reportPlan } from './report.ts';
import type { Plan, Refusal } from './result.ts';
import { search } from './search.ts';
import type { Feasible, SearchInput } from './weigh.ts';
import type { AfterCostFunction } from './whole-cost.ts';

/** Shops that the search works with [-]. */
const SEARCH_SHOPS = 600;
/** Shops in which hopeless set-ups are seen to be so [-]. */
const SCOUT_SHOPS = 100;
/** Shops that had no part in the search, in which the plan told is counted out [-]. */
const FAIR_SHOPS = 4000;
/** The same three while a refusal looks for what would free the job: many searches, so fewer shops each [-]. */
const QUICK = { search: 150, scout: 60, fair: 800 } as const;
/** Passes that the search for a plan may run [-]: about three times what a wash of many tracks takes. */
const WORK = 20e6;
/** Passes that trying all the changes of a refused job may run [-]. */
const REFUSAL_WORK = 6e6;
/** Distance between the seeds of the two, so that they share no draw [-]. */
const FAIR_SEED = 104_729;
/** Alternatives told besides the plan, at most [-]. */
const ALTERNATIVES_MOST = 5;

/** What the planner finds: a plan with its alternatives, or a refusal. */
export type PlanResult =
  | { readonly plan: Plan; readonly alternatives: readonly Plan[] }
  | { readonly refusal: Refusal };

/**
 * Finds the passes that make the wanted groove surely enough at the least time, cost or heat, or tells why none do.
 *
 * Electrodes, currents, tracks and layers are enumerated and the travel is solved; chances are counted over
 * shops drawn from what is known of removal, the same shops for every candidate. Where one blind plan cannot
 * meet both sides of the tolerance, plans that gauge and adjust are tried. The plan told is counted out once
 * more in shops that had no part in the search. Same inputs, same plan.
 *
 * @param job - the job [record], from `readJob`
 * @param posterior - what is known of removal [record], from `publishedBelief`
 * @param limits - limit functions of the rooms that have any [list], may be empty
 * @param afterCost - money and time for everything beside the arc, from the groove left behind [record], or left out
 * @returns plan and alternatives, or a refusal [record]
 * @source derived: chance-constrained planning over the removal law
 * @example
 * typeof planJob // => "function"
 */
export function planJob(
  job: Job,
  posterior: RemovalBelief,
  limits: readonly LimitFunction[],
  afterCost?: AfterCostFunction,
): PlanResult {
  const { seed } = job.plan;
  const draws = shopsOf(posterior, SEARCH_SHOPS, seed);
  const scouts = shopsOf(posterior, SCOUT_SHOPS, seed);
  const fair = shopsOf(posterior, FAIR_SHOPS, (seed + FAIR_SEED) % 2 ** 31);
  const input: SearchInput = {
    job,
    posterior,
    limits,
    draws,
    scouts,
    fair,
    firstOnly: false,
    afterCost,
    work: { left: WORK },
  };
  const { feasible, misses } = search(input);

  const unbeaten = paretoSet(feasible, job);
  const beaten = bestPerElectrode(
    feasible.filter((each) => !unbeaten.includes(each)),
    unbeaten,
    job,
  );
  const [best, ...others] = [...unbeaten, ...beaten].slice(0, ALTERNATIVES_MOST + 1);
  if (best === undefined) {
    const quick: SearchInput = {
      ...input,
      draws: shopsOf(posterior, QUICK.search, seed),
      scouts: shopsOf(posterior, QUICK.scout, seed),
      fair: shopsOf(posterior, QUICK.fair, (seed + FAIR_SEED) % 2 ** 31),
      work: { left: REFUSAL_WORK },
    };
    return { refusal: refuse(input, quick, misses) };
  }
  const report = { job, posterior, limits, draws: fair };
  return {
    plan: reportPlan(best, report, false),
    alternatives: others
      .map((each) => reportPlan(each, report, beaten.includes(each)))
      .sort((a, b) => a.job_time_s.p50 - b.job_time_s.p50),
  };
}

/** Set-ups that none beats in time, cost and heat at once, best by the job's objective first. */
function paretoSet(feasible: readonly Feasible[], job: Job): Feasible[] {
  const keys = ['time', 'cost', 'heat'] as const;
  const beats = (a: Feasible, b: Feasible): boolean =>
    keys.every((key) => a.merit[key] <= b.merit[key]) && keys.some((key) => a.merit[key] < b.merit[key]);
  const objective = job.plan.objective;
  return feasible
    .filter((each) => !feasible.some((other) => beats(other, each)))
    .sort((a, b) => a.merit[objective] - b.merit[objective] || a.merit.time - b.merit.time);
}

/** For comparison: the best beaten set-up of each electrode that no unbeaten one uses. */
function bestPerElectrode(beaten: readonly Feasible[], unbeaten: readonly Feasible[], job: Job): Feasible[] {
  const shown = new Set(unbeaten.map((each) => each.candidate.electrode));
  const objective = job.plan.objective;
  return [...beaten]
    .sort((a, b) => a.merit[objective] - b.merit[objective])
    .filter(({ candidate }) => {
      const first = !shown.has(candidate.electrode);
      shown.add(candidate.electrode);
      return first;
    });
}
