import type { Database } from './database/database.ts';
import { workOn } from './database/work.ts';
import { documentTable } from './document/document-table.ts';
import { sqlFaultCaseStore } from './fault/sql-fault-case-store.ts';
import { type StoreSources, sqlJobStore } from './job/sql-job-store.ts';
import { sqlLoggerStore } from './logger/sql-logger-store.ts';
import { erasePrinted, sqlPrintedStore } from './paper/sql-printed-store.ts';
import { sqlReadingsStore } from './readings/sql-readings-store.ts';
import { sqlCommissioningStore } from './rig/sql-commissioning-store.ts';
import { eraseRuns, sqlRunStore } from './run/sql-run-store.ts';
import { sqlShopFileStore } from './shop-file/sql-shop-file-store.ts';
import type { Store } from './store.ts';

/** The shop of a database that knows of no other: what was kept before there were shops is its own. */
export const THE_SHOP = 'main';

/** Everything that is kept of a shop, in the tables of a migrated database of either kind. */
export function sqlStore(database: Database, sources: StoreSources, shop = THE_SHOP): Store {
  const work = workOn(database);
  const { now } = sources;
  const rigs = documentTable(shop, 'rig');
  const readings = documentTable(shop, 'readings');
  return {
    ...sqlJobStore(database, work, shop, sources, async (transaction, id) => {
      await rigs.erase(transaction, id);
      await readings.erase(transaction, id);
      await erasePrinted(transaction, shop, id);
      await eraseRuns(transaction, shop, id);
    }),
    kit: sqlShopFileStore(work, shop, 'kit', now),
    commissioning: sqlCommissioningStore(work, shop, now),
    knowledge: sqlShopFileStore(work, shop, 'knowledge', now),
    gauge: sqlShopFileStore(work, shop, 'gauge', now),
    readings: sqlReadingsStore(work, shop, now),
    faultCases: sqlFaultCaseStore(work, shop, now),
    printed: sqlPrintedStore(work, shop, sources),
    runs: sqlRunStore(work, shop, now),
    loggers: sqlLoggerStore(work, shop, now),
  };
}
