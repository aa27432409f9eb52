import { commissioningSaveSchema } from '@furrow/contract';
import { z } from 'zod';
import { draftOf, dropDraft, keepDraft } from '../../job/state/index.ts';
import { entriesOf, type RigRecord, recordOf } from './rig-record.ts';

/** Unsaved changes kept in this browser, with what they were made from. */
export interface RigDraft {
  readonly record: RigRecord;
  readonly base: RigRecord;
  readonly based_on: number;
}

const entriesSchema = commissioningSaveSchema.omit({ based_on: true });
const draftSchema = z.object({ mine: entriesSchema, base: entriesSchema });

function keyOf(job: string): string {
  return `rig.${job}`;
}

/** Keeps what is not saved yet, so that a reload or a flat battery loses nothing. */
export function keepRigDraft(memory: Storage, job: string, { record, base, based_on }: RigDraft): void {
  const text = JSON.stringify({ mine: entriesOf(record), base: entriesOf(base) });
  keepDraft(memory, keyOf(job), { text, based_on });
}

/** What an earlier visit left unsaved; undefined if there is nothing or it cannot be read. */
export function rigDraftOf(memory: Storage, job: string): RigDraft | undefined {
  const draft = draftOf(memory, keyOf(job));
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
  keepRigDraft(memory, job, draft);
  dropRigDraft(memory, from);
}

/** Forgets what was kept. */
export function dropRigDraft(memory: Storage, job: string): void {
  dropDraft(memory, keyOf(job));
}
