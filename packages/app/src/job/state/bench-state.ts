import type { SavedJob } from '@furrow/contract';
import { type Answer, fromUnit, type ReadJob } from '@furrow/engine';
import type { KeptSheetState } from '../../sheet/keep/index.ts';
import type { KitInUse } from './bench-kit.ts';
import type { RunStanding } from './bench-runs.ts';

/** A planned result and the edit it belongs to. */
export interface Planned {
  readonly edit: number;
  readonly read: ReadJob;
  readonly answer: Answer;
}

/** What the shop has tried and gauged, as the bench knows it. */
export interface BenchHistory {
  /** Text of the trials; undefined where the shop has none. */
  readonly trials: string | undefined;
  /** Whether it is planned with; else the job is planned as in a shop without history. */
  readonly used: boolean;
  /** Whether the shop has learned more since the job was saved. */
  readonly moreSince: boolean;
}

/** Everything the bench shows. */
export interface BenchState extends KeptSheetState<SavedJob> {
  /** Counts the changes of the text. */
  readonly edit: number;
  /** The job as read the last time it could be read. */
  readonly read: ReadJob | undefined;
  /** The last result, kept while a newer one is on its way or the text has mistakes. */
  readonly planned: Planned | undefined;
  /** Why the planner itself failed, for the newest edit. */
  readonly plannerFailure: string | undefined;
  /** What is planned with. */
  readonly kit: KitInUse;
  readonly history: BenchHistory;
  /** Where the job stands in being run; undefined while that is not known. */
  readonly runs: RunStanding | undefined;
  /** Place of the seam strip's cursor, from the start of the seam; the middle until it is moved [m]. */
  readonly cursor: number | undefined;
}

/** Whether the shown result belongs to the text as it stands. */
export function isCurrent(state: BenchState): boolean {
  return state.planned !== undefined && state.planned.edit === state.edit;
}

/** Whether something is shown that the text has outrun. */
export function isOutdated(state: BenchState): boolean {
  return state.planned !== undefined && !isCurrent(state);
}

/** Where the section is cut, kept between the ends of the passes [m]. */
export function cutPlace(state: BenchState): number {
  const length = state.read?.job.seam.length ?? 0;
  const pass = fromUnit(state.planned?.answer.plan?.pass_length_mm ?? 0, 'mm');
  const runOut = Math.max(0, (pass - length) / 2);
  return Math.min(length + runOut, Math.max(-runOut, state.cursor ?? length / 2));
}
