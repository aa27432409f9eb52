export type { AuditReport, HistoryEnd } from './audit/audit.ts';
export type { BackupReport } from './backup/backup.ts';
export type { RestoreReport } from './backup/restore.ts';
export { dataFolder } from './database/data-folder.ts';
export { StoreFailure } from './database/store-failure.ts';
export { eraseUnused } from './erase-unused.ts';
export type { FaultCaseStore, FoundFault } from './fault/fault-case-store.ts';
export { type Act, type Actor, COMPANY, NOBODY } from './history/change.ts';
export type { HistoryQuestion, HistoryStore, KeptEntry } from './history/history-store.ts';
export type {
  JobContent,
  JobStore,
  SaveOutcome,
  StoredBinned,
  StoredJob,
  StoredRevision,
  StoredRevisionSummary,
  StoredSummary,
} from './job/job-store.ts';
export type { StoreSources } from './job/sql-job-store.ts';
export { Journal, JournalFailure, openJournal } from './journal/journal.ts';
export type { LoggerStore, StoredLogger } from './logger/logger-store.ts';
export { type Company, openCompany, openStore, restoreCompany, type StorePlace } from './open-store.ts';
export { OriginalDamaged, type Originals, openOriginals } from './original/index.ts';
export type { PrintedPaper, PrintedStore, StoredPrinted } from './paper/printed-store.ts';
export type {
  AccountRights,
  PeopleStore,
  ShopRole,
  StoredAccount,
  StoredMachine,
  StoredSession,
  StoredShop,
} from './people/people-store.ts';
export type { ReadingsSaveOutcome, ReadingsStore } from './readings/readings-store.ts';
export type {
  CommissioningContent,
  CommissioningEntry,
  CommissioningSaveOutcome,
  CommissioningStore,
  Finding,
  Reading,
  StoredCommissioning,
} from './rig/commissioning-store.ts';
export type {
  ListedRun,
  NewRun,
  RunFindings,
  RunStore,
  StoredReview,
  StoredRun,
} from './run/run-store.ts';
export type {
  ShopFileContent,
  ShopFileSaveOutcome,
  ShopFileStore,
  StoredShopFile,
  StoredShopFileSummary,
} from './shop-file/shop-file-store.ts';
export { THE_SHOP } from './sql-store.ts';
export type { Store } from './store.ts';
