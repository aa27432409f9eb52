import type { VNode } from 'preact';
import { useBenchState } from '../state/index.ts';
import { jobSaveWords } from './job-save-words.ts';

/** Where the job stands between page and store; told aloud as well. */
export function SaveStatus(): VNode {
  const words = useBenchState(jobSaveWords);
  const failed = useBenchState((state) => state.save.is === 'failed');
  return (
    <p class={`save-state${failed ? ' save-failed' : ''}`} role="status" aria-label="Save state">
      {words}
    </p>
  );
}
