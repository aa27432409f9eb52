import { commissioningSaveSchema } from '@furrow/contract';
import { z } from 'zod';
import { draftOf, dropDraft, keepDraft } from '../../sheet/keep/index.ts';
import { mergeRecords } from './merge-records.ts';
import { entriesOf, NOTHING_ENTERED, type RigRecord, recordOf } from './rig-record.ts';

/** Unsaved changes kept in this browser, with what they were made from. */
export interface RigDraft {
  readonly record: RigRecord;
  readonly base: RigRecord;
  readonly based_on: number;
}

const entriesSchema = commissioningSaveSchema.omit({ based_on: true });
const draftSchema = z.object({ mine: entriesSchema, base: entriesSchema });

/** Under what name the unsaved record of a job's rig is kept. */
export function rigKey(job: string): string {
  return `rig.${job}`;
}

/** What of the record is kept, so that a reload or a flat battery loses nothing. */
export function draftText({ record, base }: Pick<RigDraft, 'record' | 'base'>): string {
  return JSON.stringify({ mine: entriesOf(record), base: entriesOf(base) });
}

/** What an earlier visit left unsaved; undefined if there is nothing or it cannot be read. */
export function rigDraftOf(memory: Storage, job: string): RigDraft | undefined {
  const draft = draftOf(memory, rigKey(job));
  if (draft === undefined) return undefined;
  try {
    const kept = draftSchema.safeParse(JSON.parse(draft.text));
    if (!kept.success) return undefined;
    const { mine, base } = kept.data;
    return { record: recordOf(mine), base: recordOf(base), based_on: draft.based_on };
  } catch {
    return undefined;
  }
}

/** Hands what was kept before the job was saved over to the saved one, unless that has unsaved changes of its own. */
export function moveRigDraft(memory: Storage, from: string, job: string): void {
  const draft = rigDraftOf(memory, from);
  if (draft === undefined || rigDraftOf(memory, job) !== undefined) return;
  // what stood there before anything was entered, such as the made-up readings of a demo, is nobody's and stays behind
  const { content: record } = mergeRecords(draft.base, draft.record, NOTHING_ENTERED);
  const text = draftText({ record, base: NOTHING_ENTERED });
  keepDraft(memory, rigKey(job), { text, based_on: draft.based_on });
  dropDraft(memory, rigKey(from));
}
