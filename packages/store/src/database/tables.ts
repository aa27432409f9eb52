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
  /** Name of the account that saved it; null where nobody signed in. */
  saved_by: string | null;
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
  /** Name of the account that released it; null where nobody signed in. */
  released_by: string | null;
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
  /** By which claim it is under way, and until when; null when nobody is at it. */
  claim: string | null;
  claimed_until: string | null;
  reviewed_at: string | null;
  report: string | null;
  summary: string | null;
  trouble: string | null;
}

/** Shops of the company. */
export interface ShopRow {
  id: string;
  name: string;
  made_at: string;
}

/** People who may sign in. */
export interface AccountRow {
  id: string;
  name: string;
  /** The name as it is looked for. */
  name_key: string;
  /** 1 for an administrator of the company, else 0. */
  administrator: number;
  /** Hash of the password with how it was made; null before one was set. */
  password: string | null;
  /** 1 where nobody may sign in by it, else 0. */
  shut: number;
  made_at: string;
}

/** What people are in which shops. */
export interface MemberRow {
  account_id: string;
  shop: string;
  role: string;
}

/** Who is signed in, each known by the hash of its secret alone. */
export interface SessionRow {
  hash: string;
  account_id: string;
  shop: string | null;
  made_at: string;
  ends_at: string;
  /** 1 once its secret was exchanged for another, else 0. */
  exchanged: number;
}

/** Links by which a password is set, once. */
export interface OneTimeLinkRow {
  hash: string;
  account_id: string;
  ends_at: string;
}

/** Who people are to a provider that they sign in by. */
export interface IdentityRow {
  /** Address of the provider. */
  issuer: string;
  /** What it knows a person by, for ever. */
  subject: string;
  account_id: string;
}

/** Loggers and gateways that bring readings. */
export interface MachineRow {
  id: string;
  shop: string;
  name: string;
  hash: string;
  made_at: string;
}

/** How often signing in failed, by name or place. */
export interface SignInFailureRow {
  key: string;
  count: number;
  at: string;
}

/** The history of each shop and of the company: rows are only ever added. */
export interface HistoryRow {
  shop: string;
  /** From 1 [-]. */
  number: number;
  at: string;
  who_id: string | null;
  who: string | null;
  act: string;
  kind: string;
  thing: string;
  state_before: string | null;
  state_after: string | null;
  content: string | null;
  previous: string;
  hash: string;
}

/** The newest entry of each history. */
export interface HistoryHeadRow {
  shop: string;
  /** 0 before the first entry [-]. */
  number: number;
  hash: string;
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
  shop: ShopRow;
  account: AccountRow;
  member: MemberRow;
  session: SessionRow;
  one_time_link: OneTimeLinkRow;
  identity: IdentityRow;
  machine: MachineRow;
  sign_in_failure: SignInFailureRow;
  history: HistoryRow;
  history_head: HistoryHeadRow;
  furrow_migration: MigrationRow;
}
