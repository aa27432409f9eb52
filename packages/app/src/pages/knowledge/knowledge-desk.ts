import type { SavedShopFile } from '@furrow/contract';
import { type Issue, newTrials, readTrials } from '@furrow/engine';
import { saveTrials } from '../../api/index.ts';
import { type KeepState, keepContent, openedState } from '../../sheet/keep/index.ts';
import { createStore, type Store } from '../../ui/store/index.ts';
import { TRIALS_DRAFT, trialsDraftOf, trialsDraftText, withNewEntries } from './kept-trials.ts';

/** What the page shows of the shop's trials. */
export interface KnowledgeState extends KeepState<string, SavedShopFile> {
  /** The file with the change that is being saved. */
  readonly text: string;
  /** What came of the last change, in words. */
  readonly message: string;
  readonly trouble: string | undefined;
}

/**
 * The shop's trials, changed one entry at a time; every change is saved at once. New entries that find no server are kept in the
 * browser, and saved by themselves.
 */
export interface KnowledgeDesk {
  readonly store: Store<KnowledgeState>;
  /** The trials as they were saved when they were opened. */
  readonly opened: SavedShopFile;
  /** Makes a change and saves it; what is wrong with it otherwise, empty where only the server did not take it. */
  readonly apply: (change: TrialsChange) => Promise<readonly Issue[] | undefined>;
  readonly saveNow: () => Promise<void>;
  readonly close: () => void;
}

/** A change of the trials. */
export interface TrialsChange {
  /** The text with the change, given the text as it is saved. */
  readonly edit: (text: string) => string;
  /** What to say once it is done. */
  readonly done: string;
  /** Name of the shop, where nothing is saved yet. */
  readonly shop: string;
  /** Whether it only adds entries: such a change is kept where nobody answers. */
  readonly adds?: boolean;
}

/** Whether entries wait to be sent. */
export function areTrialsUnsaved({ text, base }: KnowledgeState): boolean {
  return text !== base;
}

/** Opens the trials as they are saved, with the entries that an earlier visit could not send. */
export function openKnowledgeDesk(
  saved: SavedShopFile,
  memory: Storage,
  later?: (what: () => void, milliseconds: number) => () => void,
): KnowledgeDesk {
  const draft = trialsDraftOf(memory);
  const store = createStore<KnowledgeState>({
    ...openedState({
      saved,
      base: draft?.base ?? saved.text,
      revision: draft?.based_on ?? saved.revision_number,
      restored: draft !== undefined,
    }),
    text: draft?.text ?? saved.text,
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
    key: () => TRIALS_DRAFT,
    draft: () => ({ text: trialsDraftText(store.get()) }),
    ...(later !== undefined && { later }),
    // somebody else saved meanwhile: the change is made anew upon what they saved
    merge(base, mine, theirs) {
      if (latest === undefined || latest.adds === true)
        return { content: withNewEntries(base, mine, theirs, latest?.shop ?? 'our-shop'), clashes: [] };
      const content = edited(theirs);
      return { content, clashes: issues.map(({ path }) => path) };
    },
  });
  return {
    store,
    opened: saved,
    async apply(change) {
      const before = store.get();
      if (before.save.is === 'saving') return [];
      if (areTrialsUnsaved(before) && change.adds !== true) {
        store.set({ trouble: 'Entries wait to be sent: change what is saved once they are.', message: '' });
        return [];
      }
      latest = change;
      const next = edited(before.text);
      store.set({ trouble: undefined, message: '' });
      if (issues.length > 0) return issues;
      store.set({ text: next });
      if ((await keep.save()) !== undefined) {
        store.set({ message: change.done });
        return undefined;
      }
      const { save } = store.get();
      if (change.adds === true && save.is === 'failed' && save.unreached === true) {
        keep.changed();
        store.set({ message: change.done });
        return undefined;
      }
      store.set({
        trouble: save.is === 'failed' && issues.length === 0 ? save.why : undefined,
        newer: undefined,
        text: before.text,
      });
      keep.changed();
      return issues;
    },
    saveNow: async () => void (await keep.save()),
    close: keep.close,
  };
}
