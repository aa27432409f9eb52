import type { HeatReport, Written } from '@furrow/engine';
import { balanceWords } from '@furrow/papers/words';
import type { VNode } from 'preact';
import { SourceText } from '../../ui/source/index.ts';

/** What the heat rests on, each with its source, and whether the energy adds up. */
export function RestsPanel({ report }: { readonly report: Written<HeatReport> }): VNode {
  const { assumptions, transformation, balance } = report;
  const per = (value: number): string => `${value.toFixed(0)} kJ/m`;
  return (
    <section class="panel" aria-labelledby="rests-title">
      <header class="panel-head">
        <h2 id="rests-title">What it rests on</h2>
      </header>
      <ul class="plain-list">
        {assumptions.map(({ topic, text, source }) => (
          <li key={`${topic} ${text}`}>
            <b>{topic}:</b> {text}{' '}
            <span class="caption">
              – <SourceText source={source} />
            </span>
          </li>
        ))}
        {transformation === null ? null : (
          <li>
            <b>Ac1 and Ac3:</b> {transformation.ac1_degC.toFixed(0)} and {transformation.ac3_degC.toFixed(0)}{' '}
            °C{' '}
            <span class="caption">
              – <SourceText source={transformation.source} />
            </span>
          </li>
        )}
        <li>
          <b>Energy:</b> {per(balance.given_kJ_per_m)} given, {per(balance.cut_out_kJ_per_m)} cut out with hot
          metal, {per(balance.lost_kJ_per_m)} lost at the faces,{' '}
          {balance.stored_kJ_per_m >= 0
            ? `${per(balance.stored_kJ_per_m)} still in the section`
            : `${per(-balance.stored_kJ_per_m)} of it out of the preheat`}
          ; {balanceWords(balance.error)}.
        </li>
      </ul>
    </section>
  );
}
