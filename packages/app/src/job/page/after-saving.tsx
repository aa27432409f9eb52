import { useEffect, useRef } from 'preact/hooks';
import { fetchHistory, fetchKitInUse, useBench, useBenchState } from '../state/index.ts';

/**
 * A demo job that is saved is a job of the shop's own from then on: the demo's kit and its invented history fall away at
 * once, so that the bench shows what its papers are made of.
 */
export function AfterSaving(): null {
  const bench = useBench();
  const id = useBenchState((state) => state.saved?.id);
  const first = useRef(id);
  useEffect(() => {
    if (id === first.current) return undefined;
    first.current = id;
    let left = false;
    void fetchHistory(bench.isDemo(), bench.store.get().saved?.saved_at).then((history) => {
      if (!left && history !== undefined) bench.setTrials(history);
    });
    void fetchKitInUse(bench.isDemo()).then((kit) => {
      if (!left && kit !== undefined) bench.setKit(kit);
    });
    return () => {
      left = true;
    };
  }, [bench, id]);
  return null;
}
