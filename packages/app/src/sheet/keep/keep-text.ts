import type { SheetState } from '../sheet.ts';
import type { Draft } from './draft.ts';
import { type KeepState, openedState, type Revised } from './keep-state.ts';

/** Something saved as a text. */
export interface SavedText extends Revised {
  readonly text: string;
}

/** A file that is filled in, and where it stands between page and store. */
export interface KeptSheetState<Saved> extends SheetState, KeepState<string, Saved> {}

/** A text that is opened: as it is saved, or as an earlier visit left it. */
export interface OpenedText<Saved> {
  readonly text: string;
  readonly kept: KeepState<string, Saved>;
}

/** Opens a text; a draft made from an older revision stays based on it, so that saving it tells of the newer one. */
export function openText<Saved extends Revised>(
  text: string,
  saved: Saved | undefined,
  draft: Draft | undefined,
): OpenedText<Saved> {
  const revision = saved?.revision_number ?? 0;
  if (draft === undefined || draft.text === text) {
    return { text, kept: openedState({ saved, base: text, revision, restored: false }) };
  }
  const basedOn = Math.min(revision, draft.based_on);
  return { text: draft.text, kept: openedState({ saved, base: text, revision: basedOn, restored: true }) };
}

/** Whether the text differs from what it was made from. */
export function isUnsaved({ file, base }: Pick<KeptSheetState<unknown>, 'file' | 'base'>): boolean {
  return file.text !== base;
}

/** Where the text stands between page and store, in words. */
export function saveWords(state: KeptSheetState<unknown>): string {
  const { save, revision } = state;
  if (save.is === 'saving') return 'saving';
  if (save.is === 'failed') return `not saved: ${save.why}`;
  if (revision === 0) return 'not saved yet';
  return isUnsaved(state)
    ? `changed since revision ${revision}, not saved yet`
    : `saved as revision ${revision}`;
}
