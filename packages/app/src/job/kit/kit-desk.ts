import type { SavedShopFile } from '@furrow/contract';
import { type ReadKit, readKit, type UnitSystem } from '@furrow/engine';
import { saveKit } from '../../api/index.ts';
import { kitFile, type TextFile } from '../../sheet/document/index.ts';
import type { Sheet } from '../../sheet/index.ts';
import {
  draftOf,
  type Keep,
  type KeptSheetState,
  keepSheet,
  openedSheet,
  openText,
} from '../../sheet/keep/index.ts';
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
  const start = openedSheet(openText(saved.text, saved, draftOf(memory, DRAFT)), kitFile);
  const store = createStore<KitState>({ read: undefined, ...start, ...readingOf(start.file, units) });
  const sheet = keepSheet<SavedShopFile>(store, {
    noun: 'kit',
    fileOf: kitFile,
    readAs: (file) => readingOf(file, units),
    send: saveKit,
    memory,
    key: () => DRAFT,
  });
  return {
    ...sheet,
    store,
    save: async () => (await sheet.save()) !== undefined,
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
