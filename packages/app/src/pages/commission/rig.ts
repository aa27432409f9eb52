import type { Commissioning, CommissioningSave } from '@furrow/contract';
import type { Reply } from '../../api/index.ts';
import { createStore, type Store } from '../../ui/store/index.ts';
import { mergeRecords, sameRecord } from './merge-records.ts';
import { dropRigDraft, keepRigDraft, type RigDraft } from './rig-draft.ts';
import {
  entriesOf,
  NOTHING_ENTERED,
  type RigFinding,
  type RigReading,
  type RigRecord,
  savedRecord,
} from './rig-record.ts';

/** How the last attempt to save went. */
export type RigSave =
  | { readonly is: 'still' }
  | { readonly is: 'saving' }
  | { readonly is: 'failed'; readonly why: string }
  | { readonly is: 'clash'; readonly newer: Commissioning; readonly clashes: readonly string[] };

/** What stands at the rig, and what of it is saved. */
export interface RigState {
  readonly record: RigRecord;
  /** What the record was made from. */
  readonly base: RigRecord;
  /** Number of the revision it was made from; 0 where nothing was saved yet. */
  readonly revision: number;
  /** What the server had last, with the times of the entries; undefined as long as the job is not saved. */
  readonly saved: Commissioning | undefined;
  readonly save: RigSave;
}

/** The record of a rig: what can be entered, and how it comes to be saved. */
export interface Rig {
  readonly store: Store<RigState>;
  readonly tick: (connection: string, done: boolean) => void;
  /** Takes a reading down; without text and note there is none. */
  readonly read: (check: string, reading: RigReading) => void;
  readonly find: (finding: RigFinding) => void;
  readonly forget: (finding: string) => void;
  readonly saveNow: () => Promise<void>;
  /** Ends a clash: entries that both changed stay as they are here, or become as they are saved. */
  readonly settle: (keep: 'mine' | 'theirs') => Promise<void>;
  readonly close: () => void;
}

/** What a rig uses of the world around it. */
export interface RigTools {
  /** Saves with the job; left out as long as the job is not saved: what is entered is kept in the browser then. */
  readonly send?: (save: CommissioningSave) => Promise<Reply<Commissioning>>;
  readonly memory: Storage;
  /** Calls back after a while unless the returned function is called before. */
  readonly later: (what: () => void, milliseconds: number) => () => void;
}

/** Time in which a person goes on typing [ms]. */
const PAUSE = 900;
/** Time until a save that failed is tried again [ms]. */
const AGAIN = 15_000;
/** Times that a save is tried anew because somebody else saved in between [-]. */
const ROUNDS = 3;

/** Whether something is entered that is not saved. */
export function isRigUnsaved({ record, base }: RigState): boolean {
  return !sameRecord(record, base);
}

/** Opens the record of a job's rig; the job by its id, or by the name of its draft as long as it is not saved. */
export function openRig(
  job: string,
  saved: Commissioning | undefined,
  draft: RigDraft | undefined,
  tools: RigTools,
): Rig {
  const { send, memory, later } = tools;
  const asSaved = saved === undefined ? NOTHING_ENTERED : savedRecord(saved);
  const store = createStore<RigState>({
    record: draft?.record ?? asSaved,
    base: draft?.base ?? asSaved,
    revision: draft?.based_on ?? saved?.revision_number ?? 0,
    saved,
    save: { is: 'still' },
  });
  let cancel = (): void => {};
  let closed = false;

  const plan = (milliseconds: number): void => {
    cancel();
    if (!closed && send !== undefined) cancel = later(() => void saveNow(), milliseconds);
  };
  const remember = (): void => {
    const { record, base, revision } = store.get();
    if (isRigUnsaved(store.get())) keepRigDraft(memory, job, { record, base, based_on: revision });
    else dropRigDraft(memory, job);
  };
  const enter = (change: Partial<RigRecord>): void => {
    store.set({ record: { ...store.get().record, ...change } });
    remember();
    if (store.get().save.is !== 'clash') plan(PAUSE);
  };

  /** Takes what the server has as the base from now on, with what was entered here on top of it. */
  const rebase = (newer: Commissioning, mine: RigRecord): void => {
    store.set({ record: mine, base: savedRecord(newer), revision: newer.revision_number, saved: newer });
    remember();
  };
  const saveNow = async (): Promise<void> => {
    cancel();
    if (send === undefined) return;
    if (store.get().save.is === 'saving' || store.get().save.is === 'clash') return;
    if (!isRigUnsaved(store.get())) return;
    for (let round = 0; round < ROUNDS; round += 1) {
      const { record, revision } = store.get();
      store.set({ save: { is: 'saving' } });
      const reply = await send({ ...entriesOf(record), based_on: revision });
      if (reply.ok) {
        rebase(reply.value, store.get().record);
        store.set({ save: { is: 'still' } });
        if (isRigUnsaved(store.get())) plan(PAUSE);
        return;
      }
      const { message, newerRig } = reply.failure;
      if (newerRig === undefined) {
        store.set({ save: { is: 'failed', why: message } });
        plan(AGAIN);
        return;
      }
      const now = store.get();
      const merged = mergeRecords(now.base, now.record, savedRecord(newerRig));
      if (merged.clashes.length > 0) {
        store.set({ save: { is: 'clash', newer: newerRig, clashes: merged.clashes } });
        return;
      }
      rebase(newerRig, merged.record);
    }
    store.set({ save: { is: 'failed', why: 'Somebody else keeps saving at the same time.' } });
    plan(AGAIN);
  };

  if (isRigUnsaved(store.get())) plan(PAUSE);
  else dropRigDraft(memory, job);
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
    saveNow,
    async settle(keep) {
      const { save, base, record } = store.get();
      if (save.is !== 'clash') return;
      const theirs = savedRecord(save.newer);
      // the later argument gives way where both changed an entry
      const { record: settled } =
        keep === 'mine' ? mergeRecords(base, record, theirs) : mergeRecords(base, theirs, record);
      store.set({ save: { is: 'still' } });
      rebase(save.newer, settled);
      await saveNow();
    },
    close() {
      closed = true;
      cancel();
    },
  };
}
