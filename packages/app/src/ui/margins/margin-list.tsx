import { formatStatedApart, type Limit, type Verdict } from '@furrow/engine';
import type { VNode } from 'preact';
import { SourceText } from '../source/index.ts';
import { Said, useUnits } from '../theme/index.ts';
import { MarginScale } from './margin-scale.tsx';
import { VerdictMark } from './verdict-mark.tsx';

/** The limits of a plan: demand against capacity, where the limit comes from, and the verdict. */
export function MarginList({ limits }: { readonly limits: readonly Limit[] }): VNode {
  return (
    <section class="panel margins" aria-labelledby="margins-title">
      <header class="panel-head">
        <h2 id="margins-title">Margins</h2>
        <p class="caption">{countText(limits)}</p>
      </header>
      <ul class="margin-list">
        {limits.map((limit) => (
          <Margin key={limit.id} limit={limit} />
        ))}
      </ul>
    </section>
  );
}

function Margin({ limit }: { readonly limit: Limit }): VNode {
  const units = useUnits();
  const { title, demand, capacity, unit, sense, verdict, source, remedy, sensitivity, hard } = limit;
  const [asked, given] = formatStatedApart(demand, capacity, unit, units);
  return (
    <li class={`margin margin-${verdict}`}>
      <h3>{title}</h3>
      <p class="margin-verdict">
        <VerdictMark verdict={verdict} />
        <strong>{verdict}</strong>
        {hard ? null : <span class="aside"> advice</span>}
      </p>
      <MarginScale limit={limit} />
      <p class="margin-numbers">
        <b>{asked}</b> {sense === 'most' ? 'of at most' : 'where at least'} <b>{given}</b>
        {sense === 'most' ? '' : ' is needed'}
      </p>
      <details class="margin-more">
        <summary>
          source{verdict === 'holds' ? '' : ' and remedy'}
          <span class="unseen"> of {title}</span>
        </summary>
        <p>
          <SourceText source={source} />
        </p>
        {verdict === 'holds' ? null : (
          <p>
            <Said sentence={remedy} />
          </p>
        )}
        {sensitivity.length === 0 ? null : (
          <p>
            1 % more{' '}
            {sensitivity
              .map(({ setting, demand_percent }) => `${setting}: ${signed(demand_percent)} %`)
              .join('; ')}
          </p>
        )}
      </details>
    </li>
  );
}

function signed(value: number): string {
  const text = Math.abs(value).toFixed(1);
  if (Number(text) === 0) return '0';
  return value < 0 ? `−${text}` : `+${text}`;
}

function countText(limits: readonly Limit[]): string {
  const count = (verdict: Verdict): number => limits.filter((limit) => limit.verdict === verdict).length;
  const parts = [
    [count('fails'), 'fail', 'fails'],
    [count('tight'), 'tight', 'tight'],
    [count('holds'), 'hold', 'holds'],
  ] as const;
  return parts
    .filter(([number]) => number > 0)
    .map(([number, many, one]) => `${number} ${number === 1 ? one : many}`)
    .join(', ');
}
