import type { VNode } from 'preact';
import { SavedMeanwhile, saveWords } from '../../sheet/keep/index.ts';
import { useBenchState } from '../state/index.ts';
import { useReadings, useReadingsDesk } from './readings-context.ts';

/** Where the readings stand between page and store, and what to do where somebody else saved them meanwhile. */
export function ReadingsStatus(): VNode {
  const desk = useReadingsDesk();
  const words = useReadings(saveWords);
  const failed = useReadings((state) => state.save.is === 'failed');
  const newer = useReadings((state) => state.newer);
  const refused = useReadings((state) => state.editRefused);
  const issues = useReadings((state) => state.issues);
  const saved = useBenchState((state) => state.saved !== undefined);
  const told = saved ? words : 'kept in this browser until the job is saved';
  return (
    <div class="readings-status">
      <p class={`save-state${failed ? ' save-failed' : ''}`} role="status" aria-label="Readings kept">
        Readings: {told}
      </p>
      <SavedMeanwhile what="readings" newer={newer} onSettle={desk.settle} />
      {refused === undefined ? null : (
        <p class="notice" role="alert">
          {refused}
        </p>
      )}
      {issues.length === 0 ? null : (
        <p class="notice" role="alert">
          The readings cannot be used as they stand: {issues[0]?.message}
        </p>
      )}
    </div>
  );
}
