import type { VNode } from 'preact';
import { Why } from './why.tsx';

/** Something to do, with the figure to do it by, and where that comes from. */
export interface Decision {
  readonly act: string;
  readonly value: string;
  readonly note: string;
  readonly of: readonly string[];
  readonly rests: readonly string[];
}

/** The few decisions of a page, above what they rest on. */
export function DecisionPanel({ decisions }: { readonly decisions: readonly Decision[] }): VNode {
  return (
    <section class="panel decisions" aria-labelledby="decisions-title">
      <header class="panel-head">
        <h2 id="decisions-title">What to do</h2>
        <p class="caption">Local codes, the welding procedure and licensed practice go before it.</p>
      </header>
      <ul>
        {decisions.map(({ act, value, note, of, rests }) => (
          <li key={act} class="decision">
            <span class="decision-act">{act}</span>
            <span class="decision-value">{value}</span>
            <span class="decision-note">{note}</span>
            <Why what={act} of={of} rests={rests} />
          </li>
        ))}
      </ul>
    </section>
  );
}
