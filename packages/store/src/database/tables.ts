/** Documents: one row each, whatever their number of revisions. */
export interface DocumentTableRow {
  shop: string;
  kind: string;
  id: string;
  created_at: string;
  deleted_at: string | null;
  /** Number of the newest revision [-]. */
  latest: number;
}

/** Revisions of documents: rows are only ever added, until they are erased for good. */
export interface DocumentRevisionRow {
  shop: string;
  kind: string;
  id: string;
  number: number;
  content: string;
  title: string;
  revision: string | null;
  saved_at: string;
}

/** Faults found, one row each. */
export interface FaultCaseRow {
  shop: string;
  id: string;
  cause: string;
  /** JSON: what was seen, by identifier. */
  symptoms: string;
  counted_at: string;
}

/** Papers that were handed out: rows are only ever added. */
export interface PrintedRow {
  shop: string;
  id: string;
  job_id: string;
  paper: string;
  /** Number of the job's revision [-]. */
  revision_number: number;
  revision: string;
  kit_revision: string | null;
  /** Name of the knowledge that it was planned with; null for one handed out before that was kept. */
  knowledge_id: string | null;
  printed_at: string;
}

/** Runs of jobs: files that were kept, and live ones, which have no file yet. */
export interface RunRow {
  shop: string;
  id: string;
  job_id: string;
  name: string;
  revision_number: number;
  revision: string | null;
  kit_number: number | null;
  knowledge_number: number | null;
  logger: string | null;
  /** 1 for a rehearsal, else 0. */
  rehearsal: number;
  /** JSON: where live readings come from. */
  source: string | null;
  /** Null while it is live. */
  sha256: string | null;
  bytes: number | null;
  begun_at: string;
}

/** What each version of the program found in a run; no findings yet while it has only been tried. */
export interface RunReviewRow {
  shop: string;
  run_id: string;
  program_version: string;
  tries: number;
  reviewed_at: string | null;
  report: string | null;
  summary: string | null;
  trouble: string | null;
}

/** Which migrations have been run. */
export interface MigrationRow {
  number: number;
  name: string;
  applied_at: string;
}

/** Tables of the database, the same in both dialects: times are ISO text, documents are text. */
export interface Tables {
  document: DocumentTableRow;
  document_revision: DocumentRevisionRow;
  fault_case: FaultCaseRow;
  printed: PrintedRow;
  run: RunRow;
  run_review: RunReviewRow;
  furrow_migration: MigrationRow;
}
