import type { VNode } from 'preact';
import { type BenchState, isCurrent, useBenchState } from '../state/index.ts';

/** Where the result stands: planned, being planned, or outdated because the job has mistakes; told aloud as well. */
export function ResultStatus(): VNode {
  const is = useBenchState(statusOf);
  const mistakes = useBenchState(mistakesText);
  const failure = useBenchState((state) => state.plannerFailure);
  const shown = useBenchState((state) => state.planned !== undefined);
  const text = {
    planned: 'Planned.',
    refused: 'No plan holds for this job.',
    planning: shown
      ? 'Planning again; what is shown belongs to the job before the last change.'
      : 'Planning.',
    mistakes: `${mistakes}${shown ? '; what is shown belongs to the job before.' : '.'}`,
    failed: `The planner failed: ${failure ?? ''}. Change the job or reload the page; the text is kept.`,
  }[is];
  return (
    <p class={`status status-${is}`} role="status" aria-live="polite" aria-label="Result">
      {text}
    </p>
  );
}

/** Where the result stands, in one word. */
function statusOf(state: BenchState): 'planned' | 'refused' | 'planning' | 'mistakes' | 'failed' {
  if (state.issues.length > 0) return 'mistakes';
  if (state.plannerFailure !== undefined) return 'failed';
  if (!isCurrent(state)) return 'planning';
  return state.planned?.answer.plan === undefined ? 'refused' : 'planned';
}

function mistakesText({ issues }: BenchState): string {
  if (issues[0]?.code === 'JOB_SYNTAX') return 'The text of the job cannot be read';
  return `The job has ${issues.length === 1 ? 'one mistake' : `${issues.length} mistakes`}`;
}
