import type { SavedShopFile } from '@furrow/contract';
import { type ReadReadings, readReadings } from '@furrow/engine';
import { readingsFile } from '../../sheet/document/index.ts';
import {
  draftOf,
  dropDraft,
  type KeptReadState,
  type KeptSheet,
  type KeptSheetTools,
  keepDraft,
  openKeptSheet,
} from '../../sheet/keep/index.ts';

/** What was run and gauged as it is filled in, and where it stands between page and store. */
export type ReadingsState = KeptReadState<ReadReadings>;

/** What was run and gauged on a job, opened to be filled in; each change is saved by itself. */
export type ReadingsDesk = KeptSheet<ReadReadings>;

/** Opens what was run and gauged; the job by its id, or by the name of its draft as long as it is not saved. */
export function openReadings(
  job: string,
  saved: SavedShopFile | undefined,
  start: string,
  tools: KeptSheetTools,
): ReadingsDesk {
  return openKeptSheet(
    {
      noun: 'readings',
      key: readingsKey(job),
      fileOf: readingsFile,
      read: readReadings,
    },
    saved,
    start,
    tools,
  );
}

/** Under what name the unsaved readings of a job are kept in the browser. */
function readingsKey(job: string): string {
  return `readings.${job}`;
}

/** Hands what was entered before the job was saved over to the saved one, unless that has unsaved changes of its own. */
export function moveReadings(memory: Storage, from: string, job: string): void {
  const draft = draftOf(memory, readingsKey(from));
  if (draft === undefined || draftOf(memory, readingsKey(job)) !== undefined) return;
  keepDraft(memory, readingsKey(job), { ...draft, based_on: 0 });
  dropDraft(memory, readingsKey(from));
}
