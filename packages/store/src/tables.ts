/** Jobs: one row each, whatever their number of revisions. */
export interface JobTable {
  id: string;
  created_at: string;
  deleted_at: string | null;
  /** Number of the newest revision [-]. */
  latest: number;
}

/** Revisions: rows are only ever added. */
export interface JobRevisionTable {
  job_id: string;
  number: number;
  text: string;
  title: string;
  revision: string | null;
  saved_at: string;
}

/** Revisions of the one kit: rows are only ever added. */
export interface KitRevisionTable {
  number: number;
  text: string;
  title: string;
  revision: string | null;
  saved_at: string;
}

/** What was read at the rig for a job, one row each time it was saved: rows are only ever added. */
export interface CommissioningTable {
  job_id: string;
  number: number;
  /** JSON of a `CommissioningContent`. */
  content: string;
  saved_at: string;
}

/** Faults found, one row each. */
export interface FaultCaseTable {
  id: string;
  cause: string;
  /** JSON: what was seen, by identifier. */
  symptoms: string;
  counted_at: string;
}

/** Papers that were handed out: rows are only ever added. */
export interface PrintedTable {
  id: string;
  job_id: string;
  paper: string;
  /** Number of the job's revision [-]. */
  revision_number: number;
  revision: string;
  kit_revision: string | null;
  printed_at: string;
}

/** Which migrations have been run. */
export interface MigrationTable {
  number: number;
  name: string;
  applied_at: string;
}

/** Tables of the database, the same in both dialects: times are ISO text, documents are text. */
export interface Tables {
  job: JobTable;
  job_revision: JobRevisionTable;
  kit_revision: KitRevisionTable;
  commissioning: CommissioningTable;
  fault_case: FaultCaseTable;
  printed: PrintedTable;
  furrow_migration: MigrationTable;
}
