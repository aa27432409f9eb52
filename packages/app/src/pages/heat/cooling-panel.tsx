import type { HeatReport, Written } from '@furrow/engine';
import type { VNode } from 'preact';
import { SourceText } from '../../ui/source/index.ts';
import { ColumnHeads, ScrollBox } from '../../ui/table/index.ts';
import { useUnits } from '../../ui/theme/index.ts';
import { rangeText } from './range-text.ts';

/** The cooling time by formula beside the field's own, and where they part company. */
export function CoolingPanel({ report }: { readonly report: Written<HeatReport> }): VNode {
  const units = useUnits();
  const { cooling_formulas: formulas, cooling_remarks: remarks, t85_s } = report;
  return (
    <section class="panel cooling" aria-labelledby="cooling-title">
      <header class="panel-head">
        <h2 id="cooling-title">Cooling time t8/5</h2>
        <p class="caption">from 800 to 500 °C at the groove’s surface</p>
      </header>
      <ScrollBox name="Cooling time, table">
        <table>
          <ColumnHeads names={['By', 't8/5', 'Range of the formula', 'Note and source']} />
          <tbody>
            <tr class="chosen">
              <th scope="row">field</th>
              <td>{t85_s === null ? 'does not pass both' : rangeText(t85_s, 's', units)}</td>
              <td>–</td>
              <td class="wrap">solved on this section</td>
            </tr>
            {formulas.map((formula) => (
              <tr key={formula.name}>
                <th scope="row">{formula.name}</th>
                <td>{formula.t85_s === null ? 'does not apply' : rangeText(formula.t85_s, 's', units)}</td>
                <td>{formula.inside_range ? 'inside' : 'outside'}</td>
                <td class="wrap">
                  {formula.note} <SourceText source={formula.source} />
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollBox>
      {remarks.map((remark) => (
        <p key={remark} class="remark">
          {remark}
        </p>
      ))}
    </section>
  );
}
