import type { SavedShopFile } from '@furrow/contract';
import { type ReadKit, readKit } from '@furrow/engine';
import { saveKit } from '../../api/index.ts';
import { editFile, kitFile, type TextFile } from '../../sheet/document/index.ts';
import type { Sheet, SheetState } from '../../sheet/index.ts';
import { createStore, type Store } from '../../ui/store/index.ts';
import { draftOf, dropDraft, keepDraft } from '../state/index.ts';

/** Under what name the unsaved kit is kept in the browser. */
const DRAFT = 'kit';

/** How the last attempt to save went. */
export type KitSaveState =
  | { readonly is: 'still' }
  | { readonly is: 'saving' }
  | { readonly is: 'failed'; readonly why: string };

/** The kit as it is filled in, and where it stands between page and store. */
export interface KitState extends SheetState {
  /** The kit as read the last time it could be read. */
  readonly read: ReadKit | undefined;
  /** Revision that the text was made from; 0 as long as none is saved. */
  readonly revision: number;
  /** Text of that revision. */
  readonly savedText: string;
  readonly save: KitSaveState;
  /** The kit that somebody else saved meanwhile. */
  readonly newer: SavedShopFile | undefined;
  /** Whether unsaved changes of an earlier visit were put back. */
  readonly restored: boolean;
}

/** The shop's kit, opened to be filled in. */
export interface KitDesk extends Sheet {
  readonly store: Store<KitState>;
  /** Saves; with `overwrite` even where somebody else saved meanwhile. */
  readonly save: (overwrite?: boolean) => Promise<boolean>;
  /** Gives up unsaved changes for what is saved. */
  readonly discard: () => void;
}

/** Whether the text differs from what is saved. */
export function isKitUnsaved(state: KitState): boolean {
  return state.file.text !== state.savedText;
}

/** Opens the kit as it is saved, with the unsaved changes of an earlier visit. */
export function openKitDesk(saved: SavedShopFile, memory: Storage): KitDesk {
  const draft = draftOf(memory, DRAFT);
  const restored = draft !== undefined && draft.text !== saved.text;
  const start = kitFile(restored ? draft.text : saved.text);
  const outcome = readKit(start.text);
  const store = createStore<KitState>({
    file: start,
    readable: start,
    issues: issuesOf(start),
    editRefused: undefined,
    read: outcome.ok ? outcome.value : undefined,
    // a draft made from an older revision stays based on it, so that saving it tells of the newer one
    revision: restored ? Math.min(draft.based_on, saved.revision_number) : saved.revision_number,
    savedText: saved.text,
    save: { is: 'still' },
    newer: undefined,
    restored,
  });

  /** Texts that were sent and not answered: they may be saved all the same, and are no change of somebody else. */
  let unanswered: readonly string[] = [];
  const remember = (): void => {
    const state = store.get();
    if (isKitUnsaved(state)) keepDraft(memory, DRAFT, { text: state.file.text, based_on: state.revision });
    else dropDraft(memory, DRAFT);
  };
  const take = (file: TextFile): void => {
    const state = store.get();
    const read = readKit(file.text);
    store.set({
      file,
      readable: file.broken ? state.readable : file,
      issues: issuesOf(file),
      editRefused: undefined,
      read: read.ok ? read.value : state.read,
      ...(state.save.is === 'failed' ? { save: { is: 'still' } as const } : {}),
    });
    remember();
  };
  const settled = (kit: SavedShopFile): void => {
    store.set({
      revision: kit.revision_number,
      savedText: kit.text,
      save: { is: 'still' },
      newer: undefined,
      restored: false,
    });
    remember();
  };

  return {
    noun: 'kit',
    store,
    change(edits) {
      const edited = editFile(store.get().file, edits);
      if (edited.ok) take(edited.file);
      else store.set({ editRefused: edited.why });
    },
    setText: (text) => take(kitFile(text)),
    async save(overwrite = false) {
      const { file, revision, save, newer } = store.get();
      if (save.is === 'saving') return false;
      store.set({ save: { is: 'saving' } });
      const sent = unanswered;
      unanswered = [...sent, file.text];
      let reply = await saveKit(file.text, overwrite ? (newer?.revision_number ?? revision) : revision);
      const met = reply.ok ? undefined : reply.failure.newerKit;
      if (met !== undefined && sent.includes(met.text)) {
        reply = await saveKit(file.text, met.revision_number);
      }
      if (reply.ok || reply.failure.newerKit !== undefined) unanswered = [];
      if (reply.ok) {
        settled(reply.value);
        return true;
      }
      const { message, newerKit } = reply.failure;
      store.set({ save: { is: 'failed', why: message }, newer: newerKit });
      return false;
    },
    discard() {
      const { newer, savedText } = store.get();
      if (newer !== undefined) settled(newer);
      store.set({ restored: false });
      take(kitFile(newer?.text ?? savedText));
    },
  };
}

/** What is wrong with a kit; a kit that is not begun yet has nothing wrong. */
function issuesOf(file: TextFile): KitState['issues'] {
  if (file.text.trim() === '') return [];
  const outcome = readKit(file.text);
  return outcome.ok ? [] : outcome.issues;
}
