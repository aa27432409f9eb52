import type { KnowledgeReport } from '@furrow/engine';
import { SPREAD_LEVELS, spreadTable } from '@furrow/papers/blocks';
import type { VNode } from 'preact';

/** Greatest spread that the bars show [-]. */
const MOST = 0.4;

/** The four standard deviations, each with its interval and where it comes from. */
export function SpreadPanel({ report }: { readonly report: KnowledgeReport }): VNode {
  const levels = report.families[0]?.levels;
  const { rows } = spreadTable(report);
  return (
    <section class="panel" aria-labelledby="spreads-title">
      <header class="panel-head">
        <h2 id="spreads-title">Where depth scatters</h2>
        <p class="caption">standard deviation of depth, 5 to 95 % of what it may be</p>
      </header>
      {levels === undefined ? (
        <p class="empty">Nothing counts yet; plans rest on the published rows alone.</p>
      ) : (
        <dl class="spreads">
          {SPREAD_LEVELS.map(({ name, says }, row) => {
            const { p05, p50, p95 } = levels[name];
            const [title, spread, band, from] = rows[row]!;
            return (
              <div key={name}>
                <dt>
                  {title} <span class="aside">{says}</span>
                </dt>
                <dd>
                  <span class="spread-value">{spread}</span>
                  <svg class="spread-bar" viewBox="0 0 100 10" preserveAspectRatio="none" aria-hidden="true">
                    <rect class="spread-ground" x={0} y={4} width={100} height={2} />
                    <rect
                      class="spread-range"
                      x={place(p05)}
                      y={2}
                      width={Math.max(0.5, place(p95) - place(p05))}
                      height={6}
                    />
                    <rect class="spread-middle" x={place(p50) - 0.4} y={0} width={0.8} height={10} />
                  </svg>
                  <span class="spread-band">{band}</span>
                  <span class="aside spread-from">from {from}</span>
                </dd>
              </div>
            );
          })}
        </dl>
      )}
    </section>
  );
}

function place(share: number): number {
  return Math.min(100, (100 * share) / MOST);
}
