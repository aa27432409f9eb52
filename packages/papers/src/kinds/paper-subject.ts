import type {
  Answer,
  GaugeOfSurvey,
  HeatReport,
  Knowledge,
  ReadJob,
  ReadKit,
  ReadReadings,
  SurveyInput,
  SurveyReport,
  UnitSystem,
} from '@furrow/engine';
import type { CheckedReading, PaperSize } from '../blocks/index.ts';

/** How a paper is to be made. */
export interface PaperOptions {
  readonly units: UnitSystem;
  readonly paper: PaperSize;
  /** Address of the job, where it is served; the code on the paper then leads there. */
  readonly address?: string | undefined;
  /** Number of the saved revision, where the job is saved [-]. */
  readonly revision_number?: number | undefined;
  /** Which account released it; null where none did, left out where nobody signs in. */
  readonly released?: ReleasedPaper | null | undefined;
}

/** Which account handed a paper out. It signs nothing by that. */
export interface ReleasedPaper {
  /** Name of the account; null where nobody signed in then. */
  readonly by: string | null;
  /** When (ISO 8601, UTC). */
  readonly at: string;
}

/** What papers are made of: the job and its answer, and what else there is. */
export interface PaperSubject {
  readonly read: ReadJob;
  readonly answer: Answer;
  readonly kit?: ReadKit | undefined;
  /** What the shop has learned, as the answer was made with it. */
  readonly knowledge?: Knowledge | undefined;
  readonly heat?: HeatReport | undefined;
  readonly readings?: ReadReadings | undefined;
  /** The readings file and the files that were measured, as they are. */
  readonly measured?: readonly SurveyInput[] | undefined;
  /** The gauge that the shop keeps, where it does. */
  readonly gauge?: GaugeOfSurvey | undefined;
  /** What that says of the groove. */
  readonly survey?: SurveyReport | undefined;
  /** What was read before the first arc, by identifier of the check. */
  readonly checked?: Readonly<Record<string, CheckedReading>> | undefined;
}
