import type { Candidate, LimitFunction } from '../limit/index.ts';
import { electrodeName } from '../removal/index.ts';
import { candidateAt, candidatesOf, type PlanSetting, settingsOf } from './candidate-of.ts';
import { type Effort, effortOf, type Merit, meritOf } from './effort.ts';
import { type Miss, type MissNote, missOf } from './miss.ts';
import type { ProspectTask } from './prospect.ts';
import type { SearchTask } from './search-task.ts';
import type { ShopDraws } from './shop-draws.ts';
import type { Solved, SolveTask } from './solve.ts';
import { costsWhereRun, wholeCosts } from './whole-cost.ts';

/** A set-up that meets every demand and every hard limit, with what it takes. */
export interface Feasible {
  readonly task: SolveTask;
  readonly forecast: ProspectTask;
  readonly solved: Solved;
  /** Its settings as the limit functions see them, the slowest first. */
  readonly candidates: readonly Candidate[];
  readonly effort: Effort;
  /** Cost of the whole job in a part of the shops in which the seam is run, in the job's currency [-]. */
  readonly wholeCost: Float64Array;
  readonly merit: Merit;
}

/** Holds a set-up that was solved in these shops to every limit; undefined where a hard one fails. */
export function weigh(
  input: SearchTask,
  task: SolveTask,
  forecast: ProspectTask,
  solved: Solved,
  shops: ShopDraws,
  miss: MissNote,
): Feasible | undefined {
  const { job } = input;
  const candidates = candidatesOf(solved.setup, task, forecast.passWidth);
  for (const candidate of candidates) if (!holds(input, candidate, miss)) return undefined;
  const effort = effortOf(solved.setup, solved.outcomes, shops, job, task.run);
  const short = stockMiss(solved, effort);
  if (short !== undefined) {
    miss(short);
    return undefined;
  }
  const { outcomes, setup } = solved;
  const costs =
    input.afterCost === undefined
      ? effort.cost
      : wholeCosts(effort, outcomes, setup.rig.pattern, job.seam.length, input.afterCost);
  const wholeCost = costsWhereRun(costs, outcomes.notRun);
  const merit = meritOf(effort, wholeCost, outcomes.notRun);
  return { task, forecast, solved, candidates, effort, wholeCost, merit };
}

/** Whether a setting keeps every hard limit; those that it fails are noted. */
function holds({ job, limits }: SearchTask, candidate: Candidate, miss: MissNote): boolean {
  for (const check of limits) {
    const failed = check(candidate, job).filter((limit) => limit.hard && limit.verdict === 'fails');
    for (const limit of failed) miss(missOf(limit));
    if (failed.length > 0) return false;
  }
  return true;
}

/** The limit functions that turn a setting away. */
function failing({ job, limits }: SearchTask, candidate: Candidate): LimitFunction[] {
  return limits.filter((check) =>
    check(candidate, job).some((limit) => limit.hard && limit.verdict === 'fails'),
  );
}

/** Halvings for the slowest setting that the limits allow [-]: to about a hundredth of the range of a table. */
const HALVINGS = 6;

/**
 * Greatest ln specific energy that the hard limits allow to a solved way, where its tables ask for more in some shops:
 * there the hand asks instead. The end of the travel where all its settings hold; undefined where those in the middle do
 * not hold either.
 */
export function energyAllowed(
  input: SearchTask,
  task: SolveTask,
  passWidth: number,
  { setup, logTarget }: Solved,
  miss: MissNote,
): number | undefined {
  const quiet: MissNote = () => undefined;
  const settings = settingsOf(setup, Math.exp(logTarget));
  const greatest = (list: readonly PlanSetting[], by: 'logEnergy' | 'depth'): PlanSetting =>
    list.reduce((best, each) => (each[by] > best[by] ? each : best));
  const slowest = greatest(settings, 'logEnergy');
  const { middle } = setup.course;
  const ofMiddle = settings.slice(0, middle.length);
  const end = setup.rig.energyRange[1];
  let high = Math.min(end, slowest.logEnergy);
  let low = Math.max(...middle);
  const at = (logEnergy: number, depth = slowest.depth): Candidate =>
    candidateAt(setup, task, passWidth, { logEnergy, depth });
  const deepest = greatest(ofMiddle, 'depth');
  if (!holds(input, at(deepest.logEnergy, deepest.depth), miss)) return undefined;
  if (high - low < 1e-6) return end;
  const limits = failing(input, at(high));
  if (limits.length === 0) return end;
  const heldAt = (logEnergy: number): boolean => holds({ ...input, limits }, at(logEnergy), quiet);
  if (!heldAt(low)) {
    holds({ ...input, limits }, at(low), miss);
    return undefined;
  }
  for (let halving = 0; halving < HALVINGS; halving += 1) {
    const middle = (low + high) / 2;
    if (heldAt(middle)) low = middle;
    else high = middle;
  }
  return low;
}

/** Share of the shops for which the stock must do [-]. */
const STOCK_SHARE = 0.9;

/** The stock that is missing, if it does not do for nine of ten shops. */
export function stockMiss(solved: Solved, effort: Effort): Miss | undefined {
  const { count, diameter } = solved.setup.rig.electrode;
  const served = effort.electrodes.reduce((shops, need) => (need <= count ? shops + 1 : shops), 0);
  if (served > STOCK_SHARE * (effort.electrodes.length - 1)) return undefined;
  const needed = effort.electrodes.slice().sort()[Math.floor(STOCK_SHARE * (effort.electrodes.length - 1))]!;
  return {
    constraint: 'electrode_stock',
    title: 'Electrodes in stock',
    demand: needed,
    limit: count,
    unit: 'electrodes',
    remedy: `${needed - count} more electrodes of ${electrodeName(diameter)}`,
    size: needed / Math.max(1, count) - 1,
  };
}
