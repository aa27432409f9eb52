import type { CostAnswer, CostChangeReport } from '@furrow/engine';
import type { CostPart, WorkEvent } from '../../work/index.ts';

/** What the page knows of time and money. */
export interface CostState {
  /** The last cost, kept while a newer one is on its way. */
  readonly cost: CostAnswer | undefined;
  readonly changes: readonly CostChangeReport[];
  /** Whether changes are still being tried. */
  readonly trying: boolean;
  readonly failure: string | undefined;
}

/** Nothing asked for yet. */
export const NO_COST: CostState = { cost: undefined, changes: [], trying: false, failure: undefined };

/** What comes of the newest request, added to what is known. */
export function afterCostEvent(state: CostState, event: WorkEvent<CostPart>): CostState {
  switch (event.is) {
    case 'part': {
      const { part } = event;
      return part.is === 'cost'
        ? { cost: part.cost, changes: [], trying: true, failure: undefined }
        : { ...state, changes: [...state.changes, part.change] };
    }
    case 'progress':
      return state;
    case 'done':
      return { ...state, trying: false };
    case 'failure':
      return { ...state, trying: false, failure: event.message };
  }
}
