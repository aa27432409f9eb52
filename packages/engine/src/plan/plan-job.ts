import type { Job } from '../job/index.ts';
import type { LimitFunction } from '../limit/index.ts';
import type { RemovalPosterior } from '../removal/index.ts';
import { shortfall } from './chance.ts';
import { refuse } from './refuse.ts';
import { fairChances, type ReportInput, reportPlan } from './report.ts';
import type { Plan, Refusal } from './result.ts';
import { depthDemand, type Feasible, type SearchInput, search } from './search.ts';
import { drawShops } from './shop-draws.ts';

/** Shops that the search works with [-]. */
const SEARCH_SHOPS = 600;
/** Shops that had no part in the search, in which the plan told is counted out [-]. */
const FAIR_SHOPS = 6000;
/** Distance between the seeds of the two, so that they share no draw [-]. */
const FAIR_SEED = 104_729;
/** How much the wanted chances are raised in the search, step by step, until the fair count keeps them [-]. */
const GUARDS = [0.004, 0.012, 0.024] as const;
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
 * @param posterior - what is known of removal [record], from `publishedPosterior`
 * @param limits - limit functions of the rooms that have any [list], may be empty
 * @returns plan and alternatives, or a refusal [record]
 * @source derived: chance-constrained planning over the removal law
 * @example
 * typeof planJob // => "function"
 */
export function planJob(job: Job, posterior: RemovalPosterior, limits: readonly LimitFunction[]): PlanResult {
  const draws = drawShops(posterior, SEARCH_SHOPS, job.plan.seed);
  const report: ReportInput = {
    job,
    posterior,
    limits,
    draws: drawShops(posterior, FAIR_SHOPS, (job.plan.seed + FAIR_SEED) % 2 ** 31),
  };
  const input: Omit<SearchInput, 'guard'> = { job, posterior, limits, draws, firstOnly: false };
  for (const guard of GUARDS) {
    const { feasible } = search({ ...input, guard });
    const kept = paretoSet(feasible, job)
      .filter((each) => shortfall(fairChances(each, report).chances, depthDemand(job, 0)) <= 0)
      .slice(0, ALTERNATIVES_MOST + 1);
    const [best, ...others] = kept;
    if (best !== undefined) {
      return {
        plan: reportPlan(best, report),
        alternatives: others
          .map((each) => reportPlan(each, report))
          .sort((a, b) => a.job_time_s.p50 - b.job_time_s.p50),
      };
    }
  }
  return { refusal: refuse({ ...input, guard: GUARDS[0] }) };
}

/** Set-ups that none beats in time, cost and heat at once, best by the job's objective first. */
export function paretoSet(feasible: readonly Feasible[], job: Job): Feasible[] {
  const keys = ['time', 'cost', 'heat'] as const;
  const beats = (a: Feasible, b: Feasible): boolean =>
    keys.every((key) => a.merit[key] <= b.merit[key]) && keys.some((key) => a.merit[key] < b.merit[key]);
  const objective = job.plan.objective;
  return feasible
    .filter((each) => !feasible.some((other) => beats(other, each)))
    .sort((a, b) => a.merit[objective] - b.merit[objective] || a.merit.time - b.merit.time);
}
