/** What is saved of a job: its text as written and what was read from it. */
export interface JobContent {
  readonly text: string;
  readonly title: string;
  /** Content hash of the job as read; null for a draft that cannot be read. */
  readonly revision: string | null;
}

/** A saved job without its text. */
export interface StoredSummary {
  readonly id: string;
  readonly title: string;
  readonly revision: string | null;
  /** Number of the newest revision, from 1 [-]. */
  readonly revision_number: number;
  /** When the newest revision was saved (ISO 8601, UTC). */
  readonly saved_at: string;
  /** Name of the account that saved it; null where nobody signed in. */
  readonly saved_by: string | null;
  /** When the job was first saved (ISO 8601, UTC). */
  readonly created_at: string;
}

/** A saved job at its newest revision. */
export interface StoredJob extends StoredSummary {
  readonly text: string;
}

/** A job in the bin. */
export interface StoredBinned extends StoredSummary {
  /** When it was put there (ISO 8601, UTC). */
  readonly deleted_at: string;
}

/** One revision of a job, without its text. */
export interface StoredRevisionSummary {
  readonly revision_number: number;
  readonly revision: string | null;
  readonly title: string;
  readonly saved_at: string;
  /** Name of the account that saved it; null where nobody signed in. */
  readonly saved_by: string | null;
}

/** One revision of a job. */
export interface StoredRevision extends StoredRevisionSummary {
  readonly id: string;
  readonly text: string;
}

/** What came of a save: the job as it is now, or why nothing was saved. */
export type SaveOutcome =
  | { readonly ok: true; readonly job: StoredJob }
  | { readonly ok: false; readonly code: 'JOB_NOT_FOUND' }
  | { readonly ok: false; readonly code: 'JOB_CHANGED_MEANWHILE'; readonly newer: StoredJob };

/**
 * Where jobs are kept. Each method does all of its work or none of it; what has returned is on the disk.
 * A database that cannot be reached makes a method throw a `StoreFailure`.
 */
export interface JobStore {
  readonly kind: 'sqlite' | 'postgresql';
  /** Folder of the database; for PostgreSQL, its host and name. */
  readonly place: string;
  create(content: JobContent): Promise<StoredJob>;
  /** The same under an identifier that was made outside, so that what is sent again is not saved twice. */
  createAs(id: string, content: JobContent): Promise<SaveOutcome>;
  /** Jobs outside the bin, newest save first. */
  list(): Promise<readonly StoredSummary[]>;
  get(id: string): Promise<StoredJob | undefined>;
  /** Saves a new revision, provided that `basedOn` is still the newest one. */
  save(id: string, content: JobContent, basedOn: number): Promise<SaveOutcome>;
  /** All revisions, newest first. */
  revisions(id: string): Promise<readonly StoredRevisionSummary[] | undefined>;
  revision(id: string, number: number): Promise<StoredRevision | undefined>;
  /** A new job with the newest text of another. */
  duplicate(id: string): Promise<StoredJob | undefined>;
  /** Puts a job into the bin; false if there is none of this id outside it. */
  bin(id: string): Promise<boolean>;
  /** Jobs in the bin, newest first. */
  listBin(): Promise<readonly StoredBinned[]>;
  /** Takes a job out of the bin. */
  restore(id: string): Promise<StoredJob | undefined>;
  /** Erases a job that is in the bin for good, with all revisions, readings and papers; false if there is none there. */
  erase(id: string): Promise<boolean>;
  /** Erases all revisions but the newest for good; how many they were, undefined if there is no such job. */
  eraseEarlier(id: string): Promise<number | undefined>;
  close(): Promise<void>;
}
