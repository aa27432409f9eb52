import { useEffect, useState } from 'preact/hooks';
import { useBench, useBenchState, usedKit } from '../../job/state/index.ts';
import { startCostWorker, useClient } from '../../work/index.ts';
import { afterCostEvent, type CostState, NO_COST } from './cost-state.ts';

/** Has time and money of every new plan calculated in a worker while the page is open. */
export function useCost(): CostState {
  const bench = useBench();
  const planned = useBenchState((state) => state.planned);
  const [cost, setCost] = useState<CostState>(NO_COST);
  const client = useClient(startCostWorker, (event) => setCost((state) => afterCostEvent(state, event)));
  useEffect(() => {
    if (planned === undefined) return;
    const { read, answer } = planned;
    const kit = usedKit(bench.store.get().kit)?.read;
    client.ask({ read, answer, kit, knowledge: bench.knowledge() });
  }, [planned]);
  return cost;
}
