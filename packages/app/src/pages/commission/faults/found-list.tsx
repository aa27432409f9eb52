import type { VNode } from 'preact';

/** A fault that was found. */
export interface FoundFault {
  readonly id: string;
  readonly title: string;
  readonly note: string;
}

interface FoundListProps {
  readonly found: readonly FoundFault[];
  readonly onNote: (id: string, note: string) => void;
  readonly onUndo: (id: string) => void;
}

/** What was found on this job so far. */
export function FoundList({ found, onNote, onUndo }: FoundListProps): VNode | null {
  if (found.length === 0) return null;
  return (
    <section class="fault-part found" aria-labelledby="found-title">
      <h3 id="found-title">Found on this job</h3>
      <ul class="found-list">
        {found.map(({ id, title, note }) => (
          <li key={id}>
            <strong>{title}</strong>
            <input
              type="text"
              class="note-field"
              aria-label={`Note, ${title}`}
              placeholder="Note"
              value={note}
              onInput={(event) => onNote(id, event.currentTarget.value)}
            />
            <button type="button" aria-label={`It was not this: ${title}`} onClick={() => onUndo(id)}>
              It was not this
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}
