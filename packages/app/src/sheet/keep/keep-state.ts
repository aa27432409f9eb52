/** How the last attempt to save went. */
export type SaveState =
  | { readonly is: 'still' }
  | { readonly is: 'saving' }
  | {
      readonly is: 'failed';
      readonly why: string;
      /** Whether nobody answered: what is kept in the browser is sent once somebody does. */
      readonly unreached?: true;
    };

/** What somebody else saved meanwhile. */
export interface Newer<Saved> {
  readonly saved: Saved;
  /** Entries that both changed, each in another way; empty where a text is the one entry. */
  readonly clashes: readonly string[];
}

/** Where what is filled in stands between page and store. */
export interface KeepState<Content, Saved> {
  /** What the store had last, as far as the page knows; undefined as long as it has nothing. */
  readonly saved: Saved | undefined;
  /** What the content was made from. */
  readonly base: Content;
  /** Number of the revision it was made from; 0 as long as none is saved. */
  readonly revision: number;
  readonly save: SaveState;
  readonly newer: Newer<Saved> | undefined;
  /** Whether unsaved changes of an earlier visit were put back. */
  readonly restored: boolean;
}

/** What can be kept: each save makes the next revision. */
export interface Revised {
  readonly revision_number: number;
}

/** Where content stands that is just opened. */
export function openedState<Content, Saved>(
  from: Pick<KeepState<Content, Saved>, 'saved' | 'base' | 'revision' | 'restored'>,
): KeepState<Content, Saved> {
  return { ...from, save: { is: 'still' }, newer: undefined };
}
