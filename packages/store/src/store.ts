import type { CommissioningStore } from './commissioning-store.ts';
import type { FaultCaseStore } from './fault-case-store.ts';
import type { JobStore } from './job-store.ts';
import type { KitStore } from './kit-store.ts';
import type { PrintedStore } from './printed-store.ts';

/** Everything that is kept, in one database. */
export interface Store extends JobStore {
  readonly kit: KitStore;
  readonly commissioning: CommissioningStore;
  readonly faultCases: FaultCaseStore;
  readonly printed: PrintedStore;
}
