import type { Database } from './database/database.ts';
import { documentTable } from './document/document-table.ts';
import { sqlFaultCaseStore } from './fault/sql-fault-case-store.ts';
import { type Actor, NOBODY } from './history/change.ts';
import { sqlHistoryStore } from './history/history-store.ts';
import { workOn } from './history/work.ts';
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
export function sqlStore(
  database: Database,
  sources: StoreSources,
  shop = THE_SHOP,
  who: Actor = NOBODY,
): Store {
  const { now } = sources;
  const work = workOn(database, { shop, who, now });
  const rigs = documentTable(work, 'rig');
  const readings = documentTable(work, 'readings');
  return {
    by: (actor) => sqlStore(database, sources, shop, actor),
    ...sqlJobStore(database, work, sources, async (turn, id) => {
      await rigs.erase(turn, id);
      await readings.erase(turn, id);
      await erasePrinted(turn, shop, id);
      await eraseRuns(turn, shop, id);
    }),
    history: sqlHistoryStore(work),
    kit: sqlShopFileStore(work, 'kit', now),
    commissioning: sqlCommissioningStore(work, now),
    knowledge: sqlShopFileStore(work, 'knowledge', now),
    gauge: sqlShopFileStore(work, 'gauge', now),
    readings: sqlReadingsStore(work, now),
    faultCases: sqlFaultCaseStore(work, now),
    printed: sqlPrintedStore(work, sources),
    runs: sqlRunStore(work, now),
    loggers: sqlLoggerStore(work, now),
  };
}
