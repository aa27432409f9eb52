/** What is saved of a file that a shop has one of, its kit or its trials: the text as written and what was read from it. */
export interface ShopFileContent {
  readonly text: string;
  readonly title: string;
  /** Content hash of the file as read; null for a draft that cannot be read. */
  readonly revision: string | null;
}

/** One revision of such a file, without its text. */
export interface StoredShopFileSummary {
  readonly title: string;
  readonly revision: string | null;
  /** From 1 [-]. */
  readonly revision_number: number;
  /** When it was saved (ISO 8601, UTC). */
  readonly saved_at: string;
  /** Name of the account that saved it; null where nobody signed in. */
  readonly saved_by: string | null;
}

/** One revision of such a file. */
export interface StoredShopFile extends StoredShopFileSummary {
  readonly text: string;
}

/** What came of a save: the file as it is now, or the one that somebody else saved meanwhile (none: undefined). */
export type ShopFileSaveOutcome =
  | { readonly ok: true; readonly saved: StoredShopFile }
  | { readonly ok: false; readonly newer: StoredShopFile | undefined };

/** Where a file that a shop has one of is kept, with every revision of it. The rules are those of the job store. */
export interface ShopFileStore {
  /** The newest revision; undefined as long as none was saved. */
  get(): Promise<StoredShopFile | undefined>;
  /** Saves a new revision, provided that `basedOn` is still the newest one; 0 for the first. */
  save(content: ShopFileContent, basedOn: number): Promise<ShopFileSaveOutcome>;
  /** All revisions, newest first. */
  revisions(): Promise<readonly StoredShopFileSummary[]>;
  revision(number: number): Promise<StoredShopFile | undefined>;
  /** Erases all revisions but the newest for good; how many they were. */
  eraseEarlier(): Promise<number>;
}
