import type { SavedShopFile } from '@furrow/contract';
import { type ReadReadings, readReadings } from '@furrow/engine';
import type { Reply } from '../../api/index.ts';
import { editFile, readingsFile, type TextFile } from '../../sheet/document/index.ts';
import { createPast, type Sheet } from '../../sheet/index.ts';
import {
  draftOf,
  dropDraft,
  type Keep,
  type KeptSheetState,
  keepDraft,
  keepText,
  openText,
} from '../../sheet/keep/index.ts';
import { createStore, type Store } from '../../ui/store/index.ts';

/** What was run and gauged as it is filled in, and where it stands between page and store. */
export interface ReadingsState extends KeptSheetState<SavedShopFile> {
  /** As it could be read the last time; undefined as long as nothing is written. */
  readonly read: ReadReadings | undefined;
}

/** What was run and gauged on a job, opened to be filled in; each change is saved by itself. */
export interface ReadingsDesk extends Sheet, Pick<Keep<SavedShopFile>, 'settle' | 'discard' | 'close'> {
  readonly store: Store<ReadingsState>;
  readonly saveNow: () => Promise<void>;
}

/** What a desk uses of the world around it. */
export interface ReadingsTools {
  /** Saves with the job; left out as long as the job is not saved: what is entered is kept in the browser then. */
  readonly send?: (text: string, basedOn: number) => Promise<Reply<SavedShopFile>>;
  readonly memory: Storage;
  /** Calls back after a while unless the returned function is called before. */
  readonly later: (what: () => void, milliseconds: number) => () => void;
}

/** Opens what was run and gauged; the job by its id, or by the name of its draft as long as it is not saved. */
export function openReadings(
  job: string,
  saved: SavedShopFile | undefined,
  start: string,
  { send, memory, later }: ReadingsTools,
): ReadingsDesk {
  const key = readingsKey(job);
  const kept = saved !== undefined && saved.revision_number > 0 ? saved : undefined;
  const opened = openText(kept?.text ?? start, kept, draftOf(memory, key));
  const file = readingsFile(opened.text);
  const store = createStore<ReadingsState>({
    ...opened.kept,
    read: undefined,
    ...readingOf(file),
    file,
    readable: file,
    editRefused: undefined,
    undoable: 0,
  });
  const past = createPast();
  const take = (next: TextFile): void => {
    const { readable, read } = store.get();
    store.set({
      read,
      ...readingOf(next),
      file: next,
      readable: next.broken ? readable : next,
      editRefused: undefined,
      undoable: past.depth(),
    });
    keep.changed();
  };
  const keep = keepText<SavedShopFile>(store, {
    put: (text) => take(readingsFile(text)),
    ...(send !== undefined && { send }),
    newerOf: ({ newerReadings }) => newerReadings,
    memory,
    key: () => key,
    later,
  });
  return {
    noun: 'readings',
    store,
    change(edits) {
      const edited = editFile(store.get().file, edits);
      if (!edited.ok) return store.set({ editRefused: edited.why });
      past.keep(store.get().file.text, 'form');
      take(edited.file);
    },
    setText(text) {
      past.keep(store.get().file.text, 'text');
      take(readingsFile(text));
    },
    undo() {
      const text = past.back();
      if (text !== undefined) take(readingsFile(text));
    },
    saveNow: async () => void (await keep.save()),
    settle: keep.settle,
    discard: keep.discard,
    close: keep.close,
  };
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

/** What the text is read as, or what is wrong with it; an empty one has nothing wrong. */
function readingOf({ text }: TextFile): Pick<ReadingsState, 'issues'> & Partial<Pick<ReadingsState, 'read'>> {
  if (text.trim() === '') return { read: undefined, issues: [] };
  const outcome = readReadings(text);
  return outcome.ok ? { read: outcome.value, issues: [] } : { issues: outcome.issues };
}
