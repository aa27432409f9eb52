import type { FaultCaseStore } from './fault/fault-case-store.ts';
import type { Actor } from './history/change.ts';
import type { HistoryStore } from './history/history-store.ts';
import type { JobStore } from './job/job-store.ts';
import type { LoggerStore } from './logger/logger-store.ts';
import type { PrintedStore } from './paper/printed-store.ts';
import type { ReadingsStore } from './readings/readings-store.ts';
import type { CommissioningStore } from './rig/commissioning-store.ts';
import type { RunStore } from './run/run-store.ts';
import type { ShopFileStore } from './shop-file/shop-file-store.ts';

/** Everything that is kept, in one database. */
export interface Store extends JobStore {
  /** The same, worked on by somebody, whom the history names. */
  by(actor: Actor): Store;
  /** Power, leads and air. */
  readonly kit: ShopFileStore;
  readonly commissioning: CommissioningStore;
  /** What the shop has tried and gauged, which its knowledge is learned from. */
  readonly knowledge: ShopFileStore;
  /** Study and checks of the gauge. */
  readonly gauge: ShopFileStore;
  /** What was run and gauged on a job. */
  readonly readings: ReadingsStore;
  readonly faultCases: FaultCaseStore;
  readonly printed: PrintedStore;
  /** Runs, kept and live. */
  readonly runs: RunStore;
  /** How the files of the shop's loggers are read. */
  readonly loggers: LoggerStore;
  /** Who changed what, when, from what. */
  readonly history: HistoryStore;
}
