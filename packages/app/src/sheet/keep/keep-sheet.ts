import type { Store } from '../../ui/store/index.ts';
import { editFile, type TextFile } from '../document/index.ts';
import { createPast } from '../past.ts';
import type { Sheet, SheetState } from '../sheet.ts';
import type { Draft } from './draft.ts';
import { type Keep, type KeepTools, keepContent } from './keep.ts';
import type { KeptSheetState, OpenedText, SavedText } from './keep-text.ts';

/** How a kind of file is read, shown and sent. */
export interface SheetTools<Saved>
  extends Pick<KeepTools<string, Saved>, 'memory' | 'key' | 'later' | 'send'>,
    Pick<Sheet, 'noun'> {
  readonly fileOf: (text: string) => TextFile;
  /** What is wrong with the file, and whatever else the state holds of what it says. */
  readonly readAs: (file: TextFile) => Pick<SheetState, 'issues'>;
  /** What follows once a file stands on the page; nothing where left out. */
  readonly taken?: () => void;
  /** What is kept in the browser beside the text. */
  readonly mark?: () => Pick<Draft, 'demo'>;
}

/** A file that is filled in, and kept. */
export interface SheetKeep<Saved> extends Sheet, Pick<Keep<Saved>, 'save' | 'settle' | 'discard' | 'close'> {
  /** Reads the file again as it stands. */
  readonly readAgain: () => void;
}

/** Where a file stands on the page that is just opened; what it says is still to be read. */
export function openedSheet<Saved>(
  { text, kept }: OpenedText<Saved>,
  fileOf: (text: string) => TextFile,
): Omit<KeptSheetState<Saved>, 'issues'> {
  const file = fileOf(text);
  return { ...kept, file, readable: file, editRefused: undefined, undoable: 0 };
}

/** Fills in a file by its form or as text, takes changes back, and keeps it: for every kind of file. */
export function keepSheet<Saved extends SavedText>(
  store: Store<KeptSheetState<Saved>>,
  tools: SheetTools<Saved>,
): SheetKeep<Saved> {
  const { noun, fileOf, readAs, taken, mark, ...kept } = tools;
  const past = createPast();
  const text = (): string => store.get().file.text;
  const take = (file: TextFile): void => {
    const { readable } = store.get();
    store.set({
      ...readAs(file),
      file,
      readable: file.broken ? readable : file,
      editRefused: undefined,
      undoable: past.depth(),
    });
    taken?.();
    keep.changed();
  };
  const keep = keepContent<string, Saved>(store, {
    ...kept,
    mine: text,
    put: (next) => take(fileOf(next)),
    same: (one, other) => one === other,
    contentOf: (saved) => saved.text,
    draft: () => ({ text: text(), ...mark?.() }),
  });
  return {
    noun,
    store,
    change(edits) {
      const edited = editFile(store.get().file, edits);
      if (!edited.ok) return store.set({ editRefused: edited.why });
      past.keep(text(), 'form');
      take(edited.file);
    },
    setText(next) {
      past.keep(text(), 'text');
      take(fileOf(next));
    },
    undo() {
      const before = past.back();
      if (before !== undefined) take(fileOf(before));
    },
    readAgain: () => take(store.get().file),
    save: keep.save,
    settle: keep.settle,
    discard: keep.discard,
    close: keep.close,
  };
}
