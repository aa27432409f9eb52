import type { Answer } from '@furrow/engine';
import { bindingAmounts, constraintTitle } from '@furrow/papers/words';
import type { VNode } from 'preact';
import { VerdictMark } from '../../ui/margins/index.ts';
import { Said, useUnits } from '../../ui/theme/index.ts';
import { isCurrent, useBench, useBenchState } from '../state/index.ts';
import { remedyEdits } from './remedy-edits.ts';

type Refusal = NonNullable<Answer['refusal']>;

/** Why there is no plan: what binds, by how much, and the least change that would free it. */
export function RefusalPanel({ refusal }: { readonly refusal: Refusal }): VNode {
  const units = useUnits();
  return (
    <section class="panel refusal" aria-labelledby="refusal-title">
      <h2 id="refusal-title">
        <VerdictMark verdict="fails" /> No plan holds
      </h2>
      <p class="refusal-summary">
        <Said sentence={refusal.summary} />
      </p>
      <ul class="binding-list">
        {refusal.binding.map((binding) => {
          const { constraint, demand, remedy, frees } = binding;
          const { asked, there } = bindingAmounts(binding, units);
          return (
            <li key={`${constraint} ${demand}`}>
              <h3>{constraintTitle(constraint)}</h3>
              <p class="binding-numbers">
                <b>{there}</b> now, <b>{asked}</b> {frees ? 'would do' : 'is asked for'}
              </p>
              <p class="remedy">
                <span class="remedy-label">
                  {frees ? 'What frees it' : 'What would help, not enough alone'}
                </span>{' '}
                <Said sentence={remedy} /> <TryButton binding={binding} />
              </p>
            </li>
          );
        })}
      </ul>
    </section>
  );
}

/** Writes a change that was found to free the job into it; undo takes it back. */
function TryButton({ binding }: { readonly binding: Refusal['binding'][number] }): VNode | null {
  const bench = useBench();
  const units = useUnits();
  const ready = useBenchState(isCurrent);
  const job = useBenchState((state) => state.read?.job);
  const edits = job === undefined || !binding.frees ? [] : remedyEdits(binding, job, units);
  if (edits.length === 0) return null;
  return (
    <button
      type="button"
      aria-disabled={!ready}
      onClick={() => {
        if (ready) bench.change(edits);
      }}
    >
      Try it
      <span class="unseen">
        : <Said sentence={binding.remedy} />
      </span>
    </button>
  );
}
