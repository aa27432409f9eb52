import type { ReadJob } from '../job/index.ts';
import type { ReadKit } from '../kit/index.ts';
import { type Answer, type CostChangeReport, type CostReport, statePlan } from '../result/index.ts';
import { planOnly } from './answer.ts';
import { type CostChange, costChanges } from './cost-change.ts';
import { answerCost, type CostOptions } from './report-cost.ts';

/**
 * Tries changes of job and kit one after the other: each is planned anew and its whole cost held against the one told.
 *
 * Nothing is computed before it is asked for: each step of the row plans at most once, within the kit alone. The draws are the same on both sides,
 * and cooling waits stay those of the plan told.
 *
 * @param read - the job as read [record], from `readJob`
 * @param answer - the answer to it [record], from `answerJob`
 * @param report - its cost [record], from `answerCost`
 * @param kit - the kit that the answer was made with [record], from `readKit`, or left out
 * @param options - the options that the cost was made with [record], may be left out
 * @returns what each change makes of it, one at a time [list]
 * @source none: composition
 * @example
 * typeof tryCostChanges // => "function"
 */
export function* tryCostChanges(
  read: ReadJob,
  answer: Answer,
  report: CostReport,
  kit?: ReadKit,
  options: CostOptions = {},
): Generator<CostChangeReport> {
  for (const change of costChanges(read, kit)) yield tryChange(change, answer, report, options);
}

function tryChange(
  change: CostChange,
  base: Answer,
  report: CostReport,
  options: CostOptions,
): CostChangeReport {
  const { id, title, says, read, kit, hirePerDay } = change;
  const nothing = {
    id,
    title,
    time_s: null,
    time_change_s: null,
    cost: null,
    cost_change: null,
    cost_change_half_width: null,
    setting: null,
  };
  if (read === undefined) return { ...nothing, says, outcome: 'not_tried' };
  const planned = planOfChange(change, base, read, kit, options);
  // the torch takes the air that it takes in the plan told
  const answer = { ...planned, ...(base.supply !== undefined && { supply: base.supply }) };
  const changed = answerCost(read, answer, {
    ...options,
    hirePerDay: (options.hirePerDay ?? 0) + hirePerDay,
  });
  if (changed.kind === 'no_plan' || answer.plan === undefined) {
    return { ...nothing, says: `${says}: no plan`, outcome: 'no_plan' };
  }
  const { plan } = answer;
  return {
    id,
    title,
    says,
    outcome: 'replanned',
    time_s: changed.time_s.p50,
    time_change_s: changed.time_s.p50 - report.time_s.p50,
    cost: changed.cost.p50,
    cost_change: changed.cost.p50 - report.cost.p50,
    cost_change_half_width: Math.hypot(changed.cost.p50_half_width, report.cost.p50_half_width),
    setting: {
      electrode_diameter_mm: plan.electrode_diameter_mm,
      current_A: plan.passes[0]?.current_A ?? 0,
      passes: plan.passes.length,
    },
  };
}

/** The plan with a change. More of a kit that does not limit the plan changes nothing about it. */
function planOfChange(
  { id }: CostChange,
  base: Answer,
  read: ReadJob,
  kit: ReadKit | undefined,
  { knowledge }: CostOptions,
): Pick<Answer, 'plan' | 'refusal'> {
  const free = id === 'hired_compressor' && base.supply?.time.limited_by === 'process';
  if (free && base.plan !== undefined) return { plan: base.plan };
  const result = planOnly(read, kit, knowledge);
  return 'plan' in result ? { plan: statePlan(result.plan) } : { refusal: result.refusal };
}
