const PREFIX = 'furrow.draft.';

/** Unsaved text kept in this browser, so that a reload loses nothing. */
export interface Draft {
  readonly text: string;
  /** Revision the text was made from; 0 for a job that was never saved. */
  readonly based_on: number;
  /** Whether it is a demo job that was changed, and no job of the shop's own. */
  readonly demo?: boolean;
}

const listeners = new Set<() => void>();

/** Calls back after each change of what is unsaved in this browser until the returned function is called. */
export function listenDrafts(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

function tellChanged(): void {
  for (const listener of [...listeners]) listener();
}

/** Under what names something unsaved is kept. */
export function draftNames(memory: Storage): readonly string[] {
  return Array.from({ length: memory.length }, (_, at) => memory.key(at) ?? '')
    .filter((key) => key.startsWith(PREFIX))
    .map((key) => key.slice(PREFIX.length))
    .toSorted();
}

/** Keeps unsaved text under the job's id, or under `new`; a full or closed memory is no reason to stop working. */
export function keepDraft(memory: Storage, key: string, draft: Draft): void {
  try {
    memory.setItem(PREFIX + key, JSON.stringify(draft));
  } catch {
    // the page still asks before it is left with unsaved changes
  }
  tellChanged();
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
  tellChanged();
}
