import type { Commissioning, CommissioningSave } from '@furrow/contract';
import type { Reply } from '../../api/index.ts';
import { type Keep, type KeepState, keepContent, openedState } from '../../sheet/keep/index.ts';
import { createStore, type Store } from '../../ui/store/index.ts';
import { mergeRecords, sameRecord } from './merge-records.ts';
import { draftText, type RigDraft, rigKey } from './rig-draft.ts';
import {
  entriesOf,
  NOTHING_ENTERED,
  type RigFinding,
  type RigReading,
  type RigRecord,
  savedRecord,
} from './rig-record.ts';

/** What stands at the rig, and what of it is saved. */
export interface RigState extends KeepState<RigRecord, Commissioning> {
  readonly record: RigRecord;
}

/** The record of a rig: what can be entered, and how it comes to be saved. */
export interface Rig extends Pick<Keep<Commissioning>, 'settle' | 'close'> {
  readonly store: Store<RigState>;
  readonly tick: (connection: string, done: boolean) => void;
  /** Takes a reading down; without text and note there is none. */
  readonly read: (check: string, reading: RigReading) => void;
  readonly find: (finding: RigFinding) => void;
  readonly forget: (finding: string) => void;
  readonly saveNow: () => Promise<void>;
}

/** What a rig uses of the world around it. */
export interface RigTools {
  /** Saves with the job; left out as long as the job is not saved: what is entered is kept in the browser then. */
  readonly send?: (save: CommissioningSave) => Promise<Reply<Commissioning>>;
  readonly memory: Storage;
  /** Calls back after a while unless the returned function is called before. */
  readonly later: (what: () => void, milliseconds: number) => () => void;
}

/** Whether something is entered that is not saved. */
export function isRigUnsaved({ record, base }: RigState): boolean {
  return !sameRecord(record, base);
}

/**
 * Opens the record of a job's rig; the job by its id, or by the name of its draft as long as it is not saved. Where nothing
 * is saved it begins with `start`, which is not taken for something entered.
 */
export function openRig(
  job: string,
  saved: Commissioning | undefined,
  draft: RigDraft | undefined,
  tools: RigTools,
  start: RigRecord = NOTHING_ENTERED,
): Rig {
  const { send, memory, later } = tools;
  const asSaved = saved === undefined ? start : savedRecord(saved);
  const store = createStore<RigState>({
    ...openedState({
      saved,
      base: draft?.base ?? asSaved,
      revision: draft?.based_on ?? saved?.revision_number ?? 0,
      restored: draft !== undefined,
    }),
    record: draft?.record ?? asSaved,
  });
  const keep = keepContent<RigRecord, Commissioning>(store, {
    mine: () => store.get().record,
    put: (record) => store.set({ record }),
    same: sameRecord,
    contentOf: savedRecord,
    ...(send !== undefined && {
      send: (record, basedOn) => send({ ...entriesOf(record), based_on: basedOn }),
    }),
    memory,
    key: () => rigKey(job),
    draft: () => ({ text: draftText(store.get()) }),
    merge: mergeRecords,
    later,
  });
  const enter = (change: Partial<RigRecord>): void => {
    store.set({ record: { ...store.get().record, ...change } });
    keep.changed();
  };
  return {
    store,
    tick(connection, done) {
      const { [connection]: _, ...others } = store.get().record.ticks;
      enter({ ticks: done ? { ...others, [connection]: true } : others });
    },
    read(check, reading) {
      const { [check]: _, ...others } = store.get().record.readings;
      const empty = reading.text.trim() === '' && reading.note.trim() === '';
      enter({ readings: empty ? others : { ...others, [check]: reading } });
    },
    find: (finding) => enter({ findings: { ...store.get().record.findings, [finding.id]: finding } }),
    forget(id) {
      const { [id]: _, ...others } = store.get().record.findings;
      enter({ findings: others });
    },
    saveNow: async () => void (await keep.save()),
    settle: keep.settle,
    close: keep.close,
  };
}
