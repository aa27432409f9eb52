import type { SurveyReport } from '@furrow/engine';
import type { Planned } from '../../job/state/index.ts';
import type { UnreadFile } from '../../work/index.ts';

/** What was measured, as it is shown. */
export interface ShownSurvey {
  readonly planned: Planned;
  readonly report: SurveyReport;
  /** Files that cannot be read, each with why. */
  readonly unread: readonly UnreadFile[];
}

/** How far measuring is. */
export type Surveying =
  | { readonly is: 'waiting' }
  | { readonly is: 'running'; readonly share: number }
  | { readonly is: 'done' }
  | { readonly is: 'unread'; readonly why: readonly string[] }
  | { readonly is: 'failed'; readonly why: string };

/** What the page of a groove shows. */
export interface GrooveState {
  readonly shown: ShownSurvey | undefined;
  readonly survey: Surveying;
  /** Files that the readings list and that lie nowhere, by name. */
  readonly missing: readonly string[];
}
