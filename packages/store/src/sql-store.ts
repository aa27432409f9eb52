import type { Database } from './database.ts';
import { sqlCommissioningStore } from './sql-commissioning-store.ts';
import { sqlFaultCaseStore } from './sql-fault-case-store.ts';
import { type StoreSources, sqlJobStore } from './sql-job-store.ts';
import { sqlKitStore } from './sql-kit-store.ts';
import { sqlPrintedStore } from './sql-printed-store.ts';
import type { Store } from './store.ts';
import { workOn } from './work.ts';

/** Everything that is kept, in the tables of a migrated database of either kind. */
export function sqlStore(database: Database, sources: StoreSources): Store {
  const work = workOn(database);
  return {
    ...sqlJobStore(database, sources),
    kit: sqlKitStore(work, sources.now),
    commissioning: sqlCommissioningStore(work, sources.now),
    faultCases: sqlFaultCaseStore(work, sources.now),
    printed: sqlPrintedStore(work, sources),
  };
}
