import type { CostChangeReport } from '@furrow/engine';
import { describe, expect, it } from 'vitest';
import { afterCostReply, NO_COST } from './cost-state.ts';

const change: CostChangeReport = {
  id: 'larger_electrode',
  title: 'A larger electrode',
  says: '19 mm',
  outcome: 'no_plan',
  time_s: null,
  time_change_s: null,
  cost: null,
  cost_change: null,
  cost_change_half_width: null,
  setting: null,
};

describe('afterCostReply', () => {
  it('gathers the changes behind their cost, and starts anew with the next cost', () => {
    const cost = { kind: 'no_plan', says: 'none' } as const;
    let state = afterCostReply(NO_COST, 1, { id: 1, is: 'cost', cost });
    state = afterCostReply(state, 1, { id: 1, is: 'change', change });
    expect(state).toMatchObject({ cost, changes: [change], trying: true });
    expect(afterCostReply(state, 1, { id: 1, is: 'done' }).trying).toBe(false);
    expect(afterCostReply(state, 2, { id: 2, is: 'cost', cost }).changes).toEqual([]);
  });

  it('takes nothing from a request that has been overtaken', () => {
    expect(afterCostReply(NO_COST, 2, { id: 1, is: 'change', change })).toBe(NO_COST);
  });

  it('keeps what is shown when reckoning fails', () => {
    const shown = afterCostReply(NO_COST, 1, { id: 1, is: 'cost', cost: { kind: 'no_plan', says: 'none' } });
    const failed = afterCostReply(shown, 2, { id: 2, is: 'failure', message: 'out of memory' });
    expect(failed).toMatchObject({ cost: shown.cost, failure: 'out of memory', trying: false });
  });
});
