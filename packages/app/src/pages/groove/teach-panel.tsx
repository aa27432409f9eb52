import {
  newTrials,
  type SurveySeam,
  type WrittenEntry,
  withCorrected,
  withEntry,
  writtenEntries,
} from '@furrow/engine';
import { teachesWords } from '@furrow/papers';
import type { VNode } from 'preact';
import { useState } from 'preact/hooks';
import { fetchTrials, saveTrials } from '../../api/index.ts';
import { useReadings } from '../../job/readings/index.ts';
import { useBench, useBenchState } from '../../job/state/index.ts';
import { dayOf } from './entry-name.ts';

/** What the readings teach the shop: handed on by a person, each with its uncertainty, and counted once. */
export function TeachPanel({ seam }: { readonly seam: SurveySeam }): VNode | null {
  const bench = useBench();
  const saved = useBenchState((state) => state.saved !== undefined);
  const invented = useReadings((state) => state.read?.readings.invented === 'yes');
  const [told, setTold] = useState<string>();
  const { entry } = seam.teaches;
  const words = teachesWords({ ...seam.teaches, entry: null });
  if (words.length === 0) return null;
  const why = invented
    ? 'Invented readings teach nothing.'
    : !saved || bench.isDemo()
      ? 'A demo job teaches nothing: save it as a job of your own first.'
      : undefined;
  const teach = async (): Promise<void> => {
    if (entry === null) return;
    const now = await fetchTrials();
    if (!now.ok) return setTold(now.failure.message);
    const { text, revision_number } = now.value;
    const before = text === '' ? newTrials('This shop') : text;
    const known = writtenEntries(before).some(({ id }) => id === entry['id']);
    const change = { date: dayOf(undefined, new Date()), reason: 'measured again' };
    const after = known
      ? withCorrected(before, entry as WrittenEntry, change)
      : withEntry(before, entry as WrittenEntry);
    const reply = await saveTrials(after, revision_number);
    setTold(
      reply.ok
        ? `Kept as entry ${String(entry['id'])} of what this shop knows, revision ${reply.value.revision_number}.`
        : reply.failure.message,
    );
  };
  return (
    <section class="panel groove-teach" aria-labelledby="teach-title">
      <h2 id="teach-title">What it teaches the shop</h2>
      {words.map((text) => (
        <p key={text}>{text}</p>
      ))}
      {why !== undefined || entry === null ? (
        <p class="aside">{why ?? ''}</p>
      ) : (
        <p>
          <button type="button" onClick={() => void teach()}>
            Add to what this shop knows
          </button>
        </p>
      )}
      <p role="status" aria-label="Taught">
        {told ?? ''}
      </p>
    </section>
  );
}
