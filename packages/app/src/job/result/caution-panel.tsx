import type { VNode } from 'preact';

/** Cautions that belong to this job and process. */
export function CautionPanel({ cautions }: { readonly cautions: readonly string[] }): VNode | null {
  if (cautions.length === 0) return null;
  return (
    <section class="panel cautions" aria-labelledby="cautions-title">
      <header class="panel-head">
        <h2 id="cautions-title">Cautions</h2>
      </header>
      <ul>
        {cautions.map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
    </section>
  );
}
