import { formatAmount, type Plan } from '@furrow/engine';
import { choiceTable, setupText } from '@furrow/papers/blocks';
import { money } from '@furrow/papers/words';
import type { VNode } from 'preact';
import { BlockPanel } from '../../ui/block/index.ts';
import { useUnits } from '../../ui/theme/index.ts';
import { isCurrent, useBench, useBenchState } from '../state/index.ts';
import { adoptPlan } from './lock-edits.ts';

interface ComparisonProps {
  readonly plan: Plan;
  readonly alternatives: readonly Plan[];
}

/** The plan beside the others found; one that another beats in time, cost and heat at once says so. */
export function Comparison({ plan, alternatives }: ComparisonProps): VNode {
  const units = useUnits();
  return (
    <BlockPanel
      id="comparison"
      table={choiceTable([plan, ...alternatives], units, 'whole')}
      note={
        plan.whole_cost.p50 > 0
          ? 'time, cost and heat side by side, refill and grinding inside the whole job; a set-up that another beats in all three says so'
          : 'time and heat side by side; no rates are stated, so nothing has a price; a set-up that another beats in all says so'
      }
      lead={<p class="panel-lead">{quickestWords(plan, alternatives)}</p>}
      doing={{
        title: 'Choose',
        of: (row) => {
          const other = alternatives[row - 1];
          return other === undefined ? <span class="in-use">in use</span> : <UseButton plan={other} />;
        },
      }}
    />
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

/** Writes a plan's choices as locks into the job, so that it becomes the plan. */
function UseButton({ plan }: { readonly plan: Plan }): VNode {
  const bench = useBench();
  const units = useUnits();
  const current = useBenchState(isCurrent);
  const adopt = (): void => {
    const { file, read } = bench.store.get();
    if (current && read !== undefined) bench.change(adoptPlan(plan, { file, locks: read.job.locks, units }));
  };
  return (
    <button
      type="button"
      aria-label={`Use this: ${setupText(plan, units)}`}
      aria-disabled={!current}
      onClick={adopt}
    >
      Use this
    </button>
  );
}
