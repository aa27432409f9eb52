/** A backup is gzip of JSON, a value a line: what it is, rows of tables, files in pieces, and how it ends. */
export type BackupLine =
  | BackupHead
  | { readonly table: string; readonly rows: readonly Readonly<Record<string, unknown>>[] }
  | BackupFile
  | { readonly piece: string }
  | { readonly end: BackupEnd };

/** What a backup is of. */
export interface BackupHead {
  readonly furrow_backup: 1;
  readonly program_version: string;
  readonly made_at: string;
  /** Steps that the database had been through, oldest first. */
  readonly steps: readonly string[];
}

/** A file, whose pieces follow in base64. */
export interface BackupFile {
  readonly file: 'original' | 'parquet' | 'live';
  readonly shop: string;
  /** SHA-256 of the original; the identifier of a live run. */
  readonly name: string;
  /** Length [bytes]. */
  readonly bytes: number;
}

/** How a backup ends. */
export interface BackupEnd {
  /** Lines before this one [-]. */
  readonly lines: number;
  /** SHA-256 of all of them, line ends included. */
  readonly sha256: string;
}
