/** Texts kept at most [-]. */
const KEPT_MOST = 100;

/** How a text came to be changed: fields of the form one by one, or letters in the text view, which count as one change. */
export type ChangedBy = 'form' | 'text';

/** Earlier texts of a file, for taking changes back one by one, saved or not. */
export interface Past {
  /** Keeps a text that is about to be changed. */
  readonly keep: (text: string, by: ChangedBy) => void;
  /** Takes out the text before the last change; undefined where there is none. */
  readonly back: () => string | undefined;
  /** How many changes can be taken back. */
  readonly depth: () => number;
}

/** An empty past. */
export function createPast(): Past {
  const texts: string[] = [];
  let last: ChangedBy | undefined;
  return {
    keep(text, by) {
      // letters typed one after the other are taken back together
      if (by === 'text' && last === 'text') return;
      last = by;
      texts.push(text);
      if (texts.length > KEPT_MOST) texts.shift();
    },
    back() {
      last = undefined;
      return texts.pop();
    },
    depth: () => texts.length,
  };
}
