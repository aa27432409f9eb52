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
  furrow_migration: MigrationRow;
}
