import { createContext } from 'preact';
import { useContext } from 'preact/hooks';
import { useSelected } from '../../ui/store/index.ts';
import type { KeptRuns, KeptState } from './kept-runs.ts';
import type { LiveDesk, LiveRunState } from './live-run.ts';
import type { RunDesk } from './run-desk.ts';
import type { RunState } from './run-state.ts';

/** What the page of a run works with. */
export interface RunTools {
  readonly desk: RunDesk;
  readonly kept: KeptRuns;
  readonly live: LiveDesk;
}

/** Hands the log of the job to every component of its page. */
export const RunContext = createContext<RunTools | undefined>(undefined);

function useTools(): RunTools {
  const tools = useContext(RunContext);
  if (tools === undefined) throw new Error('a component of the run stands outside of it');
  return tools;
}

/** The log of the job. */
export function useRunDesk(): RunDesk {
  return useTools().desk;
}

/** What a component needs of the log. */
export function useRun<Selected>(select: (state: RunState) => Selected): Selected {
  return useSelected(useTools().desk.store, select);
}

/** The runs that are kept. */
export function useKeptRuns(): KeptRuns {
  return useTools().kept;
}

/** What a component needs of the runs that are kept. */
export function useKept<Selected>(select: (state: KeptState) => Selected): Selected {
  return useSelected(useTools().kept.store, select);
}

/** The run that is under way. */
export function useLiveDesk(): LiveDesk {
  return useTools().live;
}

/** What a component needs of the run that is under way. */
export function useLive<Selected>(select: (state: LiveRunState) => Selected): Selected {
  return useSelected(useTools().live.store, select);
}
