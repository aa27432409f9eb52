import { useEffect, useRef, useState } from 'preact/hooks';
import { useBench, useBenchState, usedKit } from '../../job/state/index.ts';
import { type CostWorker, startCostWorker } from '../../work/index.ts';
import { afterCostReply, type CostState, NO_COST } from './cost-state.ts';

/** Has time and money of every new plan reckoned in a worker while the page is open. */
export function useCost(): CostState {
  const bench = useBench();
  const planned = useBenchState((state) => state.planned);
  const [cost, setCost] = useState<CostState>(NO_COST);
  const worker = useRef<CostWorker | undefined>(undefined);
  const newest = useRef(0);
  useEffect(() => () => worker.current?.end(), []);
  useEffect(() => {
    if (planned === undefined) return;
    if (worker.current === undefined) {
      const started = startCostWorker();
      started.onReply = (reply) => setCost((state) => afterCostReply(state, newest.current, reply));
      started.onCrash = (message) => {
        started.end();
        worker.current = undefined;
        const id = newest.current;
        setCost((state) => afterCostReply(state, id, { id, is: 'failure', message }));
      };
      worker.current = started;
    }
    newest.current += 1;
    const { read, answer } = planned;
    const kit = usedKit(bench.store.get().kit)?.read;
    worker.current.post({ id: newest.current, read, answer, kit, knowledge: bench.knowledge() });
  }, [planned]);
  return cost;
}
