import {
  FAULT_MODEL,
  type FaultEvidence,
  type FaultOutcome,
  nextFaultChecks,
  rankFaults,
} from '../faults/index.ts';
import type { EventKind, RunEvent } from './outcome.ts';

/** What an event may come from, and what to look at next. */
export interface EventCauses {
  /** The likeliest causes with their chances, at most three [list]. */
  readonly causes: readonly {
    readonly cause: string;
    readonly title: string;
    /** Probability after what the log shows [-]. */
    readonly probability: number;
    readonly remedy: string;
  }[];
  readonly nextCheck: { readonly check: string; readonly title: string; readonly ask: string } | undefined;
}

/** What each kind of event says in the terms of the fault table. */
const EVIDENCE: Readonly<Partial<Record<EventKind, readonly (readonly [string, FaultOutcome])[]>>> = {
  arc_out: [['arc_goes_out', 'yes']],
  short: [['touches_down', 'yes']],
  restart_short: [['hard_start', 'yes']],
  feed_stop: [['electrode_not_feeding', 'yes']],
  low_air: [['flowing_pressure', 'low']],
  stall: [['carriage_slips', 'yes']],
  slip: [['carriage_slips', 'yes']],
};

/** Kinds that are told from each other by the way a level moved. */
const LEVELS: Readonly<Partial<Record<EventKind, string>>> = {
  voltage_drift: 'arc_volts',
  current_drift: 'current',
};

/** Causes listed at most [-]. */
const CAUSES_MOST = 3;
/** Time about an event within which others speak of the same cause [s]: judgement, no source. */
const NEAR = 2;

/**
 * Likely causes of an event and the check that tells most, from the event itself and from what happened with it.
 *
 * @param event - the event [record], from `reviewRun`
 * @param events - all events of the run [list], any
 * @param high - for a drift, whether the level rose [-], true or false
 * @returns causes and check; undefined where the event says nothing of the rig [record]
 * @source judgement, no source: the table of faults
 * @example
 * causesOf({ kind: 'low_air', start: 3, end: 5 }, [], false).causes[0].cause // => "low_air"
 */
export function causesOf(
  event: Pick<RunEvent, 'kind' | 'start' | 'end'>,
  events: readonly Pick<RunEvent, 'kind' | 'start' | 'end'>[],
  high: boolean,
): EventCauses | undefined {
  const own = evidenceOf(event.kind, high);
  if (own.length === 0) return undefined;
  const beside = events
    .filter(({ start, end }) => start < event.end + NEAR && end > event.start - NEAR)
    .flatMap(({ kind }) => (kind in LEVELS ? [] : evidenceOf(kind, high)));
  const evidence: FaultEvidence = Object.fromEntries([...beside, ...own]);
  const ranked = rankFaults(FAULT_MODEL, evidence);
  const checks = nextFaultChecks(FAULT_MODEL, evidence);
  if (!ranked.ok) return undefined;
  const [next] = checks.ok ? checks.value : [];
  return {
    causes: ranked.value
      .slice(0, CAUSES_MOST)
      .map(({ cause, title, probability, remedy }) => ({ cause, title, probability, remedy })),
    nextCheck: next && { check: next.check, title: next.title, ask: next.ask },
  };
}

function evidenceOf(kind: EventKind, high: boolean): readonly (readonly [string, FaultOutcome])[] {
  const level = LEVELS[kind];
  return level === undefined ? (EVIDENCE[kind] ?? []) : [[level, high ? 'high' : 'low']];
}
