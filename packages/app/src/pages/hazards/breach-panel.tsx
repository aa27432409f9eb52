import type { HazardBreach } from '@furrow/engine';
import { breachTexts } from '@furrow/papers/words';
import type { VNode } from 'preact';
import { useUnits } from '../../ui/theme/index.ts';

/** What is over or short of a figure named, before everything else. */
export function BreachPanel({ breaches }: { readonly breaches: readonly HazardBreach[] }): VNode | null {
  const units = useUnits();
  if (breaches.length === 0) return null;
  return (
    <section class="panel cautions" aria-labelledby="breach-title">
      <header class="panel-head">
        <h2 id="breach-title">Over or short of a figure named</h2>
      </header>
      <ul>
        {breachTexts(breaches, units).map((text) => (
          <li key={text}>{text}</li>
        ))}
      </ul>
    </section>
  );
}
