import type { Limit } from '@furrow/engine';
import { jobSaveWords } from '../job/page/index.ts';
import { type BenchState, isCurrent } from '../job/state/index.ts';
import type { Place } from './page-table.ts';

/** Where the open job stands in a place of the app, in a few words. */
export function placeWords(place: Place, state: BenchState): string {
  const answer = state.planned?.answer;
  switch (place) {
    case 'plan': {
      const { length } = state.issues;
      if (length > 0) return length === 1 ? 'one mistake' : `${length} mistakes`;
      if (state.plannerFailure !== undefined) return 'the planner failed';
      if (answer === undefined || !isCurrent(state)) return 'planning';
      const passes = answer.plan?.passes.length;
      if (passes === undefined) return 'no plan holds';
      return passes === 1 ? 'one pass' : `${passes} passes`;
    }
    case 'check': {
      // margins of the job before say nothing of a text that cannot be planned
      if (answer === undefined || state.issues.length > 0) return '';
      return verdictWords([...(answer.plan?.limits ?? []), ...(answer.supply?.limits ?? [])]);
    }
    case 'set-up':
      return state.save.is === 'failed' ? 'not saved' : jobSaveWords(state).replace(', not saved yet', '');
    case 'run':
      if (state.runs === undefined) return '';
      if (state.runs.live) return 'live now';
      if (state.runs.kept === 0) return 'no run kept';
      return state.runs.kept === 1 ? 'one run kept' : `${state.runs.kept} runs kept`;
    case 'groove':
      // what was measured is known on its page alone
      return '';
    case 'shop':
      return answer === undefined ? '' : (answer.supply?.kit.title ?? 'no kit yet');
  }
}

/** The worst of the margins first, each kind counted; margins that stand in plan and supply count once. */
function verdictWords(limits: readonly Pick<Limit, 'id' | 'verdict'>[]): string {
  const worst = new Map<string, Limit['verdict']>();
  const order = ['holds', 'tight', 'fails'] as const;
  for (const { id, verdict } of limits) {
    const before = worst.get(id);
    if (before === undefined || order.indexOf(verdict) > order.indexOf(before)) worst.set(id, verdict);
  }
  const verdicts = [...worst.values()];
  if (verdicts.length === 0) return '';
  const failed = verdicts.filter((verdict) => verdict === 'fails').length;
  const tight = verdicts.filter((verdict) => verdict === 'tight').length;
  if (failed === 0 && tight === 0) return 'all margins hold';
  return [
    failed === 0 ? '' : failed === 1 ? '1 fails' : `${failed} fail`,
    tight === 0 ? '' : `${tight} tight`,
  ]
    .filter(Boolean)
    .join(', ');
}
