import type { Advice } from '@furrow/engine';
import type { VNode } from 'preact';

/** What shops do with this metal, each with its source. */
export function AdvicePanel({ advice }: { readonly advice: readonly Advice[] }): VNode | null {
  if (advice.length === 0) return null;
  return (
    <section class="panel cautions" aria-labelledby="advice-title">
      <header class="panel-head">
        <h2 id="advice-title">For this metal</h2>
      </header>
      <ul>
        {advice.map(({ topic, text, source, provenance }) => (
          <li key={topic}>
            <strong>{topic}:</strong> {text}{' '}
            <span class="provenance">
              ({source.includes(provenance) ? source : `${source}, ${provenance}`})
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}
