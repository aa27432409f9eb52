import type { ElectrodeInUse } from './electrode-in-use.ts';
import { CHANGE_FROM, CHANGE_TIME } from './event-thresholds.ts';
import type { EventFacts } from './event-words.ts';
import type { RunExpectation } from './expectation.ts';
import type { Mark, Stretch } from './lasting.ts';
import type { LogLevels } from './levels.ts';
import type { EventKind } from './outcome.ts';
import type { Row } from './row.ts';
import { SeamCourse } from './seam-course.ts';
import { SteadyBlocks } from './steady-blocks.ts';

/** An event of a pass whose place is not settled before the pass is over. */
export interface OpenEvent extends Stretch {
  readonly kind: EventKind;
  readonly lastRow: number;
  readonly facts: EventFacts;
}

/** Least arc time of a block whose level is looked at [s], and its least rows [-]. */
const BLOCK_TIME = 0.5;
const BLOCK_ROWS = 5;

/** Events of one kind kept at most: a log full of them would fill the memory [-]. */
export const EVENTS_MOST = 2000;

/** What is gathered while a pass is run. */
export class OpenPass {
  readonly start: Mark;
  /** Way of the log at which the pass began [m]. */
  readonly origin: number;
  /** When the arc burned last: the end of the pass unless it burns again. */
  lost: Mark;
  /** When the arc was struck last, after a break long enough to matter. */
  struck: Mark;
  /** When the arc began to burn last, after any break. */
  burning: Mark;
  arcTime = 0;
  outTime = 0;
  brief = 0;
  steadyTime = 0;
  voltTime = 0;
  ampTime = 0;
  ampSpan = 0;
  energy = 0;
  charge = 0;
  fed = 0;
  gouged = 0;
  readonly course = new SeamCourse();
  readonly volts: SteadyBlocks;
  readonly amps: SteadyBlocks;
  readonly events: OpenEvent[] = [];
  private readonly counts = new Map<EventKind, number>();

  constructor(start: Mark, origin: number, levels: LogLevels) {
    this.start = start;
    this.origin = origin;
    this.lost = start;
    this.struck = start;
    this.burning = start;
    const length = Math.max(BLOCK_TIME, BLOCK_ROWS * levels.interval);
    this.volts = new SteadyBlocks('volts', length, levels.interval);
    this.amps = new SteadyBlocks('amps', length, levels.interval);
  }

  /** Adds energy and charge of the interval between two rows, by the trapezoid rule. */
  integrate(before: Row, now: Row, electrode: ElectrodeInUse): void {
    const { held } = now;
    const work = 0.5 * (before.volts * before.amps + now.volts * now.amps) * held;
    if (!Number.isNaN(work)) this.energy += work;
    const charge = 0.5 * (before.amps + now.amps) * held;
    if (Number.isNaN(charge)) return;
    this.charge += charge;
    electrode.addCharge(charge);
  }

  /** Adds to the means of an interval through which the arc burned. */
  average(before: Row, now: Row): void {
    const { held } = now;
    const volts = 0.5 * (now.volts + before.volts) * held;
    if (!Number.isNaN(volts)) {
      this.voltTime += volts;
      this.steadyTime += held;
    }
    const amps = 0.5 * (now.amps + before.amps) * held;
    if (!Number.isNaN(amps)) {
      this.ampTime += amps;
      this.ampSpan += held;
    }
  }

  add(
    kind: EventKind,
    { from, to }: Stretch,
    lastRow: number,
    facts: Omit<EventFacts, 'duration'> = {},
  ): void {
    const count = (this.counts.get(kind) ?? 0) + 1;
    this.counts.set(kind, count);
    if (count > EVENTS_MOST) return;
    const duration = to.time - from.time;
    this.events.push({ kind, from, to, lastRow, facts: { duration, ...facts } });
  }

  /** Events of a kind that were not kept. */
  notListed(): [EventKind, number][] {
    return [...this.counts].filter(([, n]) => n > EVENTS_MOST).map(([kind, n]) => [kind, n - EVENTS_MOST]);
  }
}

/** Whether a break of the arc is long enough to put in an electrode, and the last one may be burnt. */
export function isElectrodeChange(
  pass: OpenPass,
  pause: number,
  expected: RunExpectation | undefined,
  burnt: number | undefined,
): boolean {
  if (pause < CHANGE_TIME) return false;
  if (expected === undefined || burnt === undefined) return true;
  return burnt >= CHANGE_FROM * expected.electrode || pass.arcTime === 0;
}
