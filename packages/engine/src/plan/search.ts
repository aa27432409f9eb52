import type { Job, KitElectrode } from '../job/index.ts';
import { electrodeName } from '../removal/index.ts';
import { currentsOf } from './currents.ts';
import { meritBy } from './effort.ts';
import { type DepthLaw, lawOf } from './law.ts';
import {
  type Candidate,
  type Kin,
  type Line,
  newLine,
  nextOf,
  noteScouted,
  noteSolved,
  roomiestOf,
} from './line.ts';
import type { Miss, MissNote } from './miss.ts';
import { nearBest } from './near.ts';
import type { Pattern } from './pattern.ts';
import { BEYOND, type PatternWay, type ProspectQuestion, prospectsOf } from './prospect.ts';
import type { SearchInput, SearchTask } from './search-task.ts';
import { type Contender, confirm, type LimitedBy, scoutOf, settle } from './settle.ts';
import { kindOfWay, type Way } from './way.ts';
import type { WayFamily } from './ways.ts';
import type { Feasible } from './weigh.ts';

/** Everything found: what works, and where the rest failed. */
export interface SearchResult {
  /** The best by the objective, confirmed; undefined where nothing holds. */
  readonly best: Feasible | undefined;
  /** Everything else that holds in the shops that it was solved in. */
  readonly others: readonly Contender[];
  readonly misses: readonly Miss[];
  /** Whether everything worth trying was tried before the work ran out. */
  readonly complete: boolean;
}

/** Looks and solutions spent on one more set-up to compare with [-]. */
const COMPARED_TRIES = 6;
/** How much worse than the best of all the best of a kind of way may be for ways near it to be looked at [-]. */
const NEAR_FROM = 1.15;
const FAR = Number.POSITIVE_INFINITY;

/** Constraints that are chances: at their edge a search may fail where the roomiest way holds. */
const CHANCES: ReadonlySet<string> = new Set([
  'depth_reached',
  'not_too_deep',
  'ligament_kept',
  'width_in_band',
]);

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

/** Ways of an electrode that are looked at with one of its currents. */
interface Look {
  readonly each: ElectrodeCurrents;
  readonly index: number;
  readonly meantOn: ProspectQuestion['meantOn'];
}

/**
 * Searches electrodes, currents, tracks and ways for the set-up that is best by the objective, and for the quickest.
 *
 * Every way is forecast first, in closed form. The most promising is run in few shops, which corrects what is forecast of
 * its kin, then in many; the next follows until none is promised well enough to beat the best found; then ways near the
 * best are tried. What may be tried never depends on how much is allowed beyond it, so that more freedom only adds to it.
 * At a lower current the same groove only takes longer, so a way is looked at with a lower one where it wants to travel
 * quicker than the carriage does, and all of them are where a limit of the kit turned one away.
 */
export function search(within: SearchTask): SearchResult {
  const found = new Search(within).run();
  if (found.best !== undefined || within.firstOnly || within.work.left <= 0) return found;
  if (!CHANCES.has(found.misses[0]?.constraint ?? '')) return found;
  // What promises most may all fail at the edge of what can be done: before nothing is said to be found, those with the most
  // room are looked at alone, as they are where a refused job is eased.
  const { best } = new Search({ ...within, firstOnly: true }).run();
  return best === undefined ? found : { ...found, best };
}

class Search {
  readonly #input: SearchInput;
  readonly #law: DepthLaw;
  readonly #misses = new Map<string, Miss>();
  readonly #electrodes: readonly ElectrodeCurrents[];
  readonly #lines: Line[] = [];
  readonly #kin = new Map<WayFamily, Map<string, Kin>>();
  readonly #contenders: Contender[] = [];
  readonly #lookedBeyond = new Set<Objective>();
  /** Contenders near which nothing is left to look at. */
  readonly #near = new Set<Contender>();
  readonly #confirmed = new Map<Contender, Feasible>();
  #complete = true;

