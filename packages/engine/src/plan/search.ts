import type { Job, KitElectrode } from '../job/index.ts';
import { electrodeName } from '../removal/index.ts';
import { currentsOf } from './currents.ts';
import { depthDemand } from './demand.ts';
import { effortOf, type Merit, meritBy, meritOf } from './effort.ts';
import { lawOf } from './law.ts';
import { type Miss, type MissNote, missChance } from './miss.ts';
import type { Pattern } from './pattern.ts';
import { BEYOND, type Prospect, type ProspectQuestion, prospectsOf, prospectWith } from './prospect.ts';
import type { SearchInput, SearchTask } from './search-task.ts';
import type { ShopDraws } from './shop-draws.ts';
import { type Solved, type SolveTask, solve, triedAgain, triedAt } from './solve.ts';
import { kindOfWay, type Way } from './way.ts';
import { waysNear } from './ways.ts';
import { energyAllowed, type Feasible, weigh } from './weigh.ts';
import { costsWhereRun, wholeCosts } from './whole-cost.ts';

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
/** Part of the spread by which the target of a way in few shops may reach deeper than it must [-]: they tell it no better. */
const SCOUT_TOLERANCE = 0.1;
/** How much better than forecast a way may come out [-]: what is forecast worse than that is not tried. */
const FORECAST_ERROR = 0.015;
/** How much better a way may come out in many shops than in few, and in all than in many [-]. */
const SCOUT_ERROR = 0.01;
const SOLVE_ERROR = 0.003;
/** Gain from which on a nearby way takes the place of the one found [-]. */
const NEAR_GAIN = 1e-3;
/** Looks and solutions spent on one more set-up to compare with [-]. */
const COMPARED_TRIES = 6;
/** How much better than its forecast says a nearby way may be against the one it is near to [-]. */
const NEAR_ERROR = 0.004;
/** Rounds of looking at nearby ways [-]. */
const NEAR_ROUNDS = 6;

type Objective = Job['plan']['objective'];

/** An electrode with the currents it may be run at, the greatest first, and what has been looked at. */
interface ElectrodeCurrents {
  readonly electrode: KitElectrode;
  readonly currents: readonly number[];
  /** Currents that every way was looked at with [-]. */
  opened: number;
  /** Ways looked at with each current, by pattern and way. */
  readonly seen: readonly Map<string, Set<Way>>[];
}

/**
 * Searches electrodes, currents, tracks and ways for the set-up that is best by the objective, and for the quickest.
 *
 * Every way is forecast first, in closed form. The most promising is solved in shops, then the next, until none is
 * forecast well enough to beat the best found; then ways near the best are tried. At a lower current the same groove
 * only takes longer, so a way is looked at with a lower one where it wants to travel quicker than the carriage does, and
 * all of them are where a limit of the kit turned one away.
 */
