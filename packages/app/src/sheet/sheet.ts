import type { Issue } from '@furrow/engine';
import type { Store } from '../ui/store/index.ts';
import type { Edit, TextFile } from './document/index.ts';

/** What form and text view show of a file. */
export interface SheetState {
  /** The file as text, the one source of form and drawings. */
  readonly file: TextFile;
  /** The text when its layout could last be read: what the form shows while a mistake is being typed. */
  readonly readable: TextFile;
  /** What is wrong with the text; empty if it can be used. */
  readonly issues: readonly Issue[];
  /** Why the last change of the form could not be written into the text. */
  readonly editRefused: string | undefined;
  /** Changes that can be taken back [-]. */
  readonly undoable: number;
}

/** Kinds of files that are filled in, and what each is called above its form. */
export const SHEET_TITLES = { job: 'Job', kit: 'Kit', readings: 'Readings', gauge: 'Gauge' } as const;

/** A file that is filled in, as a form or as text. */
export interface Sheet {
  readonly noun: keyof typeof SHEET_TITLES;
  readonly store: Store<SheetState>;
  /** Changes fields of the file. */
  readonly change: (edits: readonly Edit[]) => void;
  /** Puts another text in place, from the text view or a file. */
  readonly setText: (text: string) => void;
  /** Takes the last change back, saved or not. */
  readonly undo: () => void;
}
