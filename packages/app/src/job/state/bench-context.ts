import { createContext } from 'preact';
import { useContext } from 'preact/hooks';
import { useSelected } from '../../ui/store/index.ts';
import type { Bench } from './bench.ts';
import type { BenchState } from './bench-state.ts';

/** Hands the open bench to every component on its page. */
export const BenchContext = createContext<Bench | undefined>(undefined);

/** The open bench. */
export function useBench(): Bench {
  const bench = useContext(BenchContext);
  if (bench === undefined) throw new Error('a component of the bench stands outside of it');
  return bench;
}

/** What a component needs of the open bench. */
export function useBenchState<Selected>(select: (state: BenchState) => Selected): Selected {
  return useSelected(useBench().store, select);
}