export function search(within: SearchTask): SearchResult {
  const far = Number.POSITIVE_INFINITY;
  const input: SearchInput = { ...within, horizon: { time: far, cost: far, heat: far, found: false } };
  const { job, work } = input;
  const misses = new Map<string, Miss>();
  const miss = (next: Miss): void => {
    const known = misses.get(next.constraint);
    if (known === undefined || next.size < known.size) misses.set(next.constraint, next);
  };
  const law = lawOf(input.belief);
  const electrodes: ElectrodeCurrents[] = electrodesOf(job, miss).map((electrode) => {
    const currents = currentsOf(electrode, job, miss);
    return { electrode, currents, opened: 0, seen: currents.map(() => new Map()) };
  });
  const prospects: Prospect[] = [];
  /** Looks at ways with a current, and at those of them that are too quick for the carriage with the next ones. */
  const look = (each: ElectrodeCurrents, from: number, isMeant: ProspectQuestion['isMeant']): void => {
    let wanted = isMeant;
    for (let index = from; index < each.currents.length; index += 1) {
      const seen = each.seen[index]!;
      const fresh: ProspectQuestion['isMeant'] = (pattern, way) => {
        if (!wanted(pattern, way)) return false;
        const ofPattern = waysOf(seen, pattern);
        if (ofPattern.has(way)) return false;
        ofPattern.add(way);
        return true;
      };
      const { electrode, currents } = each;
      const question = { electrode, current: currents[index]!, isMeant: fresh };
      const { list, tooQuick } = prospectsOf(input, law, question, miss);
      prospects.push(...list);
      if (tooQuick.length === 0) return;
      const left = new Map<string, Set<Way>>();
      for (const { pattern, way } of tooQuick) waysOf(left, pattern).add(way);
      wanted = (pattern, way) => waysOf(left, pattern).has(way);
    }
  };
  /** Looks at every way with the next current. */
  const open = (each: ElectrodeCurrents): void => {
    if (each.opened >= each.currents.length) return;
    each.opened += 1;
    look(each, each.opened - 1, () => true);
  };
  for (const each of electrodes) open(each);
  const feasible: Feasible[] = [];
  /** What might do at a lower current: this way, or every way where a limit of the kit turned it away. */
  const lowered = ({ task: { rig }, way: own }: Prospect, limitedBy: LimitedBy): void => {
    const each = electrodes.find(({ electrode }) => electrode === rig.electrode)!;
    const index = each.currents.indexOf(rig.current);
    if (limitedBy === 'kit' && index === each.opened - 1) open(each);
    if (limitedBy === 'travel') {
      const key = patternKey(rig.pattern);
      look(each, index + 1, (pattern, way) => way === own && patternKey(pattern) === key);
    }
  };
  const scouted = new Map<Prospect, Scouted>();
  /** What a way took in few shops with another current of its electrode: depths hardly depend on the current. */
  const siblings = new Map<Way, Map<string, { readonly forecast: Merit; readonly seen: Scouted }>>();
  const settled = new Set<Prospect>();
  const promiseBy =
    (objective: Objective) =>
    (each: Prospect): number => {
      const seen = scouted.get(each);
      if (settled.has(each) || seen?.hopeless === true) return Number.POSITIVE_INFINITY;
      // Where one plan is enough, the one with the most room is the likeliest to be one.
      if (input.firstOnly) return (seen === undefined ? 10 : 0) - each.forecast.slack;
      if (seen !== undefined) return meritBy(seen.merit, objective) * (1 - SCOUT_ERROR);
      const forecast = meritBy(each.forecast.merit, objective) * (1 - FORECAST_ERROR);
      const sibling = siblings.get(each.way)?.get(siblingKey(each));
      return sibling === undefined
        ? forecast
        : (forecast * meritBy(sibling.seen.merit, objective)) / meritBy(sibling.forecast, objective);
    };
  /** Looks at a way in few shops, or, once it was looked at, solves it; what works is kept. */
  const tryOut = (next: Prospect, isWorse?: IsWorse): Feasible | undefined => {
    const seen = scouted.get(next);
    if (seen === undefined) {
      const ofWay = siblings.get(next.way) ?? new Map();
      const key = siblingKey(next);
      const scout = scoutOf(input, next, miss, ofWay.get(key)?.seen.logTarget);
      scouted.set(next, scout);
      if (!scout.hopeless)
        siblings.set(next.way, ofWay.set(key, { forecast: next.forecast.merit, seen: scout }));
      if (scout.hopeless && scout.atQuickest) lowered(next, 'travel');
      return undefined;
    }
    settled.add(next);
    const outcome = settle(input, next, seen.logTarget, miss, isWorse);
    if (outcome.feasible !== undefined) feasible.push(outcome.feasible);
    else if (outcome.limitedBy !== undefined) lowered(next, outcome.limitedBy);
    return outcome.feasible;
  };
  /** Looks at what was passed over for a forecast that nothing found keeps, as far as it may be better than what was found. */
  const lookedBeyond = new Set<Objective>();
  const lookBeyond = (objective: Objective): void => {
    const { horizon } = input;
    if (lookedBeyond.has(objective)) return;
    lookedBeyond.add(objective);
    const found = Math.min(far, ...feasible.map(({ merit }) => meritBy(merit, objective)));
    if (found <= BEYOND * horizon[objective]) return;
    Object.assign(horizon, { time: 0, cost: 0, heat: 0, [objective]: found / BEYOND, found: true });
    for (const each of electrodes)
      for (let index = 0; index < each.opened; index += 1) look(each, index, () => true);
  };
  let complete = true;
  const objectives: Objective[] = input.compared ? [job.plan.objective, 'time'] : [job.plan.objective];
  for (const objective of new Set(objectives)) {
    if (input.firstOnly && feasible.length > 0) break;
    let best = leastBy(feasible, (each) => meritBy(each.merit, objective));
    const promise = promiseBy(objective);
    for (;;) {
      let next = leastBy(prospects, promise);
      if (next === undefined || (best !== undefined && promise(next) > meritBy(best.merit, objective))) {
        lookBeyond(objective);
        next = leastBy(prospects, promise);
      }
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
      const than = best === undefined ? far : meritBy(best.merit, objective);
      const found = tryOut(next, (merit) => meritBy(merit, objective) * (1 - SOLVE_ERROR) > than);
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
        const unbounded = { ...input, horizon: { time: far, cost: far, heat: far, found: true } };
        const question = { electrode, current: currents[0], isMeant: () => true };
        prospects.push(...prospectsOf(unbounded, law, question, miss).list);
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

/** Whether what a way takes in the shops that it was solved in is too much for it to be wanted. */
type IsWorse = (merit: Merit) => boolean;

/** What a lower current might mend. */
type LimitedBy = 'travel' | 'kit';

function siblingKey({ task: { rig } }: Prospect): string {
  return `${rig.electrode.diameter} ${patternKey(rig.pattern)}`;
}

function patternKey({ tracks, spacing }: Pattern): string {
  return `${tracks}/${spacing}`;
}

/** The ways of a pattern, in a list kept by pattern. */
function waysOf(lists: Map<string, Set<Way>>, pattern: Pattern): Set<Way> {
  const key = patternKey(pattern);
  const known = lists.get(key);
  if (known !== undefined) return known;
  const fresh = new Set<Way>();
  lists.set(key, fresh);
  return fresh;
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
  /** Whether a setting stands at the end of the travel, so that a lower current might do. */
  readonly atQuickest: boolean;
  readonly logTarget: number;
  readonly merit: Merit;
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
function scoutOf(
  input: SearchInput,
  prospect: Prospect,
  miss: MissNote,
  logTarget = prospect.forecast.logTarget,
): Scouted {
  const task = solveTask(input, prospect, 0);
  const solved = solve(task, { ...prospect.forecast, logTarget }, input.scouts, HOPELESS, SCOUT_TOLERANCE);
  const hopeless = solved.shortfall > HOPELESS;
  if (hopeless) missChance(solved.chances, task.demand, solved.shortfall, miss);
  const merit = hopeless ? prospect.forecast.merit : meritIn(input, prospect, solved, input.scouts);
  return { hopeless, atQuickest: atQuickest(solved), logTarget: solved.logTarget, merit };
}

/** What a way takes on the mean over the shops that it was run in. */
function meritIn(
  { job, afterCost }: SearchInput,
  { task }: Prospect,
  { setup, outcomes }: Solved,
  shops: ShopDraws,
): Merit {
  const effort = effortOf(setup, outcomes, shops, job, task.run);
  const costs =
    afterCost === undefined
      ? effort.cost
      : wholeCosts(effort, outcomes, task.rig.pattern, job.seam.length, afterCost);
  return meritOf(effort, costsWhereRun(costs, outcomes.notRun), outcomes.notRun);
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
  isWorse: IsWorse = () => false,
): { readonly feasible?: Feasible; readonly limitedBy?: LimitedBy } {
  const first = triedAt(solveTask(input, asked, 0), logTarget, input.scouts);
  const allowed = energyAllowed(input, solveTask(input, asked, 0), asked.task.passWidth, first, miss);
  if (allowed === undefined) return { limitedBy: 'kit' };
  const prospect = allowed === asked.task.rig.energyRange[1] ? asked : slowedTo(asked, allowed);
  const plain = solveTask(input, prospect, 0);
  let from = { ...prospect.forecast, logTarget };
  for (const guard of GUARDS) {
    const solved = solve(solveTask(input, prospect, guard), from, input.draws, HOPELESS / 2);
    from = { ...from, logTarget: solved.logTarget };
    // What many shops say is far from enough is not counted in more of them.
    if (solved.shortfall > HOPELESS / 2) {
      missChance(solved.chances, plain.demand, solved.shortfall, miss);
      return atQuickest(solved) ? { limitedBy: 'travel' } : {};
    }
    if (guard === GUARDS[0] && isWorse(meritIn(input, prospect, solved, input.draws))) return {};
    const fair = triedAgain(plain, solved, input.fair);
    if (fair.shortfall > 0) {
      // What is short by much more than chance is not mended by asking for more.
      if (fair.shortfall > 3 * fair.chances.standardError || guard === GUARDS.at(-1)) {
        missChance(fair.chances, plain.demand, fair.shortfall, miss);
        return atQuickest(fair) ? { limitedBy: 'travel' } : {};
      }
      continue;
    }
    const feasible = weigh(input, plain, prospect.task, fair, miss);
    return feasible === undefined ? { limitedBy: 'kit' } : { feasible };
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
  const forecastBy = ({ forecast }: Prospect): number => meritBy(forecast.merit, objective);
  for (let round = 0; round < NEAR_ROUNDS; round += 1) {
    const before = best;
    for (const way of waysNear(before.way, input.job, passLength)) {
      if (input.work.left <= 0) return found;
      const prospect = prospectWith(found.forecast, way);
      // What is forecast clearly worse than the best so far is not looked at in shops.
      if (forecastBy(prospect) > forecastBy(best) * (1 + NEAR_ERROR)) continue;
      const seen = scoutOf(input, prospect, miss);
      const merit = meritBy(seen.merit, objective);
      if (seen.hopeless || merit >= least * (1 - NEAR_GAIN)) continue;
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
