import type { SavedShopFile } from '@furrow/contract';
import { type ReadKit, readKit, type UnitSystem } from '@furrow/engine';
import { saveKit } from '../../api/index.ts';
import { editFile, kitFile, type TextFile } from '../../sheet/document/index.ts';
import { createPast, type Sheet } from '../../sheet/index.ts';
import { draftOf, type Keep, type KeptSheetState, keepText, openText } from '../../sheet/keep/index.ts';
import { createStore, type Store } from '../../ui/store/index.ts';

/** Under what name the unsaved kit is kept in the browser. */
const DRAFT = 'kit';

/** The kit as it is filled in, and where it stands between page and store. */
export interface KitState extends KeptSheetState<SavedShopFile> {
  /** The kit as read the last time it could be read. */
  readonly read: ReadKit | undefined;
}

/** The shop's kit, opened to be filled in. */
export interface KitDesk extends Sheet, Pick<Keep<SavedShopFile>, 'settle' | 'discard'> {
  readonly store: Store<KitState>;
  /** Saves; whether it was saved. */
  readonly save: () => Promise<boolean>;
  /** Tells mistakes in other units from now on. */
  readonly setUnits: (units: UnitSystem) => void;
}

/** Opens the kit as it is saved, with the unsaved changes of an earlier visit. */
export function openKitDesk(saved: SavedShopFile, memory: Storage, shown: UnitSystem): KitDesk {
  let units = shown;
  const { text, kept } = openText(saved.text, saved, draftOf(memory, DRAFT));
  const start = kitFile(text);
  const store = createStore<KitState>({
    ...kept,
    read: undefined,
    ...readingOf(start, units),
    file: start,
    readable: start,
    editRefused: undefined,
    undoable: 0,
  });
  const past = createPast();
  const take = (file: TextFile): void => {
    const { readable, read } = store.get();
    store.set({
      read,
      ...readingOf(file, units),
      file,
      readable: file.broken ? readable : file,
      editRefused: undefined,
      undoable: past.depth(),
    });
    keep.changed();
  };
  const keep = keepText<SavedShopFile>(store, {
    put: (next) => take(kitFile(next)),
    send: saveKit,
    newerOf: ({ newerKit }) => newerKit,
    memory,
    key: () => DRAFT,
  });
  return {
    noun: 'kit',
    store,
    change(edits) {
      const edited = editFile(store.get().file, edits);
      if (!edited.ok) return store.set({ editRefused: edited.why });
      past.keep(store.get().file.text, 'form');
      take(edited.file);
    },
    setText(next) {
      past.keep(store.get().file.text, 'text');
      take(kitFile(next));
    },
    undo() {
      const text = past.back();
      if (text !== undefined) take(kitFile(text));
    },
    save: async () => (await keep.save()) !== undefined,
    settle: keep.settle,
    discard: keep.discard,
    setUnits(next) {
      if (next === units) return;
      units = next;
      store.set(readingOf(store.get().file, units));
    },
  };
}

/** What a kit is read as, or what is wrong with it; a kit that is not begun yet has nothing wrong. */
function readingOf(
  file: TextFile,
  units: UnitSystem,
): Pick<KitState, 'issues'> & Partial<Pick<KitState, 'read'>> {
  const outcome = readKit(file.text, units);
  if (outcome.ok) return { read: outcome.value, issues: [] };
  return { issues: file.text.trim() === '' ? [] : outcome.issues };
}
