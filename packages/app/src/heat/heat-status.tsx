import type { VNode } from 'preact';
import { useHeat, useHeatDesk } from './heat-context.ts';
import type { HeatState } from './heat-state.ts';

/** How the heat stands: solving, quick look, refined, stopped or failed; a change is told aloud, the progress is not. */
export function HeatStatus(): VNode {
  const desk = useHeatDesk();
  const words = useHeat(statusWords);
  const is = useHeat((state) => state.run.is);
  const share = useHeat((state) =>
    state.run.is === 'running' ? Math.round(100 * state.run.share) : undefined,
  );
  return (
    <div class="heat-status">
      <p
        class={`status${is === 'failed' || is === 'nothing' ? ' status-failed' : ''}`}
        role="status"
        aria-live="polite"
        aria-label="Heat"
      >
        {words}
      </p>
      {share === undefined ? null : (
        <progress aria-label="Share solved" max={100} value={share}>
          {share} %
        </progress>
      )}
      {is === 'running' ? (
        <button type="button" onClick={desk.stop}>
          Stop
        </button>
      ) : null}
      {is === 'stopped' || is === 'failed' ? (
        <button type="button" onClick={desk.again}>
          Solve again
        </button>
      ) : null}
    </div>
  );
}

function statusWords({ run, shown }: HeatState): string {
  switch (run.is) {
    case 'waiting':
      return 'The heat is solved as soon as there is a plan.';
    case 'running':
      return run.quality === 'quick' ? 'Solving a quick look.' : 'A quick look; refining it.';
    case 'done':
      return `Refined${errorWords(shown)}.`;
    case 'stopped':
      return shown === undefined
        ? 'Stopped before there was anything to show.'
        : 'Stopped; what is shown was solved before.';
    case 'nothing':
      return 'No plan holds for this job, so there is no heat to follow. The bench tells what would free it.';
    case 'failed':
      return `The heat could not be solved: ${run.why}`;
  }
}

function errorWords(shown: HeatState['shown']): string {
  const error = shown?.heat.report.grid_error_percent ?? null;
  return error === null ? '' : `; the grid’s error of the peaks is about ${error.toPrecision(2)} %`;
}
