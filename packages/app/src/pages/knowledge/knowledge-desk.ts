import type { SavedShopFile } from '@furrow/contract';
import { type Issue, newTrials, readTrials } from '@furrow/engine';
import { saveTrials } from '../../api/index.ts';
import { type KeepState, keepContent, openedState } from '../../sheet/keep/index.ts';
import { createStore, type Store } from '../../ui/store/index.ts';

/** Under what name a change on its way is kept in the browser. */
const DRAFT = 'trials';

/** What the page shows of the shop's trials. */
export interface KnowledgeState extends KeepState<string, SavedShopFile> {
  /** The file with the change that is being saved. */
  readonly text: string;
  /** What came of the last change, in words. */
  readonly message: string;
  readonly trouble: string | undefined;
}

/** The shop's trials, changed one entry at a time; every change is saved at once. */
export interface KnowledgeDesk {
  readonly store: Store<KnowledgeState>;
  /** The trials as they were saved when they were opened. */
  readonly opened: SavedShopFile;
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
export function openKnowledgeDesk(saved: SavedShopFile, memory: Storage): KnowledgeDesk {
  const { text, revision_number } = saved;
  const store = createStore<KnowledgeState>({
    ...openedState({ saved, base: text, revision: revision_number, restored: false }),
    text,
    message: '',
    trouble: undefined,
  });
  /** The change on its way. */
  let latest: TrialsChange | undefined;
  let issues: readonly Issue[] = [];
  const edited = (before: string): string => {
    if (latest === undefined) return before;
    const after = latest.edit(before === '' ? newTrials(latest.shop) : before);
    const read = readTrials(after);
    issues = read.ok ? [] : read.issues;
    return after;
  };
  const keep = keepContent<string, SavedShopFile>(store, {
    mine: () => store.get().text,
    put(next) {
      store.set({ text: next });
      keep.changed();
    },
    same: (one, other) => one === other,
    contentOf: (kept) => kept.text,
    send: saveTrials,
    memory,
    key: () => DRAFT,
    draft: () => ({ text: store.get().text }),
    // somebody else saved meanwhile: the change is made anew upon what they saved
    merge(_base, _mine, theirs) {
      const content = edited(theirs);
      return { content, clashes: issues.map(({ path }) => path) };
    },
  });
  return {
    store,
    opened: saved,
    async apply(change) {
      if (store.get().save.is === 'saving') return [];
      latest = change;
      const next = edited(store.get().base);
      store.set({ trouble: undefined, message: '' });
      if (issues.length > 0) return issues;
      store.set({ text: next });
      if ((await keep.save()) !== undefined) {
        store.set({ message: change.done });
        return undefined;
      }
      const { save } = store.get();
      store.set({ trouble: save.is === 'failed' && issues.length === 0 ? save.why : undefined });
      keep.discard();
      return issues;
    },
  };
}
