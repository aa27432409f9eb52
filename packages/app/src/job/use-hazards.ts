import { answerHazard, type HazardReport, readKit } from '@furrow/engine';
import { useMemo } from 'preact/hooks';
import { useBench, useBenchState } from './state/index.ts';

/** The hazards of the newest plan; a few milliseconds, so they are told on the page's own thread. */
export function useHazards(): HazardReport | undefined {
  const bench = useBench();
  const planned = useBenchState((state) => state.planned);
  return useMemo(() => {
    if (planned === undefined) return undefined;
    const text = bench.kit();
    const kit = text === undefined ? undefined : readKit(text);
    return answerHazard(planned.read, planned.answer, kit?.ok === true ? kit.value : undefined);
  }, [planned]);
}
