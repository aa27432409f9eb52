import { formatStated, type HeatReport, type PreheatMethod, type Written } from '@furrow/engine';
import type { VNode } from 'preact';
import { SourceText } from '../../ui/source/index.ts';
import { useUnits } from '../../ui/theme/index.ts';

/** The preheat of the re-weld by each method side by side, why they differ, and what it means for gouging. */
export function PreheatPanel({ report }: { readonly report: Written<HeatReport> }): VNode {
  const units = useUnits();
  const { preheat, preheat_missing } = report;
  return (
    <section class="panel" aria-labelledby="preheat-title">
      <header class="panel-head">
        <h2 id="preheat-title">Preheat</h2>
        <p class="caption">for the re-weld, by method; the code that governs the job decides</p>
      </header>
      {preheat === null ? (
        <p>{preheat_missing}</p>
      ) : (
        <>
          <div class="method-cards">
            {preheat.methods.map((method) => (
              <Method key={method.method} method={method} />
            ))}
          </div>
          {preheat.differences.length === 0 ? null : (
            <>
              <h3>{preheat.methods.length > 1 ? 'Why they differ' : 'What is missing'}</h3>
              <ul class="bullet-list">
                {preheat.differences.map((difference) => (
                  <li key={difference}>{difference}</li>
                ))}
              </ul>
            </>
          )}
          <p class="gouging-preheat">
            <b>
              For gouging:{' '}
              {preheat.gouging.known
                ? formatStated(preheat.gouging.temperature_degC, 'degC', units)
                : 'not known'}
            </b>
            {preheat.gouging.stated ? ', as the job states. ' : '. '}
            <SourceText source={preheat.gouging.source} />{' '}
            {preheat.gouging.stated
              ? 'Clear the field “Preheat for gouging” to go back to that of the re-weld.'
              : 'Another one can be written into “Preheat for gouging”.'}
          </p>
        </>
      )}
    </section>
  );
}

function Method({ method }: { readonly method: Written<PreheatMethod> }): VNode {
  const units = useUnits();
  const { temperature_degC: temperature, inside_range, parts, remarks, source } = method;
  return (
    <article class="method-card">
      <h3>{method.method}</h3>
      <p class="method-value">
        {temperature === null ? 'cannot be used' : formatStated(temperature, 'degC', units)}
      </p>
      <p class={inside_range ? 'caption' : 'verdict-text'}>
        {inside_range ? 'inside what the method is for' : 'outside what the method is for'}
      </p>
      {parts.length === 0 ? null : (
        <dl class="method-parts">
          {parts.map(({ name, value, unit }) => (
            <div key={name}>
              <dt>{name}</dt>
              <dd>{formatStated(value, unit, units)}</dd>
            </div>
          ))}
        </dl>
      )}
      {remarks.map((remark) => (
        <p key={remark}>{remark}</p>
      ))}
      <p class="caption">
        <SourceText source={source} />
      </p>
    </article>
  );
}
