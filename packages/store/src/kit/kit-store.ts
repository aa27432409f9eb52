/** What is saved of the kit: its text as written and what was read from it. */
export interface KitContent {
  readonly text: string;
  readonly title: string;
  /** Content hash of the kit as read; null for a draft that cannot be read. */
  readonly revision: string | null;
}

/** One revision of the kit, without its text. */
export interface StoredKitSummary {
  readonly title: string;
  readonly revision: string | null;
  /** From 1 [-]. */
  readonly revision_number: number;
  /** When it was saved (ISO 8601, UTC). */
  readonly saved_at: string;
}

/** One revision of the kit. */
export interface StoredKit extends StoredKitSummary {
  readonly text: string;
}

/** What came of a save: the kit as it is now, or the one that somebody else saved meanwhile (none: undefined). */
export type KitSaveOutcome =
  | { readonly ok: true; readonly kit: StoredKit }
  | { readonly ok: false; readonly code: 'KIT_CHANGED_MEANWHILE'; readonly newer: StoredKit | undefined };

/** Where the one kit is kept, with every revision of it. The rules are those of the job store. */
export interface KitStore {
  /** The newest revision; undefined as long as none was saved. */
  get(): Promise<StoredKit | undefined>;
  /** Saves a new revision, provided that `basedOn` is still the newest one; 0 for the first. */
  save(content: KitContent, basedOn: number): Promise<KitSaveOutcome>;
  /** All revisions, newest first. */
  revisions(): Promise<readonly StoredKitSummary[]>;
  revision(number: number): Promise<StoredKit | undefined>;
  /** Erases all revisions but the newest for good; how many they were. */
  eraseEarlier(): Promise<number>;
}
