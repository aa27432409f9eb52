import type { Issue, IssueCode, Outcome } from '@furrow/engine';
import type { ShopFileContent } from '@furrow/store';
import { boundedIssues } from '../guard/bounded.ts';
import { Refused } from '../guard/refused.ts';
import { draftTitle, shownTitle } from './document-title.ts';

/** How the text of a file that a shop has one of is read. */
export interface ShopFileReading {
  /** What is to be saved of a text: a draft with mistakes is kept like a whole file. */
  readonly contentOf: (text: string) => ShopFileContent;
  /** What is wrong with a text; empty for a whole file. */
  readonly issuesOf: (text: string) => Issue[];
}

/** What sets the reading of one such file apart. */
interface ReadAs<Read extends { readonly revision: string }> {
  readonly noun: string;
  readonly most: number;
  readonly tooLarge: IssueCode;
  /** What it is called where it gives itself no title. */
  readonly untitled: string;
  readonly read: (text: string) => Outcome<Read>;
  readonly titleOf: (read: Read) => string;
}

/** The reading of a file by its reader. */
export function shopFileReading<Read extends { readonly revision: string }>({
  noun,
  most,
  tooLarge,
  untitled,
  read,
  titleOf,
}: ReadAs<Read>): ShopFileReading {
  return {
    contentOf(text) {
      if (text.length > most) {
        throw new Refused(
          tooLarge,
          `The text has ${text.length} characters; a ${noun} has at most ${most}. Nothing was saved.`,
        );
      }
      const outcome = read(text);
      return outcome.ok
        ? { text, title: shownTitle(titleOf(outcome.value), untitled), revision: outcome.value.revision }
        : { text, title: draftTitle(text, untitled), revision: null };
    },
    issuesOf(text) {
      const outcome = read(text);
      return outcome.ok ? [] : boundedIssues(outcome.issues);
    },
  };
}
