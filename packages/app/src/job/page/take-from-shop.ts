import { type Bench, fetchHistory, fetchKitInUse } from '../state/index.ts';

/** Asks what the shop plans this job with now, kit and history, and plans with it; the returned function calls it off. */
export function takeFromShop(bench: Bench): () => void {
  let calledOff = false;
  void fetchHistory(bench.isDemo(), bench.store.get().saved?.saved_at).then((history) => {
    if (!calledOff && history !== undefined) bench.setTrials(history);
  });
  void fetchKitInUse(bench.isDemo()).then((kit) => {
    if (!calledOff && kit !== undefined) bench.setKit(kit);
  });
  return () => {
    calledOff = true;
  };
}
