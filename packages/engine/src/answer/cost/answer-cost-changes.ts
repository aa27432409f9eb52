import type { ReadJob } from '../../job/index.ts';
import type { ReadKit } from '../../kit/index.ts';
import { inUnit, say } from '../../quantity/index.ts';
import type { Answer, CostChangeReport, CostReport } from '../../result/index.ts';
import { planOnly } from '../job/answer-job.ts';
import { answerCost, type CostOptions } from './answer-cost.ts';
import { type CostChange, costChanges } from './cost-change.ts';

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
 * const cost = answerCost(demoJob, demoAnswer);
 * tryCostChanges(demoJob, demoAnswer, cost).next().value.id // => "second_source"
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
  const answer = answerOfChange(change, base, read, kit, options);
  const changed = answerCost(read, answer, {
    ...options,
    hirePerDay: (options.hirePerDay ?? 0) + hirePerDay,
  });
  if (changed.kind === 'no_plan' || answer.basis === undefined) {
    return { ...nothing, says: say`${says}: no plan`, outcome: 'no_plan' };
  }
  const { plan } = answer.basis;
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
      electrode_diameter_mm: inUnit(plan.electrode.diameter, 'mm'),
      current_A: plan.passes[0]?.current ?? 0,
      passes: plan.passes.length,
    },
  };
}

/** What is planned with a change. More of a kit that does not limit the plan changes nothing about it. */
function answerOfChange(
  { id }: CostChange,
  base: Answer,
  read: ReadJob,
  kit: ReadKit | undefined,
  { knowledge }: CostOptions,
): Pick<Answer, 'basis'> {
  const free = id === 'hired_compressor' && base.supply?.time.limited_by === 'process';
  if (free && base.basis !== undefined) return { basis: base.basis };
  const plan = planOnly(read, kit, knowledge);
  // the torch takes the air that it takes in the plan told
  return plan === undefined ? {} : { basis: { plan, torchFlow: base.basis?.torchFlow } };
}
