/** What is known of a run when it is kept, or when it begins. */
export interface NewRun {
  readonly id: string;
  /** What it is called: the name of its file, or of the rig. */
  readonly name: string;
  /** Number of the job's revision that was run [-]. */
  readonly revision_number: number;
  /** Numbers of the revisions of kit and trials that it was planned with; null where there was none [-]. */
  readonly kit_number: number | null;
  readonly knowledge_number: number | null;
  /** Text of the logger description by which the file is read; null where the program found out by itself. */
  readonly logger: string | null;
  /** Whether no rig was run. */
  readonly rehearsal: boolean;
  /** JSON of where live readings come from; null for a file. */
  readonly source: string | null;
  /** The file; null while the run is live. */
  readonly original: RunOriginal | null;
}

/** The file of a run, as it is known among the originals. */
export interface RunOriginal {
  /** SHA-256 of the file, in hex. */
  readonly sha256: string;
  /** Length [bytes]. */
  readonly bytes: number;
}

/** A run that is kept, or that is under way. */
export interface StoredRun extends NewRun {
  readonly job_id: string;
  /** Content hash of the job's revision; null for a draft. */
  readonly revision: string | null;
  /** When it was kept or began (ISO 8601, UTC). */
  readonly begun_at: string;
}

/** What a version of the program found in a run. */
export interface StoredReview {
  readonly program_version: string;
  readonly reviewed_at: string;
  /** JSON of the whole report; null where the file could not be reviewed. */
  readonly report: string | null;
  /** JSON of what a list shows of it; null where the file could not be reviewed. */
  readonly summary: string | null;
  /** Why the file could not be reviewed; null where it was. */
  readonly trouble: string | null;
}

/** What is found of a run. */
export type RunFindings = Omit<StoredReview, 'program_version' | 'reviewed_at'>;

/** A run in a list, with the newest review that found something, else the newest, report left out; null before the first. */
export interface ListedRun extends StoredRun {
  readonly review: Omit<StoredReview, 'report'> | null;
}

/** The run that was claimed for a review. */
export interface ReviewTurn {
  /** Undefined when none is left to claim. */
  readonly run: StoredRun | undefined;
  /** Whether one was left that another claim holds for a while. */
  readonly held: boolean;
}

/** Where the runs of the jobs are kept. The rules are those of the job store; the files are among the originals. */
export interface RunStore {
  /** Keeps a run, or begins a live one; the same again changes nothing. Undefined without the job or its revision. */
  add(jobId: string, run: NewRun): Promise<StoredRun | undefined>;
  /** Gives a live run its file; undefined if there is no such live run. The same again changes nothing. */
  end(id: string, original: RunOriginal): Promise<StoredRun | undefined>;
  /** Runs of a job, newest first; undefined if there is no such job outside the bin. */
  list(jobId: string): Promise<readonly ListedRun[] | undefined>;
  /** All kept runs that were no rehearsals, with the newest summary of each; null where none could be made yet. */
  summaries(): Promise<readonly { readonly job_id: string; readonly summary: string | null }[]>;
  get(id: string): Promise<StoredRun | undefined>;
  /** Runs that are under way, oldest first. */
  live(): Promise<readonly StoredRun[]>;
  /** What was found of a run, newest review first; each version of the program that reviewed it has one. */
  reviews(id: string): Promise<readonly StoredReview[]>;
  /**
   * Claims the run whose turn it is to be reviewed by a version, fewest tries first, for a minute: of several programs on one
   * database one reviews it. The try is counted before it is made, so that a file that brings the program down is given up.
   * The same claim again gives the same run.
   */
  claimReview(version: string, claim: string): Promise<ReviewTurn>;
  /** Claims on for another minute. */
  holdReview(claim: string): Promise<void>;
  /** Keeps what a version found; it takes the place of what the same version found before. */
  reviewed(id: string, version: string, findings: RunFindings): Promise<void>;
  /** Has a run reviewed again by every version that asks. */
  forgetReviews(id: string, version: string): Promise<void>;
  /** Erases a run with all that was found of it for good; undefined if there is none. */
  erase(id: string): Promise<StoredRun | undefined>;
  /** Hashes of the files of a job's runs, wherever the job is. */
  hashesOf(jobId: string): Promise<readonly string[]>;
  /** Whether any run has this file. */
  hasFile(sha256: string): Promise<boolean>;
}
