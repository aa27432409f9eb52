import { type Bench, fetchHistory, fetchKitInUse, fetchStanding } from '../state/index.ts';

/** Asks what the shop plans this job with now, kit and history, plans with it, and asks where its runs stand; the returned function calls it off. */
export function takeFromShop(bench: Bench): () => void {
  let calledOff = false;
  void fetchHistory(bench.isDemo(), bench.store.get().saved?.saved_at).then((history) => {
    if (!calledOff && history !== undefined) bench.setTrials(history);
  });
  void fetchKitInUse(bench.isDemo()).then((kit) => {
    if (!calledOff && kit !== undefined) bench.setKit(kit);
  });
  void fetchStanding(bench.store.get().saved?.id).then((runs) => {
    if (!calledOff && runs !== undefined) bench.setRuns(runs);
  });
  return () => {
    calledOff = true;
  };
}
