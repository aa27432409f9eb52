export { dataFolder } from './data-folder.ts';
export type {
  JobContent,
  JobStore,
  SaveOutcome,
  StoredBinned,
  StoredJob,
  StoredRevision,
  StoredRevisionSummary,
  StoredSummary,
} from './job-store.ts';
export { openStore, type StorePlace } from './open-store.ts';
export type { StoreSources } from './sql-job-store.ts';
export { StoreFailure } from './store-failure.ts';
