import type { ShopFileContent, StoredShopFile, StoredShopFileSummary } from '../shop-file/shop-file-store.ts';

/** What came of a save: the readings as they are now, or why nothing was saved. */
export type ReadingsSaveOutcome =
  | { readonly ok: true; readonly saved: StoredShopFile }
  | { readonly ok: false; readonly code: 'JOB_NOT_FOUND' }
  | {
      readonly ok: false;
      readonly code: 'READINGS_CHANGED_MEANWHILE';
      /** Undefined as long as none are saved. */
      readonly newer: StoredShopFile | undefined;
    };

/** Where it is kept what was run and gauged on the jobs, one file each. The rules are those of the job store. */
export interface ReadingsStore {
  /** Null as long as nothing was saved; undefined if there is no such job outside the bin. */
  get(jobId: string): Promise<StoredShopFile | null | undefined>;
  /** Saves the next revision, provided that `basedOn` is still the newest one; 0 for the first. */
  save(jobId: string, content: ShopFileContent, basedOn: number): Promise<ReadingsSaveOutcome>;
  /** Newest first; undefined if there is no such job outside the bin. */
  revisions(jobId: string): Promise<readonly StoredShopFileSummary[] | undefined>;
  revision(jobId: string, number: number): Promise<StoredShopFile | undefined>;
  /** SHA-256 of every file that the readings of a job name, in any revision; a job in the bin has them too. */
  hashesOf(jobId: string): Promise<readonly string[]>;
  /** Whether the readings of any job name a file, in any revision. */
  hasFile(sha256: string): Promise<boolean>;
  /** Erases the readings of a job for good, with all revisions; false if there are none. */
  erase(jobId: string): Promise<boolean>;
}
