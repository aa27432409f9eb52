const PREFIX = 'furrow.draft.';

/** Unsaved text kept in this browser, so that a reload loses nothing. */
export interface Draft {
  readonly text: string;
  /** Revision the text was made from; 0 for a job that was never saved. */
  readonly based_on: number;
  /** Whether it is a demo job that was changed, and no job of the shop's own. */
  readonly demo?: boolean;
}

/** Keeps unsaved text under the job's id, or under `new`; a full or closed memory is no reason to stop working. */
export function keepDraft(memory: Storage, key: string, draft: Draft): void {
  try {
    memory.setItem(PREFIX + key, JSON.stringify(draft));
  } catch {
    // the page still asks before it is left with unsaved changes
  }
}

/** Unsaved text of an earlier visit; undefined if there is none or it cannot be read. */
export function draftOf(memory: Storage, key: string): Draft | undefined {
  try {
    const draft: unknown = JSON.parse(memory.getItem(PREFIX + key) ?? 'null');
    if (typeof draft !== 'object' || draft === null) return undefined;
    const { text, based_on, demo } = draft as Partial<Draft>;
    if (typeof text !== 'string' || typeof based_on !== 'number') return undefined;
    return { text, based_on, ...(demo === true && { demo }) };
  } catch {
    return undefined;
  }
}

/** Forgets the unsaved text of a job. */
export function dropDraft(memory: Storage, key: string): void {
  memory.removeItem(PREFIX + key);
}
