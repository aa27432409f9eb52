import { formatAmount, formatStated, type Plan } from '@furrow/engine';
import { money, pricedText, wayWords } from '@furrow/papers/words';
import type { VNode } from 'preact';
import { ColumnHeads, ScrollTable } from '../../ui/table/index.ts';
import { useUnits } from '../../ui/theme/index.ts';
import { isCurrent, useBench, useBenchState } from '../state/index.ts';
import { adoptPlan } from './lock-edits.ts';
import { assuranceOf, currentText, electrodeText, patternText } from './plan-words.ts';

interface ComparisonProps {
  readonly plan: Plan;
  readonly alternatives: readonly Plan[];
}

const COLUMNS = [
  'Set-up',
  'Choose',
  'Passes',
  'Job time',
  'Arc cost',
  'Whole job',
  'Electrodes',
  'Assurance',
  'Arc energy',
];

/** The plan beside the others found; one that another beats in time, cost and heat at once says so. */
export function Comparison({ plan, alternatives }: ComparisonProps): VNode {
  return (
    <ScrollTable
      id="comparison"
      title="Candidate plans"
      note="time, cost and heat side by side, refill and grinding inside the whole job; a set-up that another beats in all three says so"
      lead={<p class="panel-lead">{quickestWords(plan, alternatives)}</p>}
    >
      <ColumnHeads names={COLUMNS} />
      <tbody>
        <Candidate plan={plan} />
        {alternatives.map((other, index) => (
          // a list computed anew as a whole has no better name for its entries than their place
          <Candidate key={index} plan={other} number={index + 1} />
        ))}
      </tbody>
    </ScrollTable>
  );
}

/** What the quickest set-up found costs more than the plan, on the mean. */
function quickestWords(plan: Plan, others: readonly Plan[]): string {
  const quickest = others.reduce(
    (best, other) => (other.job_time_s.mean < best.job_time_s.mean ? other : best),
    plan,
  );
  if (quickest === plan) return 'The plan is the quickest of the set-ups found.';
  const sooner = formatAmount(plan.job_time_s.mean - quickest.job_time_s.mean, 'time', 'metric');
  const more = quickest.whole_cost.mean - plan.whole_cost.mean;
  const price = money(Math.abs(more), plan.currency);
  if (plan.whole_cost.mean === 0) return `The quickest set-up found is done ${sooner} sooner on the mean.`;
  return `The quickest set-up found is done ${sooner} sooner on the mean and makes the whole job ${price} ${more > 0 ? 'dearer' : 'cheaper'}.`;
}

interface CandidateProps {
  readonly plan: Plan;
  /** Number among the alternatives; absent for the plan itself. */
  readonly number?: number;
}

function Candidate({ plan, number }: CandidateProps): VNode {
  const units = useUnits();
  const setup = `${electrodeText(plan, units)}, ${currentText(plan, units)}, ${patternText(plan)}`;
  return (
    <tr class={number === undefined ? 'chosen' : ''}>
      <th scope="row">
        {setup}
        <span class="aside">
          {' '}
          {wayWords(plan)}
          {plan.dominated ? ', beaten in time, cost and heat' : ''}
        </span>
      </th>
      <td>
        {number === undefined ? <span class="in-use">in use</span> : <UseButton plan={plan} setup={setup} />}
      </td>
      <td>{plan.passes.length}</td>
      <td>
        {formatAmount(plan.job_time_s.p50, 'time', units)}
        <span class="aside">
          {' '}
          to {formatAmount(plan.job_time_s.p90, 'time', units)}, mean{' '}
          {formatAmount(plan.job_time_s.mean, 'time', units)}
        </span>
      </td>
      <td>{pricedText(plan.cost.p50, plan.currency)}</td>
      <td>
        {pricedText(plan.whole_cost.p50, plan.currency)}
        {plan.whole_cost.mean === 0 ? null : (
          <span class="aside"> mean {pricedText(plan.whole_cost.mean, plan.currency)}</span>
        )}
      </td>
      <td>{Math.ceil(plan.electrodes_used.p50)}</td>
      <td>{formatAmount(assuranceOf(plan), 'share', 'metric')}</td>
      <td>{formatStated(plan.arc_energy_kJ, 'kJ', units)}</td>
    </tr>
  );
}

/** Writes a plan's choices as locks into the job, so that it becomes the plan. */
function UseButton({ plan, setup }: { readonly plan: Plan; readonly setup: string }): VNode {
  const bench = useBench();
  const units = useUnits();
  const current = useBenchState(isCurrent);
  const adopt = (): void => {
    const { file, read } = bench.store.get();
    if (current && read !== undefined) bench.change(adoptPlan(plan, { file, locks: read.job.locks, units }));
  };
  return (
    <button type="button" aria-label={`Use this: ${setup}`} aria-disabled={!current} onClick={adopt}>
      Use this
    </button>
  );
}
