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
  furrow_migration: MigrationTable;
}
