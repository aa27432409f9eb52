import type { Job, KitElectrode } from '../job/index.ts';
import { electrodeName } from '../removal/index.ts';
import { currentsOf } from './currents.ts';
import { depthDemand } from './demand.ts';
import { effortOf, type Merit, meritBy, meritOf } from './effort.ts';
import { lawOf } from './law.ts';
import { type Miss, type MissNote, missChance } from './miss.ts';
import { type Prospect, prospectsOf, prospectWith } from './prospect.ts';
import type { SearchInput, SearchTask } from './search-task.ts';
import { type Solved, type SolveTask, solve, triedAgain, triedAt } from './solve.ts';
import { kindOfWay, type Way } from './way.ts';
import { waysNear } from './ways.ts';
import { energyAllowed, type Feasible, weigh } from './weigh.ts';
import { wholeCosts } from './whole-cost.ts';

/** Everything found: what works, and where the rest failed. */
export interface SearchResult {
  readonly feasible: readonly Feasible[];
  readonly misses: readonly Miss[];
  /** Whether everything worth trying was tried before the work ran out. */
  readonly complete: boolean;
}

/** Parts of the allowed misses that are kept back when solving, one after the other [-]. */
const GUARDS = [0.12, 0.2, 0.3, 0.4, 0.5] as const;
/** Shortfall in the few scout shops beyond which a way is given up [-]: about two of its standard errors. */
const HOPELESS = 0.03;
/** How much better than forecast a way may come out [-]: what is forecast worse than that is not tried. */
const FORECAST_ERROR = 0.015;
/** Gain from which on a nearby way takes the place of the one found [-]. */
const NEAR_GAIN = 1e-3;
/** Looks and solutions spent on one more set-up to compare with [-]. */
const COMPARED_TRIES = 6;
/** Rounds of looking at nearby ways [-]. */
const NEAR_ROUNDS = 6;
/** Shops more in which nothing is run, that a nearby way may have [-]: what is not run costs nothing. */
const NOT_RUN_MORE = 0.01;

type Objective = Job['plan']['objective'];

/** An electrode with the currents it may be run at, the greatest first, and how many of them have been opened. */
interface ElectrodeCurrents {
  readonly electrode: KitElectrode;
  readonly currents: readonly number[];
  opened: number;
}

/**
 * Searches electrodes, currents, tracks and ways for the set-up that is best by the objective, and for the quickest.
 *
 * Every way is forecast first, in closed form. The most promising is solved in shops, then the next, until none is
 * forecast well enough to beat the best found; then ways near the best are tried. At a lower current the same groove
 * only takes longer, so lower ones are opened where the travel or a limit of the kit turned a way away.
 */
