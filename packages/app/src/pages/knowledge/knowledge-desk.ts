import type { SavedShopFile } from '@furrow/contract';
import { type Issue, newTrials, readTrials } from '@furrow/engine';
import { saveTrials } from '../../api/index.ts';
import { createStore, type Store } from '../../ui/store/index.ts';

/** What the page shows of the shop's trials. */
export interface KnowledgeState {
  readonly saved: SavedShopFile;
  /** What came of the last change, in words. */
  readonly message: string;
  readonly trouble: string | undefined;
  readonly saving: boolean;
}

/** The shop's trials, changed one entry at a time; every change is saved at once. */
export interface KnowledgeDesk {
  readonly store: Store<KnowledgeState>;
  /** Makes a change and saves it; what is wrong with it otherwise, empty where only the server did not take it. */
  readonly apply: (change: TrialsChange) => Promise<readonly Issue[] | undefined>;
}

/** A change of the trials. */
export interface TrialsChange {
  /** The text with the change, given the text as it is saved. */
  readonly edit: (text: string) => string;
  /** What to say once it is done. */
  readonly done: string;
  /** Name of the shop, where nothing is saved yet. */
  readonly shop: string;
}

/** Opens the trials as they are saved. */
export function openKnowledgeDesk(saved: SavedShopFile): KnowledgeDesk {
  const store = createStore<KnowledgeState>({ saved, message: '', trouble: undefined, saving: false });
  const send = async ({ edit, shop }: TrialsChange, from: SavedShopFile) => {
    const text = edit(from.text === '' ? newTrials(shop) : from.text);
    const read = readTrials(text);
    if (!read.ok) return { issues: read.issues };
    return { reply: await saveTrials(text, from.revision_number) };
  };
  return {
    store,
    async apply(change) {
      if (store.get().saving) return [];
      store.set({ saving: true, trouble: undefined, message: '' });
      let sent = await send(change, store.get().saved);
      // somebody else saved meanwhile: the change is made anew upon what they saved
      const newer = sent.reply?.ok === false ? sent.reply.failure.newerTrials : undefined;
      if (newer !== undefined) sent = await send(change, newer);
      const { reply, issues } = sent;
      if (reply?.ok === true) {
        store.set({ saved: reply.value, message: change.done, saving: false });
        return undefined;
      }
      store.set({ saving: false, trouble: reply?.failure.message });
      return issues ?? [];
    },
  };
}
