import { createContext } from 'preact';
import { useContext } from 'preact/hooks';
import { useSelected } from '../../ui/store/index.ts';
import type { RunDesk } from './run-desk.ts';
import type { RunState } from './run-state.ts';

/** Hands the log of the job to every component of its page. */
export const RunContext = createContext<RunDesk | undefined>(undefined);

/** The log of the job. */
export function useRunDesk(): RunDesk {
  const desk = useContext(RunContext);
  if (desk === undefined) throw new Error('a component of the run stands outside of it');
  return desk;
}

/** What a component needs of the run. */
export function useRun<Selected>(select: (state: RunState) => Selected): Selected {
  return useSelected(useRunDesk().store, select);
}
