import type { Plan } from '@furrow/engine';
import { DOUBT_PARTS, worthWords } from '@furrow/papers/words';
import type { VNode } from 'preact';

/** What the doubt about the depth is made of, and what measuring more is worth on this job. */
export function DoubtPanel({ plan }: { readonly plan: Plan }): VNode {
  return (
    <section class="panel doubt-panel" aria-labelledby="doubt-title">
      <header class="panel-head">
        <h2 id="doubt-title">What is left in doubt</h2>
        <p class="caption">shares of the variance of the finished depth</p>
      </header>
      <DoubtPicture plan={plan} />
      {plan.worth_measuring.length === 0 ? null : <WorthPicture plan={plan} />}
    </section>
  );
}

function DoubtPicture({ plan: { doubt } }: { readonly plan: Plan }): VNode {
  const told = DOUBT_PARTS.map(({ part, title }) => `${title} ${percent(doubt[part])}`).join(', ');
  let from = 0;
  return (
    <>
      <svg
        class="doubt-bar"
        viewBox="0 0 100 10"
        preserveAspectRatio="none"
        role="img"
        aria-label={`What the doubt is made of: ${told}.`}
      >
        {DOUBT_PARTS.map(({ part }) => {
          const width = 100 * doubt[part];
          const x = from;
          from += width;
          return <rect key={part} class={`doubt-${part}`} x={x} y={0} width={width} height={10} />;
        })}
      </svg>
      <ul class="doubt-key">
        {DOUBT_PARTS.map(({ part, title, says }) => (
          <li key={part}>
            <svg class="doubt-swatch" viewBox="0 0 10 10" aria-hidden="true">
              <rect class={`doubt-${part}`} width={10} height={10} />
            </svg>
            <b>{percent(doubt[part])}</b> {title} <span class="aside">{says}</span>
          </li>
        ))}
      </ul>
    </>
  );
}

function WorthPicture({ plan: { worth_measuring: worth, currency } }: { readonly plan: Plan }): VNode {
  const most = Math.max(1e-9, ...worth.map(({ saves_cost }) => saves_cost));
  return (
    <>
      <h3>What measuring more is worth on this job</h3>
      <ul class="worth-list">
        {worth.map((each) => {
          const { what, saves } = worthWords(each, currency);
          return (
            <li key={each.what}>
              <span>{what}</span>
              <svg class="worth-bar" viewBox="0 0 100 10" preserveAspectRatio="none" aria-hidden="true">
                <rect
                  class="worth-saved"
                  y={2}
                  width={Math.max(0, (100 * each.saves_cost) / most)}
                  height={6}
                />
              </svg>
              <span class="aside">{saves}</span>
            </li>
          );
        })}
      </ul>
    </>
  );
}

function percent(share: number): string {
  return `${(100 * share).toFixed(0)} %`;
}
