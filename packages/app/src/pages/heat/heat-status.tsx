import type { VNode } from 'preact';
import { useBenchState } from '../../job/state/index.ts';
import { useHeat, useHeatDesk } from './heat-context.ts';
import { statusWords } from './status-words.ts';

/** How the heat stands: solving, quick look, refined, stopped or failed; a change is told aloud, the progress is not. */
export function HeatStatus(): VNode {
  const desk = useHeatDesk();
  const planned = useBenchState((state) => state.planned);
  const words = useHeat((state) => statusWords(state, planned));
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