  constructor(within: SearchTask) {
    // Where one plan is enough, none is passed over for what another promises.
    this.#input = { ...within, horizon: { time: FAR, cost: FAR, heat: FAR, found: within.firstOnly } };
    this.#law = lawOf(within.belief);
    this.#electrodes = electrodesOf(within.job, this.#miss).map((electrode) => {
      const currents = currentsOf(electrode, within.job, this.#miss);
      return { electrode, currents, opened: 0, seen: currents.map(() => new Map()) };
    });
  }

  run(): SearchResult {
    const { job, compared, firstOnly } = this.#input;
    const { objective } = job.plan;
    // Where one plan is enough the next electrode is looked at only where the one before makes none.
    if (!firstOnly) this.#open(this.#electrodes);
    const best = firstOnly ? this.#first() : this.#best(objective);
    if (best !== undefined && !firstOnly) {
      if (objective !== 'time') this.#tryAll('time');
      if (compared) this.#compare();
    }
    const told = best && this.#confirmed.get(best);
    return {
      best: told,
      others: this.#contenders.filter((each) => each !== best),
      misses: [...this.#misses.values()].sort((a, b) => a.size - b.size),
      complete: this.#complete,
    };
  }

  readonly #miss: MissNote = (next) => {
    const known = this.#misses.get(next.constraint);
    if (known === undefined || next.size < known.size) this.#misses.set(next.constraint, next);
  };

  /** The best by an objective that also holds in shops that had no part in finding it. */
  #best(objective: Objective): Contender | undefined {
    const by = ({ merit }: Contender): number => meritBy(merit, objective);
    for (;;) {
      this.#tryAll(objective);
      const best = leastBy(this.#contenders, by);
      if (best === undefined) return this.#anyRoomy();
      if (this.#lookNear(objective, by)) continue;
      if (this.#isConfirmed(best)) return best;
    }
  }

  /** Looks near the best of each kind of way that is not much worse than the best of all; whether anything better was found. */
  #lookNear(objective: Objective, by: (contender: Contender) => number): boolean {
    const least = Math.min(...this.#contenders.map(by));
    const kindOf = ({ prospect }: Contender): string => kindOfWay(prospect.way);
    let found = false;
    for (const kind of new Set(this.#contenders.map(kindOf))) {
      const ofKind = this.#contenders.filter((each) => kindOf(each) === kind);
      const best = leastBy(ofKind, by)!;
      if (this.#near.has(best) || by(best) > NEAR_FROM * least) continue;
      this.#near.add(best);
      const near = nearBest(this.#input, best, objective, this.#miss);
      if (near === undefined) continue;
      this.#near.add(near);
      this.#contenders.push(near);
      found = true;
    }
    return found;
  }

  /** Holds a contender to fresh shops; one that fails there is none. */
  #isConfirmed(contender: Contender): boolean {
    if (this.#confirmed.has(contender)) return true;
    const feasible = confirm(this.#input, contender, this.#miss);
    if (feasible === undefined) this.#contenders.splice(this.#contenders.indexOf(contender), 1);
    else this.#confirmed.set(contender, feasible);
    return feasible !== undefined;
  }

  /** The first set-up that holds, where it is enough to know that there is one: the ways with the most room come first. */
  #first(): Contender | undefined {
    for (;;) {
      const next = leastBy(this.#lines.map(roomiestOf), promiseOf);
      if (this.#isSpent()) return undefined;
      if (next === undefined) {
        const closed = this.#electrodes.find((each) => each.opened === 0 && each.currents.length > 0);
        if (closed === undefined) return undefined;
        this.#open([closed]);
        continue;
      }
      const found = this.#tryOut(next);
      if (found !== undefined && this.#isConfirmed(found)) return found;
    }
  }

  /** Where the ways that promise most all fail, those with the most room may still hold. */
  #anyRoomy(): Contender | undefined {
    for (const line of this.#lines) line.failed = 0;
    return this.#first();
  }

  #isSpent(): boolean {
    if (this.#input.work.left > 0) return false;
    this.#complete = false;
    return true;
  }

  /** Tries ways until none is promised to be better than the best found. */
  #tryAll(objective: Objective): void {
    for (;;) {
      const best = Math.min(FAR, ...this.#contenders.map(({ merit }) => meritBy(merit, objective)));
      let next = this.#next(objective);
      if (next === undefined || next.promise > best) {
        this.#lookBeyond(objective, best);
        next = this.#next(objective);
      }
      if (next === undefined) {
        // Before it is said that nothing was found, every current has been looked at.
        const closed = this.#electrodes.filter((each) => each.opened < each.currents.length);
        if (this.#contenders.length > 0 || closed.length === 0) return;
        this.#open(closed);
        continue;
      }
      if (next.promise > best || this.#isSpent()) return;
      this.#tryOut(next);
    }
  }

  #next(objective: Objective): Candidate | undefined {
    return leastBy(
      this.#lines.map((line) => nextOf(line, objective)),
      promiseOf,
    );
  }

  /** Looks at a way in few shops, or, once it was looked at, solves it; what works is kept. */
  #tryOut({ line, prospect }: Candidate): Contender | undefined {
    const seen = line.scouted.get(prospect);
    if (seen === undefined) {
      const sibling = line.kin.lines.find((each) => each.scouted.has(prospect));
      const from = sibling?.scouted.get(prospect)?.logTarget;
      const scout = scoutOf(this.#input, prospect, this.#miss, from);
      noteScouted(line, prospect, scout);
      if (scout.hopeless && scout.atQuickest) this.#lowered(line, prospect.way, 'travel');
      return undefined;
    }
    const { contender, room, limitedBy } = settle(this.#input, prospect, seen.logTarget, this.#miss);
    noteSolved(line, prospect, room, contender?.merit);
    if (contender !== undefined) this.#contenders.push(contender);
    else if (limitedBy !== undefined) this.#lowered(line, prospect.way, limitedBy);
    return contender;
  }

  /** What might do at a lower current: this way, or every way where a limit of the kit turned it away. */
  #lowered({ task: { rig } }: Line, own: Way, limitedBy: LimitedBy): void {
    const each = this.#electrodes.find(({ electrode }) => electrode === rig.electrode)!;
    const index = each.currents.indexOf(rig.current);
    if (limitedBy === 'kit' && index === each.opened - 1) this.#open([each]);
    if (limitedBy === 'travel') {
      const key = patternKey(rig.pattern);
      const meantOn: Look['meantOn'] = (pattern) => (way) => way === own && patternKey(pattern) === key;
      if (index + 1 < each.currents.length) this.#look([{ each, index: index + 1, meantOn }]);
    }
  }

  /** Looks at every way with the next current of each of the electrodes. */
  #open(electrodes: readonly ElectrodeCurrents[]): void {
    const next = electrodes.filter((each) => each.opened < each.currents.length);
    this.#look(next.map((each) => ({ each, index: each.opened++, meantOn: everyWay })));
  }

  /** Looks at ways with a current, and at those of them that are too quick for the carriage with the next ones. */
  #look(asked: readonly Look[]): void {
    for (let looks = asked; looks.length > 0; ) {
      const tooQuick = this.#add(this.#input, looks);
      looks = looks.flatMap(({ each, index }, nth) => {
        const left = new Map<string, Set<Way>>();
        for (const { pattern, way } of tooQuick[nth]!) waysOf(left, pattern).add(way);
        if (left.size === 0 || index + 1 === each.currents.length) return [];
        const meantOn: Look['meantOn'] = (pattern) => {
          const ways = waysOf(left, pattern);
          return (way) => ways.has(way);
        };
        return [{ each, index: index + 1, meantOn }];
      });
    }
  }

  /** Adds lines of the ways that are meant and were not looked at; hands back those that are too quick for the carriage. */
  #add(input: SearchInput, looks: readonly Look[]): (readonly PatternWay[])[] {
    const questions = looks.map(({ each: { electrode, currents, seen }, index, meantOn }) => ({
      electrode,
      current: currents[index]!,
      meantOn: (pattern: Pattern) => {
        const isMeant = meantOn(pattern);
        const before = waysOf(seen[index]!, pattern);
        return (way: Way) => isMeant(way) && !before.has(way);
      },
    }));
    const { list, looked } = prospectsOf(input, this.#law, questions, this.#miss);
    looked.forEach(({ ways }, nth) => {
      const { each, index } = looks[nth]!;
      for (const { pattern, way } of ways) waysOf(each.seen[index]!, pattern).add(way);
    });
    for (const { task, family, prospects } of list) {
      const ofFamily = this.#kin.get(family) ?? new Map<string, Kin>();
      this.#kin.set(family, ofFamily);
      const { electrode, pattern } = task.rig;
      const key = `${electrode.diameter} ${electrode.kind} ${patternKey(pattern)}`;
      const kin = ofFamily.get(key) ?? {
        roomOff: undefined,
        scoutOff: undefined,
        solveOff: undefined,
        lines: [],
      };
      ofFamily.set(key, kin);
      this.#lines.push(newLine(task, prospects, kin));
    }
    return looked.map(({ tooQuick }) => tooQuick);
  }

  /** Looks at what was passed over for a forecast that nothing found keeps, as far as it may be better than what was found. */
  #lookBeyond(objective: Objective, found: number): void {
    const { horizon } = this.#input;
    if (this.#lookedBeyond.has(objective)) return;
    this.#lookedBeyond.add(objective);
    if (found <= BEYOND * horizon[objective]) return;
    Object.assign(horizon, { time: 0, cost: 0, heat: 0, [objective]: found / BEYOND, found: true });
    const opened = this.#electrodes.flatMap((each) =>
      each.currents.slice(0, each.opened).map((_, index) => ({ each, index, meantOn: everyWay })),
    );
    this.#look(opened);
  }

  /** The search ends where nothing can be better; what a person asks about is tried all the same, to compare with. */
  #compare(): void {
    const { objective } = this.#input.job.plan;
    const tryOne = (isAsked: (line: Line) => boolean): void => {
      const asked = this.#lines.filter(isAsked);
      for (let tries = 0; tries < COMPARED_TRIES && this.#input.work.left > 0; tries += 1) {
        const next = leastBy(
          asked.map((line) => nextOf(line, objective)),
          promiseOf,
        );
        if (next === undefined || this.#tryOut(next) !== undefined) return;
      }
    };
    const isFound = (asked: (contender: Contender) => boolean): boolean => this.#contenders.some(asked);
    for (const each of this.#electrodes) {
      const { electrode, currents } = each;
      if (isFound(({ prospect }) => prospect.task.rig.electrode === electrode)) continue;
      const own = ({ task }: Line): boolean => task.rig.electrode === electrode;
      if (!this.#lines.some(own) && currents[0] !== undefined) {
        const unbounded = { ...this.#input, horizon: { time: FAR, cost: FAR, heat: FAR, found: true } };
        this.#add(unbounded, [{ each, index: 0, meantOn: everyWay }]);
      }
      tryOne(own);
    }
    const kindOf = ({ prospects }: Line): string => kindOfWay(prospects[0]!.way);
    for (const kind of new Set(this.#lines.map(kindOf))) {
      if (!isFound(({ prospect }) => kindOfWay(prospect.way) === kind))
        tryOne((line) => kindOf(line) === kind);
    }
  }
}

const everyWay: Look['meantOn'] = () => () => true;

function promiseOf(candidate: Candidate | undefined): number {
  return candidate?.promise ?? FAR;
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
