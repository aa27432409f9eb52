import type { Sentence } from '../quantity/index.ts';
import type { Channel } from './log-batch.ts';
import type { WayBins } from './seam-course.ts';

/** What can happen in a run. */
export type EventKind =
  | 'touch_down'
  | 'arc_out'
  | 'short'
  | 'restart_short'
  | 'electrode_change'
  | 'voltage_drift'
  | 'current_drift'
  | 'stall'
  | 'slip'
  | 'low_air'
  | 'feed_stop'
  | 'gap'
  | 'clock_step'
  | 'stale_reading'
  | 'spike';

/** Something that happened, in time and on the seam; SI. */
export interface RunEvent {
  readonly kind: EventKind;
  /** Number of the pass it lies in; undefined between passes [-]. */
  readonly pass: number | undefined;
  /** Elapsed time at which it began [s]. */
  readonly start: number;
  /** Elapsed time at which it was over [s]. */
  readonly end: number;
  /** Place from the start of the seam where it began; undefined where nothing tells it [m]. */
  readonly from: number | undefined;
  /** Place where it was over [m]. */
  readonly to: number | undefined;
  /** Standard deviation of both places [m]. */
  readonly placeSd: number | undefined;
  /** First data row that shows it, from 1 [-]. */
  readonly firstRow: number;
  /** Last data row that shows it [-]. */
  readonly lastRow: number;
  /** Whether the reading rose over what it is held against; undefined where an event has none. */
  readonly rose: boolean | undefined;
  /** In words, without place and time. */
  readonly says: Sentence;
}

/** Something that is otherwise than it ought to be while a run is under way; SI. */
export interface Deviation {
  readonly kind: EventKind;
  /** Elapsed time at which it began [s]. */
  readonly since: number;
  /** How long it has lasted [s]. */
  readonly duration: number;
  /** Place from the start of the seam where it began, before the pass is settled; undefined where nothing tells it [m]. */
  readonly at: number | undefined;
  /** In words, without place and time. */
  readonly says: Sentence;
}

/** From what the places of a run were worked out. */
export type WaySource = 'position' | 'travel' | 'arc_time' | 'none';

/** Sums over time with the arc burning; undefined where the log lacks a reading for it; SI. */
export interface RunTotals {
  /** Time with the arc burning [s]. */
  readonly arcTime: number;
  /** Time of the arc-outs, electrode changes left out [s]. */
  readonly arcOutTime: number;
  /** Mean voltage of the arc [V]. */
  readonly voltage: number | undefined;
  /** Mean current [A]. */
  readonly current: number | undefined;
  /** Energy of the arc, by the trapezoid rule [J]. */
  readonly energy: number | undefined;
  /** Charge through the arc [A s]. */
  readonly charge: number | undefined;
  /** Electrode fed while the arc burned [m]. */
  readonly fed: number | undefined;
  /** Way between first and last arc of the passes [m]. */
  readonly travelled: number | undefined;
  /** Part of it with the arc burning [m]. */
  readonly gouged: number | undefined;
}

/** One pass as it was run; SI. */
export interface PassRun {
  /** Order in which it was run, from 1 [-]. */
  readonly number: number;
  /** Number of the planned pass it is taken for; undefined where there is none [-]. */
  readonly planned: number | undefined;
  /** Elapsed time at which its arc was struck [s]. */
  readonly start: number;
  /** Elapsed time at which its arc went out for good [s]. */
  readonly end: number;
  /** Place from the start of the seam where it began [m]. */
  readonly from: number | undefined;
  /** Place where it ended [m]. */
  readonly to: number | undefined;
  /** It covers the length that was planned. */
  readonly complete: boolean;
  /** Breaks of the arc too short to matter by themselves: a rough arc shows many [-]. */
  readonly brief: number;
  readonly totals: RunTotals;
  /** Energy and time along the way; undefined where nothing tells the way. */
  readonly course: WayBins | undefined;
  /** Place on the seam of a way from the strike [m]. */
  readonly placeOf: (way: number) => number;
  /** Standard deviation of that place [m]. */
  readonly placeSdOf: (way: number) => number;
}

/** What a log tells of a run; SI. */
export interface RunOutcome {
  /** Rows reviewed [-]. */
  readonly rows: number;
  /** Elapsed time of the last row [s]. */
  readonly duration: number;
  /** Usual time between two rows [s]. */
  readonly interval: number;
  readonly channels: readonly Channel[];
  readonly way: WaySource;
  readonly totals: RunTotals;
  readonly passes: readonly PassRun[];
  readonly events: readonly RunEvent[];
  /** Events of a kind beyond those kept, for a log that is full of them [-]. */
  readonly notListed: Readonly<Partial<Record<EventKind, number>>>;
  /** Tries to strike the arc that made no pass [-]. */
  readonly strikes: number;
}
