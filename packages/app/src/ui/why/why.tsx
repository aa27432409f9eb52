import type { VNode } from 'preact';
import { useState } from 'preact/hooks';
import { fetchHandbook, type HandbookEntry } from '../../api/index.ts';
import { EntryText } from './entry-text.tsx';

interface WhyProps {
  /** What it is the why of, for those who hear the page. */
  readonly what: string;
  /** Functions of the engine that the figure comes from, the nearest first. */
  readonly of: readonly string[];
  /** What it rests on in this job, in sentences. */
  readonly rests?: readonly string[];
}

/** Opens to where a figure comes from: what it rests on here, then formula, inputs, range, source and worked number. */
export function Why({ what, of, rests = [] }: WhyProps): VNode {
  const [found, setFound] = useState<readonly HandbookEntry[] | string>();
  const load = async (): Promise<void> => {
    const reply = await fetchHandbook();
    if (!reply.ok) return setFound(reply.failure.message);
    const entries = reply.value.flatMap((room) => room.entries);
    setFound(of.flatMap((name) => entries.filter((entry) => entry.name === name)));
  };
  return (
    <details
      class="why"
      onToggle={(event) => {
        if (event.currentTarget.open && found === undefined) void load();
      }}
    >
      <summary>
        Why<span class="unseen">: {what}</span>
      </summary>
      {rests.length === 0 ? null : (
        <ul>
          {rests.map((text) => (
            <li key={text}>{text}</li>
          ))}
        </ul>
      )}
      {found === undefined ? <p role="status">Opening the handbook.</p> : null}
      {typeof found === 'string' ? <p role="alert">{found}</p> : null}
      {typeof found === 'object' ? found.map((entry) => <EntryText key={entry.name} entry={entry} />) : null}
    </details>
  );
}