export function search(within: SearchTask): SearchResult {
  const far = Number.POSITIVE_INFINITY;
  const input: SearchInput = { ...within, horizon: { time: far, cost: far, heat: far } };
  const { job, work } = input;
  const misses = new Map<string, Miss>();
  const miss = (next: Miss): void => {
    const known = misses.get(next.constraint);
    if (known === undefined || next.size < known.size) misses.set(next.constraint, next);
  };
  const law = lawOf(input.belief);
  const electrodes: ElectrodeCurrents[] = electrodesOf(job, miss).map((electrode) => ({
    electrode,
    currents: currentsOf(electrode, job, miss),
    opened: 0,
  }));
  const prospects: Prospect[] = [];
  const open = (each: ElectrodeCurrents): void => {
    while (each.opened < each.currents.length) {
      const current = each.currents[each.opened]!;
      each.opened += 1;
      const { list, tooSlow } = prospectsOf(input, law, each.electrode, current, miss);
      prospects.push(...list);
      // A carriage that cannot go quickly enough needs less current.
      if (!tooSlow) return;
    }
  };
  for (const each of electrodes) open(each);
  const feasible: Feasible[] = [];
  const limited = (prospect: Prospect): void => {
    const each = electrodes.find(({ electrode }) => electrode === prospect.task.rig.electrode)!;
    if (each.currents[each.opened - 1] === prospect.task.rig.current) open(each);
  };
  const scouted = new Map<Prospect, Scouted>();
  const settled = new Set<Prospect>();
  const promiseBy =
    (objective: Objective) =>
    (each: Prospect): number => {
      const seen = scouted.get(each);
      if (settled.has(each) || seen?.hopeless === true) return Number.POSITIVE_INFINITY;
      return seen === undefined
        ? meritBy(each.forecast.merit, objective) * (1 - FORECAST_ERROR)
        : meritBy(seen.merit, objective);
    };
  /** Looks at a way in few shops, or, once it was looked at, solves it; what works is kept. */
  const tryOut = (next: Prospect): Feasible | undefined => {
    const seen = scouted.get(next);
    if (seen === undefined) {
      const scout = scoutOf(input, next, miss);
      scouted.set(next, scout);
      if (scout.hopeless && scout.limited) limited(next);
      return undefined;
    }
    settled.add(next);
    const outcome = settle(input, next, seen.logTarget, miss);
    if (outcome.feasible !== undefined) feasible.push(outcome.feasible);
    else if (outcome.limited) limited(next);
    return outcome.feasible;
  };
  let complete = true;
  const objectives: Objective[] = input.compared ? [job.plan.objective, 'time'] : [job.plan.objective];
  for (const objective of new Set(objectives)) {
    if (input.firstOnly && feasible.length > 0) break;
    let best = leastBy(feasible, (each) => meritBy(each.merit, objective));
    const promise = promiseBy(objective);
    for (;;) {
      const next = leastBy(prospects, promise);
      if (next === undefined) {
        // Before it is said that nothing was found, every current has been looked at.
        const closed = electrodes.filter((each) => each.opened < each.currents.length);
        if (best !== undefined || input.firstOnly || closed.length === 0) break;
        for (const each of closed) open(each);
        continue;
      }
      if (best !== undefined && promise(next) > meritBy(best.merit, objective)) break;
      if (work.left <= 0) {
        complete = false;
        break;
      }
      const found = tryOut(next);
      if (found === undefined) continue;
      best = leastBy([found, ...(best ? [best] : [])], (each) => meritBy(each.merit, objective));
      if (input.firstOnly) break;
    }
    if (best !== undefined && !input.firstOnly) {
      const nearer = nearBest(input, best, objective, miss);
      if (nearer !== best) feasible.push(nearer);
    }
  }
  if (feasible.length > 0 && input.compared && !input.firstOnly) {
    // The search ends where nothing can be better; what a person asks about is tried all the same, to compare with.
    const promise = promiseBy(job.plan.objective);
    const compare = (isAsked: (electrode: KitElectrode, way: Way) => boolean): void => {
      for (let tries = 0; tries < COMPARED_TRIES && work.left > 0; tries += 1) {
        const next = leastBy(prospects, (each) =>
          isAsked(each.task.rig.electrode, each.way) ? promise(each) : Number.POSITIVE_INFINITY,
        );
        if (next === undefined || tryOut(next) !== undefined) return;
      }
    };
    for (const { electrode, currents } of electrodes) {
      if (feasible.some(({ solved }) => solved.setup.rig.electrode === electrode)) continue;
      if (!prospects.some(({ task }) => task.rig.electrode === electrode) && currents[0] !== undefined) {
        const unbounded = { ...input, horizon: { time: far, cost: far, heat: far } };
        prospects.push(...prospectsOf(unbounded, law, electrode, currents[0], miss).list);
      }
      compare((own) => own === electrode);
    }
    const kinds = new Set(prospects.map(({ way }) => kindOfWay(way)));
    for (const kind of kinds) {
      if (!feasible.some(({ solved }) => kindOfWay(solved.setup.way) === kind))
        compare((_, way) => kindOfWay(way) === kind);
    }
  }
  return { feasible, misses: [...misses.values()].sort((a, b) => a.size - b.size), complete };
}

/** The element with the least value. */
function leastBy<T>(list: readonly T[], value: (each: T) => number): T | undefined {
  let best: T | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (const each of list) {
    const own = value(each);
    if (own < least) {
      least = own;
      best = each;
    }
  }
  return best;
}

/** The kit's electrodes that are in stock, or the locked one of them. */
function electrodesOf(job: Job, miss: MissNote): readonly KitElectrode[] {
  const locked = job.locks.electrode_diameter;
  return job.kit.electrodes.filter((electrode) => {
    if (locked !== undefined && Math.abs(electrode.diameter - locked) >= 1e-4) return false;
    if (electrode.count > 0) return true;
    miss({
      constraint: 'electrode_stock',
      title: 'Electrodes in stock',
      demand: 1,
      limit: 0,
      unit: 'electrodes',
      remedy: `electrodes of ${electrodeName(electrode.diameter)} in stock`,
      size: 1,
    });
    return false;
  });
}

/** What a few shops say of a way. */
interface Scouted {
  readonly hopeless: boolean;
  /** Whether a lower current might do. */
  readonly limited: boolean;
  readonly logTarget: number;
  readonly merit: Merit;
  /** Share of the shops in which a table says to stop and ask before the seam is cut [-]. */
  readonly notRun: number;
}

function solveTask(input: SearchInput, { task, way }: Prospect, guard: number): SolveTask {
  return {
    tables: { ...task, way },
    run: task.run,
    demand: depthDemand(input.job, guard),
    work: input.work,
  };
}

