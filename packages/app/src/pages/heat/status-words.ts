import type { Planned } from '../../job/state/index.ts';
import type { HeatState } from './heat-state.ts';

/** How the heat stands, in words; `planned` is the newest plan of the bench. */
export function statusWords(
  { run, shown }: Pick<HeatState, 'run' | 'shown'>,
  planned: Planned | undefined,
): string {
  switch (run.is) {
    case 'waiting':
      return 'The heat is solved as soon as there is a plan.';
    case 'running':
      return run.quality === 'quick'
        ? `Solving a quick look${beforeWords(shown, planned)}.`
        : 'A quick look; refining it.';
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

/** Whose the heat is that stands there meanwhile: of another plan, or of this one at another place. */
function beforeWords(shown: HeatState['shown'], planned: Planned | undefined): string {
  if (shown === undefined) return '';
  return shown.planned === planned
    ? '; what is shown was solved before'
    : '; what is shown belongs to the plan before';
}
