import type { Job } from '../job/index.ts';
import { type Merit, meritBy } from './effort.ts';
import type { Prospect, ProspectTask } from './prospect.ts';

type Objective = Job['plan']['objective'];

/** What few shops say of a way. */
export interface Scouted {
  readonly hopeless: boolean;
  /** Whether a setting stands at the end of the travel, so that a lower current might do. */
  readonly atQuickest: boolean;
  readonly logTarget: number;
  readonly merit: Merit;
  /** Room left above, in ln depth, as the shops have it [-]. */
  readonly room: number;
}

/**
 * What shops have said of the ways of one family with one electrode on the same tracks: depths hardly depend on the current,
 * so that what was seen with one holds nearly for the others.
 */
export interface Kin {
  /** How much more room there was than forecast, in ln depth; undefined before the first look [-]. */
  roomOff: number | undefined;
  /** Few shops over forecast, and many shops over few, by objective [-]. */
  scoutOff: Merit | undefined;
  solveOff: Merit | undefined;
  readonly lines: Line[];
}

/** The ways of one family on one rig that may be best, and what was seen of them. */
export interface Line {
  readonly task: ProspectTask;
  readonly prospects: readonly Prospect[];
  readonly kin: Kin;
  readonly scouted: Map<Prospect, Scouted>;
  /** Ways with which the search is done. */
  readonly done: Set<Prospect>;
  /** Ways found hopeless one after the other [-]. */
  failed: number;
  /** The next way to try by each objective, until something new is seen of its kin. */
  readonly next: Map<Objective, Candidate | undefined>;
}

/** A way to try next. */
export interface Candidate {
  readonly line: Line;
  readonly prospect: Prospect;
  /** The least that it may take, by the objective it was asked for [-]. */
  readonly promise: number;
}

/** Room, in ln depth, that a way must be forecast to have: before anything was seen of its kin, and once that corrects it [-]. */
const ROOM = { unseen: -0.04, seen: -0.03 } as const;
/** Ways of a line that are found hopeless one after the other before it is given up [-]. */
const FAILED_MOST = 8;
/** The same where one plan is enough, and the ways with the most room come first [-]. */
const FAILED_FIRST = 3;
/** How much better a way may come out than forecast: as it stands, corrected by its kin, and by its own line [-]. */
const FORECAST_ERROR = { plain: 0.015, kin: 0.008, line: 0.004 } as const;
/** How much better it may come out in many shops than in few: as it stands, and corrected by its kin [-]. */
const SCOUT_ERROR = { plain: 0.01, kin: 0.002 } as const;

/** A line of which nothing was seen yet. */
export function newLine(task: ProspectTask, prospects: readonly Prospect[], kin: Kin): Line {
  const line: Line = {
    task,
    prospects,
    kin,
    scouted: new Map(),
    done: new Set(),
    failed: 0,
    next: new Map(),
  };
  kin.lines.push(line);
  return line;
}

/** The way of a line that promises the least, of those forecast to have the room that they need; undefined: none is left. */
export function nextOf(line: Line, objective: Objective): Candidate | undefined {
  if (line.next.has(objective)) return line.next.get(objective);
  let best: Candidate | undefined;
  if (line.failed < FAILED_MOST) {
    for (const prospect of line.prospects) {
      if (line.done.has(prospect)) continue;
      const promise = promiseOf(line, prospect, objective);
      if (promise !== undefined && (best === undefined || promise < best.promise))
        best = { line, prospect, promise };
    }
  }
  line.next.set(objective, best);
  return best;
}

/** The way of a line with the most room, for where one plan is enough; the promise falls as the room grows. */
export function roomiestOf(line: Line): Candidate | undefined {
  if (line.failed >= FAILED_FIRST) return undefined;
  let best: Candidate | undefined;
  for (const prospect of line.prospects) {
    if (line.done.has(prospect)) continue;
    const seen = line.scouted.get(prospect);
    const room = seen?.room ?? prospect.forecast.slack + (line.kin.roomOff ?? 0);
    if (seen === undefined && room < leastRoom(line)) continue;
    const promise = (seen === undefined ? 10 : 0) - room;
    if (best === undefined || promise < best.promise) best = { line, prospect, promise };
  }
  return best;
}

function leastRoom({ kin }: Line): number {
  return kin.roomOff === undefined ? ROOM.unseen : ROOM.seen;
}

function promiseOf(line: Line, prospect: Prospect, objective: Objective): number | undefined {
  const { kin, scouted } = line;
  const seen = scouted.get(prospect);
  if (seen !== undefined) {
    const merit = meritBy(seen.merit, objective);
    return kin.solveOff === undefined
      ? merit * (1 - SCOUT_ERROR.plain)
      : merit * kin.solveOff[objective] * (1 - SCOUT_ERROR.kin);
  }
  const { slack, merit } = prospect.forecast;
  if (slack + (kin.roomOff ?? 0) < leastRoom(line)) return undefined;
  const forecast = meritBy(merit, objective);
  if (kin.scoutOff === undefined) return forecast * (1 - FORECAST_ERROR.plain);
  const error = scouted.size > 0 ? FORECAST_ERROR.line : FORECAST_ERROR.kin;
  return forecast * kin.scoutOff[objective] * (1 - error);
}

/** Keeps what few shops said of a way, and corrects by it what is forecast of its kin. */
export function noteScouted(line: Line, prospect: Prospect, seen: Scouted): void {
  const { kin } = line;
  line.scouted.set(prospect, seen);
  if (seen.hopeless) {
    line.done.add(prospect);
    line.failed += 1;
  } else {
    line.failed = 0;
    kin.scoutOff = ratio(seen.merit, prospect.forecast.merit);
  }
  if (Number.isFinite(seen.room)) kin.roomOff = seen.room - prospect.forecast.slack;
  forget(kin);
}

/** Keeps what many shops said of a way: how much room, and what it takes where it holds. */
export function noteSolved(line: Line, prospect: Prospect, room: number, merit?: Merit): void {
  const { kin, scouted } = line;
  line.done.add(prospect);
  if (Number.isFinite(room)) kin.roomOff = room - prospect.forecast.slack;
  if (merit === undefined) line.failed += 1;
  else {
    line.failed = 0;
    kin.solveOff = ratio(merit, scouted.get(prospect)!.merit);
  }
  forget(kin);
}

function forget({ lines }: Kin): void {
  for (const { next } of lines) next.clear();
}

function ratio(one: Merit, other: Merit): Merit {
  const of = (key: keyof Merit): number => (other[key] > 0 ? one[key] / other[key] : 1);
  return { time: of('time'), cost: of('cost'), heat: of('heat') };
}
