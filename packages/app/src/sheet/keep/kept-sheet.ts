import type { SavedShopFile } from '@furrow/contract';
import type { Issue } from '@furrow/engine';
import type { Reply } from '../../api/index.ts';
import { createStore, type Store } from '../../ui/store/index.ts';
import type { TextFile } from '../document/index.ts';
import type { Sheet } from '../sheet.ts';
import { draftOf } from './draft.ts';
import type { Keep } from './keep.ts';
import { keepSheet, openedSheet } from './keep-sheet.ts';
import { type KeptSheetState, openText } from './keep-text.ts';

/** A file that is filled in and saved by itself, and what it is read as. */
export interface KeptReadState<Read> extends KeptSheetState<SavedShopFile> {
  /** As it could be read the last time; undefined as long as nothing is written. */
  readonly read: Read | undefined;
}

/** A file opened to be filled in; each change is saved by itself. */
export interface KeptSheet<Read> extends Sheet, Pick<Keep<SavedShopFile>, 'settle' | 'discard' | 'close'> {
  readonly store: Store<KeptReadState<Read>>;
  readonly saveNow: () => Promise<void>;
}

/** What such a file uses of the world around it. */
export interface KeptSheetTools {
  /** Saves it; left out as long as there is nowhere to save it: what is entered is kept in the browser then. */
  readonly send?: (text: string, basedOn: number) => Promise<Reply<SavedShopFile>>;
  readonly memory: Storage;
  /** Calls back after a while unless the returned function is called before. */
  readonly later: (what: () => void, milliseconds: number) => () => void;
}

/** What sets one kind of such files apart. */
export interface KeptSheetKind<Read> {
  readonly noun: Sheet['noun'];
  /** Under what name what is not saved yet is kept in the browser. */
  readonly key: string;
  readonly fileOf: (text: string) => TextFile;
  /** What a text is read as, or what is wrong with it; not asked of an empty one. */
  readonly read: (
    text: string,
  ) =>
    | { readonly ok: true; readonly value: Read }
    | { readonly ok: false; readonly issues: readonly Issue[] };
}

/** Opens a file as it is saved, or as an earlier visit left it; `start` stands there as long as nothing was saved. */
export function openKeptSheet<Read>(
  { noun, key, fileOf, read: reader }: KeptSheetKind<Read>,
  saved: SavedShopFile | undefined,
  start: string,
  { send, memory, later }: KeptSheetTools,
): KeptSheet<Read> {
  const readingOf = ({
    text,
  }: TextFile): Pick<KeptReadState<Read>, 'issues'> & Partial<Pick<KeptReadState<Read>, 'read'>> => {
    // an empty text has nothing wrong
    if (text.trim() === '') return { read: undefined, issues: [] };
    const outcome = reader(text);
    return outcome.ok ? { read: outcome.value, issues: [] } : { issues: outcome.issues };
  };
  const kept = saved !== undefined && saved.revision_number > 0 ? saved : undefined;
  const opened = openedSheet(openText(kept?.text ?? start, kept, draftOf(memory, key)), fileOf);
  const store = createStore<KeptReadState<Read>>({ read: undefined, ...opened, ...readingOf(opened.file) });
  const sheet = keepSheet<SavedShopFile>(store, {
    noun,
    fileOf,
    readAs: readingOf,
    ...(send !== undefined && { send }),
    memory,
    key: () => key,
    later,
  });
  return { ...sheet, store, saveNow: async () => void (await sheet.save()) };
}