/** Whether a setting stands at the end of the travel, so that a lower current might do. */
function atQuickest(solved: Solved): boolean {
  const { rig, course } = solved.setup;
  return course.middle.some((energy) => energy <= rig.energyRange[0] + 1e-9);
}

/** Solves a way in few shops: whether it is worth solving in many, and what it takes. */
function scoutOf(input: SearchInput, prospect: Prospect, miss: MissNote): Scouted {
  const task = solveTask(input, prospect, 0);
  const solved = solve(task, prospect.forecast, input.scouts, HOPELESS);
  const hopeless = solved.shortfall > HOPELESS;
  if (hopeless) missChance(solved.chances, task.demand, solved.shortfall, miss);
  const effort = effortOf(solved.setup, solved.outcomes, input.scouts, input.job, task.run);
  const costs =
    input.afterCost === undefined || hopeless
      ? effort.cost
      : wholeCosts(
          effort,
          solved.outcomes,
          prospect.task.rig.pattern,
          input.job.seam.length,
          input.afterCost,
        );
  return {
    hopeless,
    limited: atQuickest(solved),
    logTarget: solved.logTarget,
    merit: meritOf(effort, costs),
    notRun: solved.outcomes.notRun.reduce((sum, each) => sum + each, 0) / input.scouts.count,
  };
}

/**
 * Solves a way and keeps it where it also holds in shops that had no part in solving. The wanted chances are raised a
 * little before solving, by what the fair count may be wrong, and a little more where that was not enough.
 */
function settle(
  input: SearchInput,
  asked: Prospect,
  logTarget: number,
  miss: MissNote,
): { readonly feasible?: Feasible; readonly limited?: boolean } {
  const first = triedAt(solveTask(input, asked, 0), logTarget, input.scouts);
  const allowed = energyAllowed(input, solveTask(input, asked, 0), asked.task.passWidth, first);
  const prospect = allowed === undefined ? asked : slowedTo(asked, allowed);
  const plain = solveTask(input, prospect, 0);
  let from = { ...prospect.forecast, logTarget };
  for (const guard of GUARDS) {
    const solved = solve(solveTask(input, prospect, guard), from, input.draws);
    from = { ...from, logTarget: solved.logTarget };
    const fair = triedAgain(plain, solved, input.fair);
    if (fair.shortfall > 0) {
      // What is short by much more than chance is not mended by asking for more.
      if (fair.shortfall > 3 * fair.chances.standardError || guard === GUARDS.at(-1)) {
        missChance(fair.chances, plain.demand, fair.shortfall, miss);
        return { limited: atQuickest(fair) };
      }
      continue;
    }
    const feasible = weigh(input, plain, prospect.task, fair, miss);
    return feasible === undefined ? { limited: true } : { feasible };
  }
  return {};
}

/** The same prospect on a carriage that goes no slower than the limits allow. */
function slowedTo({ task, way, forecast }: Prospect, energy: number): Prospect {
  const { rig } = task;
  return { way, forecast, task: { ...task, rig: { ...rig, energyRange: [rig.energyRange[0], energy] } } };
}

/** Looks in few shops at ways near the best, between the numbers that were tried, and solves the best of them. */
function nearBest(input: SearchInput, found: Feasible, objective: Objective, miss: MissNote): Feasible {
  const passLength = found.task.run.passLength;
  let best = prospectWith(found.forecast, found.solved.setup.way);
  let scout = scoutOf(input, best, miss);
  let least = meritBy(scout.merit, objective);
  const trail = [{ best, logTarget: scout.logTarget }];
  for (let round = 0; round < NEAR_ROUNDS; round += 1) {
    const before = best;
    for (const way of waysNear(before.way, input.job, passLength)) {
      if (input.work.left <= 0) return found;
      const prospect = prospectWith(found.forecast, way);
      const seen = scoutOf(input, prospect, miss);
      const merit = meritBy(seen.merit, objective);
      if (seen.hopeless || seen.notRun > scout.notRun + NOT_RUN_MORE || merit >= least * (1 - NEAR_GAIN))
        continue;
      [best, scout, least] = [prospect, seen, merit];
    }
    if (best === before) break;
    trail.push({ best, logTarget: scout.logTarget });
  }
  // What few shops promise may fail in all of them: then the step before it may still hold.
  for (const each of trail.reverse()) {
    const settled = settle(input, each.best, each.logTarget, miss).feasible;
    if (settled !== undefined)
      return leastBy([found, settled], ({ merit }) => meritBy(merit, objective)) ?? found;
  }
  return found;
}
