import { depthDemand } from './demand.ts';
import { type Effort, effortOf, type Merit, meritOf } from './effort.ts';
import type { Scouted } from './line.ts';
import { type MissNote, missChance } from './miss.ts';
import type { Prospect } from './prospect.ts';
import type { SearchInput, SearchTask } from './search-task.ts';
import { roomOf, type Solved, type SolveTask, solve, triedAgain, triedAt } from './solve.ts';
import { energyAllowed, type Feasible, stockMiss, weigh } from './weigh.ts';
import { costsWhereRun, wholeCosts } from './whole-cost.ts';

/** Parts of the allowed misses that are kept back when a way is solved for good, one after the other [-]. */
const GUARDS = [0.1, 0.18, 0.28, 0.4, 0.55] as const;
/** Shortfall in the few scout shops beyond which a way is given up, and in many [-]: about two of its standard errors. */
const HOPELESS = { few: 0.025, many: 0.015 } as const;
/** Part of the spread by which the target of a way in few shops may reach deeper than it must [-]: they tell it no better. */
const SCOUT_TOLERANCE = 0.1;
/** The same in the shops that it is solved for good in [-]. */
const LAST_TOLERANCE = 0.015;
/** How much more than the stock a way may need in few shops to be looked at in many, in parts of it [-]. */
const STOCK_ERROR = 0.1;

/** What a lower current might mend. */
export type LimitedBy = 'travel' | 'kit';

/** A way that was solved in many shops and keeps the limits, before it is held to shops that had no part in that. */
export interface Contender {
  readonly prospect: Prospect;
  readonly solved: Solved;
  readonly merit: Merit;
}

/** What came of solving a way in many shops. */
export interface Settled {
  readonly contender?: Contender;
  /** Room left above, in ln depth; endless where nothing is known of it [-]. */
  readonly room: number;
  readonly limitedBy?: LimitedBy;
}

function solveTask(input: SearchTask, { task, way }: Prospect, guard: number): SolveTask {
  return {
    tables: { ...task, way },
    run: task.run,
    demand: depthDemand(input.job, guard),
    work: input.work,
  };
}

/** Whether a setting stands at the end of the travel, so that a lower current might do. */
function atQuickest({ setup: { rig, course } }: Solved): boolean {
  return course.middle.some((energy) => energy <= rig.energyRange[0] + 1e-9);
}

/** Solves a way in few shops: whether it is worth solving in many, and what it takes. */
export function scoutOf(
  input: SearchInput,
  prospect: Prospect,
  miss: MissNote,
  logTarget = prospect.forecast.logTarget,
): Scouted {
  const { forecast } = prospect;
  const task = solveTask(input, prospect, 0);
  const solved = solve(task, { ...forecast, logTarget }, input.scouts, HOPELESS.few, SCOUT_TOLERANCE);
  const room = roomOf(solved, task.demand, forecast.spread);
  const seen = { atQuickest: atQuickest(solved), logTarget: solved.logTarget, room };
  const lost = { ...seen, hopeless: true, merit: forecast.merit };
  if (solved.shortfall > HOPELESS.few) {
    missChance(solved.chances, task.demand, solved.shortfall, miss);
    return lost;
  }
  const effort = effortOf(solved.setup, solved.outcomes, input.scouts, input.job, task.run);
  const short = stockMiss(solved, effort);
  if (short !== undefined && short.size > STOCK_ERROR) {
    miss(short);
    return { ...lost, atQuickest: false };
  }
  return { ...seen, hopeless: false, merit: meritIn(input, prospect, solved, effort) };
}

/** What a way takes on the mean over the shops that it was run in. */
function meritIn(
  { job, afterCost }: SearchTask,
  { task }: Prospect,
  { outcomes }: Solved,
  effort: Effort,
): Merit {
  const costs =
    afterCost === undefined
      ? effort.cost
      : wholeCosts(effort, outcomes, task.rig.pattern, job.seam.length, afterCost);
  return meritOf(effort, costsWhereRun(costs, outcomes.notRun), outcomes.notRun);
}

/** Solves a way in many shops and holds it to every limit. */
export function settle(input: SearchInput, asked: Prospect, logTarget: number, miss: MissNote): Settled {
  const first = triedAt(solveTask(input, asked, 0), logTarget, input.scouts);
  const allowed = energyAllowed(input, solveTask(input, asked, 0), asked.task.passWidth, first, miss);
  if (allowed === undefined) return { limitedBy: 'kit', room: Number.NaN };
  const prospect = allowed === asked.task.rig.energyRange[1] ? asked : slowedTo(asked, allowed);
  const task = solveTask(input, prospect, GUARDS[0]);
  const from = { ...prospect.forecast, logTarget };
  const solved = solve(task, from, input.draws, HOPELESS.many);
  const room = roomOf(solved, task.demand, from.spread);
  // What many shops say is far from enough is not counted in more of them.
  if (solved.shortfall > HOPELESS.many) {
    missChance(solved.chances, depthDemand(input.job, 0), solved.shortfall, miss);
    return { room, ...(atQuickest(solved) && { limitedBy: 'travel' }) };
  }
  const weighed = weigh(input, task, prospect.task, solved, input.draws, miss);
  return weighed === undefined
    ? { limitedBy: 'kit', room }
    : { room, contender: { prospect, solved, merit: weighed.merit } };
}

/**
 * Solves a way for good and holds it to shops that had no part in that. The wanted chances are raised a little before
 * solving, by what the last count may be wrong, and a little more where that was not enough.
 *
 * @param shops - the shops that it is solved in: more of them aim it more closely
 */
export function confirm(
  input: SearchTask,
  { prospect, solved: { logTarget } }: Contender,
  miss: MissNote,
  shops = input.last,
): Feasible | undefined {
  const plain = solveTask(input, prospect, 0);
  let from = { ...prospect.forecast, logTarget };
  for (const guard of GUARDS) {
    const task = solveTask(input, prospect, guard);
    const solved = solve(task, from, shops, HOPELESS.many, shops === input.last ? LAST_TOLERANCE : undefined);
    from = { ...from, logTarget: solved.logTarget };
    const fair = triedAgain(plain, solved, input.fair);
    if (fair.shortfall <= 0) return weigh(input, plain, prospect.task, fair, input.fair, miss);
    // What is short by much more than chance is not mended by asking for more.
    if (fair.shortfall > 3 * fair.chances.standardError || guard === GUARDS.at(-1)) {
      missChance(fair.chances, plain.demand, fair.shortfall, miss);
      return undefined;
    }
  }
  return undefined;
}

/** The same prospect on a carriage that goes no slower than the limits allow. */
function slowedTo({ task, way, forecast }: Prospect, energy: number): Prospect {
  const { rig } = task;
  return { way, forecast, task: { ...task, rig: { ...rig, energyRange: [rig.energyRange[0], energy] } } };
}
