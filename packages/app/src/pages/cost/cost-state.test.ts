import type { CostChangeReport } from '@furrow/engine';
import { describe, expect, it } from 'vitest';
import { afterCostEvent, NO_COST } from './cost-state.ts';

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

describe('afterCostEvent', () => {
  it('gathers the changes behind their cost, and starts anew with the next cost', () => {
    const cost = { kind: 'no_plan', says: 'none' } as const;
    let state = afterCostEvent(NO_COST, { is: 'part', part: { is: 'cost', cost } });
    state = afterCostEvent(state, { is: 'part', part: { is: 'change', change } });
    expect(state).toMatchObject({ cost, changes: [change], trying: true });
    expect(afterCostEvent(state, { is: 'done' }).trying).toBe(false);
    expect(afterCostEvent(state, { is: 'part', part: { is: 'cost', cost } }).changes).toEqual([]);
  });

  it('keeps what is shown when the calculation fails', () => {
    const cost = { kind: 'no_plan', says: 'none' } as const;
    const shown = afterCostEvent(NO_COST, { is: 'part', part: { is: 'cost', cost } });
    const failed = afterCostEvent(shown, { is: 'failure', message: 'out of memory' });
    expect(failed).toMatchObject({ cost: shown.cost, failure: 'out of memory', trying: false });
  });
});
