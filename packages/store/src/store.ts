import type { DocumentStore } from './document/document-store.ts';
import type { FaultCaseStore } from './fault/fault-case-store.ts';
import type { JobStore } from './job/job-store.ts';
import type { KitStore } from './kit/kit-store.ts';
import type { PrintedStore } from './paper/printed-store.ts';
import type { CommissioningStore } from './rig/commissioning-store.ts';

/** Everything that is kept, in one database. */
export interface Store extends JobStore {
  readonly kit: KitStore;
  readonly commissioning: CommissioningStore;
  /** What the shop knows: observations of trials and jobs, by what they are about. */
  readonly knowledge: DocumentStore;
  readonly faultCases: FaultCaseStore;
  readonly printed: PrintedStore;
}
