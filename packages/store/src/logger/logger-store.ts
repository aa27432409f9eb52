/** How the files of one logger are read, as it is kept for the next of them. */
export interface StoredLogger {
  /** Content hash of the description, by which it is known. */
  readonly revision: string;
  /** What the logger is called; empty for none. */
  readonly name: string;
  /** The description as written, YAML or JSON. */
  readonly text: string;
  /** When it was kept (ISO 8601, UTC). */
  readonly saved_at: string;
}

/** Where the logger descriptions of a shop are kept. The rules are those of the job store. */
export interface LoggerStore {
  /** Newest first. */
  list(): Promise<readonly StoredLogger[]>;
  /** Keeps a description; the same again, whatever its layout, changes nothing. */
  put(logger: Omit<StoredLogger, 'saved_at'>): Promise<void>;
  /** Erases one for good; one that is not there changes nothing. */
  erase(revision: string): Promise<void>;
}
