import type { GivenReading, LogTrace, RunReport } from '@furrow/engine';
import type { Planned } from '../../job/state/index.ts';
import type { RunSource, UnreadColumn } from '../../work/index.ts';

/** A log as it is shown. */
export interface ShownRun {
  readonly planned: Planned;
  readonly report: RunReport;
  readonly trace: LogTrace;
  /** Text of the description that has the next file of this logger read the same way. */
  readonly logger: string;
  /** The file that was reviewed. */
  readonly file: Blob;
}

/** The log that is looked at, and what is known of how it is read. */
export interface OpenedLog {
  readonly name: string;
  readonly source: RunSource;
  readonly given?: GivenReading | undefined;
  /** Text of a logger description by which it is read. */
  readonly logger?: string | undefined;
  /** Identifier of the run that it is kept as; undefined while it is not. */
  readonly kept?: string | undefined;
  /** Whether more of it comes in. */
  readonly live?: boolean;
}

/** How far the review is. */
export type ReviewRun =
  | { readonly is: 'waiting' }
  | { readonly is: 'running'; readonly share: number }
  | { readonly is: 'done' }
  | { readonly is: 'unread'; readonly why: readonly string[]; readonly columns: readonly UnreadColumn[] }
  | { readonly is: 'failed'; readonly why: string };

/** What the page of a run shows. */
export interface RunState {
  readonly log: OpenedLog | undefined;
  readonly shown: ShownRun | undefined;
  readonly run: ReviewRun;
}
