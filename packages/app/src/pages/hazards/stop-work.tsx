import type { VNode } from 'preact';

/** Conditions that stop the run. */
export function StopWork({ conditions }: { readonly conditions: readonly string[] }): VNode {
  return (
    <section class="panel cautions" aria-labelledby="stop-work-title">
      <header class="panel-head">
        <h2 id="stop-work-title">Stop work</h2>
        <p class="caption">any of these: stop and ask; a restart needs its reason in the record</p>
      </header>
      <ul class="stop-work">
        {conditions.map((condition) => (
          <li key={condition}>{condition}</li>
        ))}
      </ul>
    </section>
  );
}
