import type { VNode } from 'preact';
import { useBench, useBenchState } from '../state/index.ts';

/** Says that unsaved changes of an earlier visit are back, and lets go of them. */
export function RestoredNotice(): VNode | null {
  const bench = useBench();
  const restored = useBenchState((state) => state.restored);
  const saved = useBenchState((state) => state.saved !== undefined);
  if (!restored) return null;
  return (
    <p class="notice">
      {saved
        ? 'Unsaved changes of your last visit are back.'
        : 'This job is kept in this browser only until it is saved.'}{' '}
      <button type="button" class="quiet" onClick={() => bench.discard()}>
        {saved ? 'Discard them' : 'Show the demo job instead'}
      </button>
    </p>
  );
}
