/** What was printed, and what it was made from. */
export interface PrintedPaper {
  /** Which paper or drawing, by the name of its file. */
  readonly paper: string;
  /** Number of the job's revision that it was made from [-]. */
  readonly revision_number: number;
  /** Content hash of that revision. */
  readonly revision: string;
  /** Content hash of the kit that it was planned with; null without one. */
  readonly kit_revision: string | null;
  /** Name of the knowledge that it was planned with; null for a paper handed out before that was kept. */
  readonly knowledge_id: string | null;
}

/** A paper that was printed, with its time. */
export interface StoredPrinted extends PrintedPaper {
  /** When it was handed out (ISO 8601, UTC). */
  readonly printed_at: string;
  /** Name of the account that released it; null where nobody signed in. */
  readonly released_by: string | null;
}

/** Where it is kept which papers of a job were handed out. The rules are those of the job store. */
export interface PrintedStore {
  /** Newest first; undefined if there is no such job outside the bin. */
  list(jobId: string): Promise<readonly StoredPrinted[] | undefined>;
  /** Adds what was handed out; false if there is no such job outside the bin. */
  add(jobId: string, printed: PrintedPaper): Promise<boolean>;
}
