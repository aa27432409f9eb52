import type { Reply } from '../../api/index.ts';
import type { Store } from '../../ui/store/index.ts';
import { type Draft, dropDraft, keepDraft } from './draft.ts';
import { holdDraft } from './held-drafts.ts';
import type { KeepState, Revised } from './keep-state.ts';

/** How content of a kind is held and sent. */
export interface KeepTools<Content, Saved> {
  /** The content as it stands on the page. */
  readonly mine: () => Content;
  /** Puts other content on the page. */
  readonly put: (content: Content) => void;
  readonly same: (one: Content, other: Content) => boolean;
  readonly contentOf: (saved: Saved) => Content;
  /** Saves as the next revision, or anew where there is nothing to save upon; left out where nothing can be saved yet. */
  readonly send?: (content: Content, basedOn: number, to: Saved | undefined) => Promise<Reply<Saved>>;
  readonly memory: Storage;
  /** Under what name unsaved changes are kept in the browser. */
  readonly key: () => string;
  /** What is kept there. */
  readonly draft: () => Omit<Draft, 'based_on'>;
  /** Brings two changes of one base together; where both changed an entry, the first wins. Content without it is one entry. */
  readonly merge?: (base: Content, mine: Content, theirs: Content) => Merged<Content>;
  /** Calls back after a while unless the returned function is called before; content with it is saved by itself. */
  readonly later?: (what: () => void, milliseconds: number) => () => void;
}

/** Two changes brought together. */
export interface Merged<Content> {
  readonly content: Content;
  /** Entries that both changed, each in another way. */
  readonly clashes: readonly string[];
}

/** Keeps content in browser and store. */
export interface Keep<Saved> {
  /** To be called after each change of the content. */
  readonly changed: () => void;
  /** Saves, on request as a new thing; what was saved, or undefined if it was not. */
  readonly save: (asNew?: boolean) => Promise<Saved | undefined>;
  /** Ends a conflict: what both changed stays as it is here, or becomes as it is saved. */
  readonly settle: (keep: 'mine' | 'theirs') => Promise<void>;
  /** Gives up unsaved changes. */
  readonly discard: () => void;
  readonly close: () => void;
}

/** Time in which a person goes on typing [ms]. */
const PAUSE = 900;
/** Time until a save that failed is tried again [ms]. */
const AGAIN = 15_000;
/** Times that a save is tried because somebody else saved in between [-]. */
const ROUNDS = 3;

/**
 * Keeps what a page fills in: unsaved changes in the browser, saves upon the revision they were made from, and nobody
 * else's change overwritten unasked. A save that was sent and not answered is no change of somebody else.
 */
export function keepContent<Content, Saved extends Revised>(
  store: Store<KeepState<Content, Saved>>,
  tools: KeepTools<Content, Saved>,
): Keep<Saved> {
  const { mine, put, same, contentOf, send, memory, key, draft, merge, later } = tools;
  /** Sent and not answered: it may be saved all the same. */
  let unanswered: readonly Content[] = [];
  let cancel = (): void => {};
  let closed = false;

  const unsaved = (): boolean => !same(mine(), store.get().base);
  const plan = (milliseconds: number): void => {
    cancel();
    if (later !== undefined && send !== undefined && !closed) cancel = later(() => void save(), milliseconds);
  };
  const remember = (): void => {
    if (unsaved()) keepDraft(memory, key(), { ...draft(), based_on: store.get().revision });
    else dropDraft(memory, key());
  };
  /** Takes what the store has as the base from now on, with what stands here, or other content, on top of it. */
  const rebase = (saved: Saved, content = mine()): void => {
    dropDraft(memory, key());
    store.set({ saved, base: contentOf(saved), revision: saved.revision_number });
    if (content !== mine()) put(content);
    remember();
  };
  const fail = (why: string, unreached?: true): void => {
    store.set({ save: { is: 'failed', why, ...(unreached && { unreached }) } });
    plan(AGAIN);
  };

  const save = async (asNew = false): Promise<Saved | undefined> => {
    cancel();
    const before = store.get();
    if (send === undefined || before.save.is === 'saving') return undefined;
    // what is saved by itself is sent when there is something to send, and not over a conflict
    if (later !== undefined && (before.newer !== undefined || !unsaved())) return undefined;
    store.set({ save: { is: 'saving' } });
    for (let round = 0; round < ROUNDS; round += 1) {
      const { saved, revision } = store.get();
      const content = mine();
      const sent = unanswered;
      unanswered = [...sent, content];
      const reply = await (asNew && round === 0
        ? send(content, 0, undefined)
        : send(content, revision, saved));
      if (reply.ok) {
        unanswered = [];
        rebase(reply.value);
        store.set({ save: { is: 'still' }, newer: undefined, restored: false });
        if (unsaved()) plan(PAUSE);
        return reply.value;
      }
      const { newer } = reply.failure;
      if (newer === undefined) {
        store.set({ newer });
        fail(reply.failure.message, reply.failure.unreached);
        return undefined;
      }
      unanswered = [];
      const theirs = contentOf(newer);
      // what another tab of this browser sent of the same draft is no change of somebody else either
      const own = [...sent, mine()].some((one) => same(one, theirs));
      if (own && same(mine(), theirs)) {
        rebase(newer);
        store.set({ save: { is: 'still' }, newer: undefined, restored: false });
        return newer;
      }
      const merged = own ? { content: mine(), clashes: [] } : merge?.(store.get().base, mine(), theirs);
      if (merged === undefined || merged.clashes.length > 0) {
        store.set({
          save: { is: 'failed', why: reply.failure.message },
          newer: { saved: newer, clashes: merged?.clashes ?? [] },
        });
        return undefined;
      }
      rebase(newer, merged.content);
    }
    fail('Somebody else keeps saving at the same time.');
    return undefined;
  };

  const held = later === undefined ? undefined : holdDraft(key());
  if (unsaved()) plan(PAUSE);
  else dropDraft(memory, key());
  return {
    changed() {
      const { save: last, newer } = store.get();
      remember();
      if (later === undefined && last.is === 'failed') store.set({ save: { is: 'still' } });
      if (newer === undefined) plan(PAUSE);
    },
    save,
    async settle(keep) {
      const { newer, base, save: last } = store.get();
      if (newer === undefined || last.is === 'saving') return;
      const theirs = contentOf(newer.saved);
      const [first, second] = keep === 'mine' ? [mine(), theirs] : [theirs, mine()];
      const content = merge?.(base, first, second).content ?? first;
      store.set({ newer: undefined, save: { is: 'still' }, restored: false });
      rebase(newer.saved, content);
      if (unsaved()) await save();
    },
    discard() {
      store.set({ restored: false });
      put(store.get().base);
    },
    close() {
      if (!closed) held?.();
      closed = true;
      cancel();
    },
  };
}
