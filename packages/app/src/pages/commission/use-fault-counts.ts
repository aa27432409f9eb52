import type { CountedFaults, FaultCase } from '@furrow/contract';
import { countFaults, FAULT_MODEL, type FaultModel } from '@furrow/engine';
import { useMemo, useState } from 'preact/hooks';
import { countFault, type Reply, uncountFault } from '../../api/index.ts';

/** The table of faults as this shop's counts have moved it, and how cases come to be counted. */
export interface ShopFaults {
  readonly model: FaultModel;
  /** Cases counted [-]. */
  readonly cases: number;
  /** What could not be counted or taken back, with the way to try it again. */
  readonly trouble: { readonly message: string; readonly again: () => void } | undefined;
  readonly count: (found: FaultCase) => void;
  readonly uncount: (id: string) => void;
}

/** The table moved by the counts; as it is where the counts do not fit it. */
export function movedModel(counts: CountedFaults | undefined): FaultModel {
  if (counts === undefined) return FAULT_MODEL;
  const moved = countFaults(FAULT_MODEL, counts as Parameters<typeof countFaults>[1]);
  return moved.ok ? moved.value : FAULT_MODEL;
}

/** Keeps the shop's counts of faults. */
export function useFaultCounts(first: CountedFaults | undefined): ShopFaults {
  const [counts, setCounts] = useState(first);
  const [trouble, setTrouble] = useState<ShopFaults['trouble']>();
  const act = async (what: string, ask: () => Promise<Reply<CountedFaults>>): Promise<void> => {
    const reply = await ask();
    if (reply.ok) {
      setCounts(reply.value);
      setTrouble(undefined);
    } else {
      const again = (): void => void act(what, ask);
      setTrouble({ message: `${what}: ${reply.failure.message}`, again });
    }
  };
  return {
    model: useMemo(() => movedModel(counts), [counts]),
    cases: counts?.cases ?? 0,
    trouble,
    count: (found) => void act('Not counted', () => countFault(found)),
    uncount: (id) => void act('Still counted', () => uncountFault(id)),
  };
}
