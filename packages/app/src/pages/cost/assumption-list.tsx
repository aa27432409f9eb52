import type { CostReport } from '@furrow/engine';
import type { VNode } from 'preact';
import { SourceText } from '../../ui/source/index.ts';
import { Said } from '../../ui/theme/index.ts';

/** What stands in for what the job does not state, with where it comes from. */
export function AssumptionList({ cost }: { readonly cost: CostReport }): VNode {
  return (
    <section class="panel" aria-labelledby="assumptions-title">
      <header class="panel-head">
        <h2 id="assumptions-title">Taken because the job does not state it</h2>
        <p class="caption">besides the defaults, which stand in grey in the form</p>
      </header>
      <ul class="plain-list">
        {cost.assumptions.map(({ topic, text, source }) => (
          <li key={topic}>
            <b>{topic}:</b> <Said sentence={text} />; <SourceText source={source} />
          </li>
        ))}
      </ul>
    </section>
  );
}
