import { answerHazard, type HazardReport } from '@furrow/engine';
import { useMemo } from 'preact/hooks';
import { useBench, useBenchState, usedKit } from './state/index.ts';

/** The hazards of the newest plan; a few milliseconds, so they are told on the page's own thread. */
export function useHazards(): HazardReport | undefined {
  const bench = useBench();
  const planned = useBenchState((state) => state.planned);
  return useMemo(() => {
    if (planned === undefined) return undefined;
    return answerHazard(planned.read, planned.answer, usedKit(bench.store.get().kit)?.read);
  }, [planned]);
}
