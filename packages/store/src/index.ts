export type {
  CommissioningContent,
  CommissioningEntry,
  CommissioningSaveOutcome,
  CommissioningStore,
  Finding,
  Reading,
  StoredCommissioning,
} from './commissioning-store.ts';
export { dataFolder } from './data-folder.ts';
export type { FaultCaseStore, FoundFault } from './fault-case-store.ts';
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
export type {
  KitContent,
  KitSaveOutcome,
  KitStore,
  StoredKit,
  StoredKitSummary,
} from './kit-store.ts';
export { openStore, type StorePlace } from './open-store.ts';
export type { PrintedPaper, PrintedStore, StoredPrinted } from './printed-store.ts';
export type { StoreSources } from './sql-job-store.ts';
export type { Store } from './store.ts';
export { StoreFailure } from './store-failure.ts';
