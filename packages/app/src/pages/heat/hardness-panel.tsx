import type { HeatReport, Written } from '@furrow/engine';
import type { VNode } from 'preact';
import { SourceText } from '../../ui/source/index.ts';
import { useUnits } from '../../ui/theme/index.ts';
import { rangeText } from './range-text.ts';

/** Hardness at the groove's surface: a band over several formulas, never one number. */
export function HardnessPanel({ report }: { readonly report: Written<HeatReport> }): VNode {
  const units = useUnits();
  const { hardness, hardness_missing } = report;
  return (
    <section class="panel" aria-labelledby="hardness-title">
      <header class="panel-head">
        <h2 id="hardness-title">Hardness</h2>
        {hardness === null ? null : (
          <p class="caption">
            {hardness.least_HV.toFixed(0)} to {hardness.most_HV.toFixed(0)} HV, the formulas’ own scatter
            included
          </p>
        )}
      </header>
      {hardness === null ? (
        <p>{hardness_missing}</p>
      ) : (
        <>
          <ul class="plain-list">
            {hardness.formulas.map(({ name, value_HV, source }) => (
              <li key={name}>
                <b>{rangeText(value_HV, 'HV', units)}</b> {name}; <SourceText source={source} />
              </li>
            ))}
            <li>
              <b>{hardness.skin_HV.toFixed(0)} HV</b> the carburised film, if it is left on
            </li>
          </ul>
          <p class="remark">{hardness.note}</p>
        </>
      )}
    </section>
  );
}
