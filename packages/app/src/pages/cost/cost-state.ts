import type { CostAnswer, CostChangeReport } from '@furrow/engine';
import type { CostReply } from '../../work/index.ts';

/** What the page knows of time and money. */
export interface CostState {
  /** Request that all of it belongs to [-]. */
  readonly id: number;
  /** The last cost, kept while a newer one is on its way. */
  readonly cost: CostAnswer | undefined;
  readonly changes: readonly CostChangeReport[];
  /** Whether changes are still being tried. */
  readonly trying: boolean;
  readonly failure: string | undefined;
}

/** Nothing asked for yet. */
export const NO_COST: CostState = { id: 0, cost: undefined, changes: [], trying: false, failure: undefined };

/** What a reply adds; one to an older request adds nothing. */
export function afterCostReply(state: CostState, newest: number, reply: CostReply): CostState {
  if (reply.id !== newest) return state;
  switch (reply.is) {
    case 'cost':
      return { id: reply.id, cost: reply.cost, changes: [], trying: true, failure: undefined };
    case 'change':
      return { ...state, changes: [...state.changes, reply.change] };
    case 'done':
      return { ...state, trying: false };
    case 'failure':
      return { ...state, id: reply.id, trying: false, failure: reply.message };
  }
}
