import { type Answer, formatStated } from '@furrow/engine';
import type { VNode } from 'preact';
import { VerdictMark } from '../../ui/margins/index.ts';
import { Said, useUnits } from '../../ui/theme/index.ts';

/** Why there is no plan: what binds, by how much, and the least change that would free it. */
export function RefusalPanel({ refusal }: { readonly refusal: NonNullable<Answer['refusal']> }): VNode {
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
        {refusal.binding.map(({ constraint, demand, limit, unit, remedy }) => (
          <li key={constraint}>
            <h3>{constraint.replace(/[._]/gu, ' ')}</h3>
            <p class="binding-numbers">
              asks for <b>{formatStated(demand, unit, units)}</b>, the limit is{' '}
              <b>{formatStated(limit, unit, units)}</b>
            </p>
            <p class="remedy">
              <span class="remedy-label">What frees it</span> {remedy}
            </p>
          </li>
        ))}
      </ul>
    </section>
  );
}
