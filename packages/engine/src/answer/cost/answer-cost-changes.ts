import type { Job, ReadJob } from '../../job/index.ts';
import type { ReadKit } from '../../kit/index.ts';
import { betterPlan } from '../../plan/index.ts';
import { inUnit, say } from '../../quantity/index.ts';
import { currentRangeOf } from '../../removal/index.ts';
import type { Answer, CostChangeReport, CostReport } from '../../result/index.ts';
import { planOnly } from '../job/answer-job.ts';
import { type CostOptions, costTotals } from './answer-cost.ts';
import { type CostChange, type CostChangeId, costChanges } from './cost-change.ts';

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
  for (const change of costChanges(read, kit)) yield tryChange(change, read.job, answer, report, options);
}

function tryChange(
  change: CostChange,
  told: Job,
  base: Answer,
  report: CostReport,
  options: CostOptions,
): CostChangeReport {
  const { id, title, says, read, hirePerDay } = change;
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
  const { basis } = answerOfChange(change, told, base, options);
  if (basis === undefined) return { ...nothing, says: say`${says}: no plan`, outcome: 'no_plan' };
  const hired = (options.hirePerDay ?? 0) + hirePerDay;
  const { time, cost } = costTotals(read.job, basis, { ...options, hirePerDay: hired });
  const { plan } = basis;
  return {
    id,
    title,
    says,
    outcome: 'replanned',
    time_s: time.p50,
    time_change_s: time.p50 - report.time_s.p50,
    cost: cost.p50,
    cost_change: cost.p50 - report.cost.p50,
    cost_change_half_width: Math.hypot(cost.p50HalfWidth, report.cost.p50_half_width),
    setting: {
      electrode_diameter_mm: inUnit(plan.electrode.diameter, 'mm'),
      current_A: plan.passes[0]?.current ?? 0,
      passes: plan.passes.length,
    },
  };
}

/** What is planned with a change of the job that was told. */
function answerOfChange(
  { id, read, newAlone, kit }: CostChange,
  told: Job,
  { basis, supply }: Answer,
  { knowledge }: CostOptions,
): Pick<Answer, 'basis'> {
  if (read === undefined) return {};
  const limitedByKit = kit !== undefined && supply?.time.limited_by !== 'process';
  if (basis !== undefined && !limitedByKit && isMoreOfTheSame(id, told)) return { basis };
  const made = planOnly(newAlone ?? read, kit, knowledge);
  // every change only eases: the plan told can be run with it as it is
  const found = [made, basis?.plan].filter((plan) => plan !== undefined);
  // the torch takes the air that it takes in the plan told
  return found.length === 0
    ? {}
    : { basis: { plan: betterPlan(read.job, found), torchFlow: basis?.torchFlow } };
}

/** Whether a change gives more only of what does not limit the plan: air, or current beyond what the electrodes take. */
function isMoreOfTheSame(id: CostChangeId, { kit }: Job): boolean {
  if (id === 'hired_compressor') return true;
  const takesMore = kit.electrodes.some(
    (electrode) => (currentRangeOf(electrode)?.most ?? 0) > kit.current.most,
  );
  return id === 'second_source' && !takesMore;
}
