import type { SavedRun } from '@furrow/contract';
import { fetchRuns } from '../../api/index.ts';

/** Where the job stands in being run. */
export interface RunStanding {
  /** Runs that are kept, rehearsals aside [-]. */
  readonly kept: number;
  /** Whether one is under way. */
  readonly live: boolean;
}

/** Where a job stands by its runs: a rehearsal is no run. */
export function standingOf(runs: readonly Pick<SavedRun, 'live' | 'rehearsal'>[]): RunStanding {
  return {
    kept: runs.filter(({ live, rehearsal }) => !live && !rehearsal).length,
    live: runs.some(({ live }) => live),
  };
}

/** Where a saved job stands in being run; undefined for one that is not saved, and where nobody answers. */
export async function fetchStanding(id: string | undefined): Promise<RunStanding | undefined> {
  const reply = id === undefined ? undefined : await fetchRuns(id);
  return reply?.ok === true ? standingOf(reply.value) : undefined;
}
