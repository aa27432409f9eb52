/** A reading taken at the rig. */
export interface Reading {
  /** As it was typed. */
  readonly text: string;
  /** In SI units; null if it is no number. */
  readonly value: number | null;
  readonly note: string;
}

/** A fault looked into at the rig. */
export interface Finding {
  readonly id: string;
  /** What was seen, by identifier of the observable. */
  readonly symptoms: Readonly<Record<string, string>>;
  /** What it turned out to be; null while not known. */
  readonly cause: string | null;
  readonly note: string;
}

/** When an entry was first saved as it stands (ISO 8601, UTC). */
export interface Stamped {
  readonly at: string;
}

/** What is handed in to be saved: the whole of what was ticked, read and found. */
export interface CommissioningEntry {
  readonly readings: Readonly<Record<string, Reading>>;
  readonly ticks: readonly string[];
  readonly findings: readonly Finding[];
}

/** What is kept: every entry with its time. */
export interface CommissioningContent {
  readonly readings: Readonly<Record<string, Reading & Stamped>>;
  /** Time by identifier of what was ticked. */
  readonly ticks: Readonly<Record<string, string>>;
  readonly findings: readonly (Finding & Stamped)[];
}

/** What was ticked, read and found for a job. */
export interface StoredCommissioning extends CommissioningContent {
  readonly job_id: string;
  /** 0 as long as nothing was saved [-]. */
  readonly revision_number: number;
  /** ISO 8601, UTC; null as long as nothing was saved. */
  readonly saved_at: string | null;
}

/** What came of a save: what is kept now, or why nothing was saved. */
export type CommissioningSaveOutcome =
  | { readonly ok: true; readonly commissioning: StoredCommissioning }
  | { readonly ok: false; readonly code: 'JOB_NOT_FOUND' }
  | {
      readonly ok: false;
      readonly code: 'COMMISSIONING_CHANGED_MEANWHILE';
      readonly newer: StoredCommissioning;
    };

/** Where the readings of the jobs are kept. The rules are those of the job store. */
export interface CommissioningStore {
  /** Undefined if there is no such job outside the bin. */
  get(jobId: string): Promise<StoredCommissioning | undefined>;
  /** Saves the whole of it, provided that `basedOn` is still the newest revision; 0 for the first. */
  save(jobId: string, entry: CommissioningEntry, basedOn: number): Promise<CommissioningSaveOutcome>;
  /** Erases what was ticked, read and found for a job for good, with all revisions; false if there is nothing. */
  erase(jobId: string): Promise<boolean>;
}
