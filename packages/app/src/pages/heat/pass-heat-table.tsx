import { formatStated, type HeatReport, type Written } from '@furrow/engine';
import type { VNode } from 'preact';
import { ColumnHeads, ScrollTable } from '../../ui/table/index.ts';
import { useUnits } from '../../ui/theme/index.ts';
import { rangeText } from './range-text.ts';

const COLUMNS = [
  'Pass',
  'Comes by',
  'Arc',
  'Leaves with the melt',
  'Plate keeps',
  'Beside the groove before',
  'Waits',
];

/** Each pass as the plate feels it here: energy, temperature before it, and the wait that the job asks for. */
export function PassHeatTable({ report }: { readonly report: Written<HeatReport> }): VNode {
  const units = useUnits();
  return (
    <ScrollTable id="pass-heat" title="Passes here" note="energy per length of seam">
      <ColumnHeads names={COLUMNS} />
      <tbody>
        {report.passes.map((pass) => (
          <tr key={pass.number}>
            <th scope="row">{pass.number}</th>
            <td>{formatStated(pass.at_station_s.middle, 's', units)}</td>
            <td>{formatStated(pass.gross_kJ_per_mm, 'kJ/mm', units)}</td>
            <td>{formatStated(pass.with_melt_kJ_per_mm, 'kJ/mm', units)}</td>
            <td>{rangeText(pass.kept_kJ_per_mm, 'kJ/mm', units)}</td>
            <td>{rangeText(pass.before_degC, 'degC', units)}</td>
            <td>{pass.wait_s.most < 0.5 ? 'none' : rangeText(pass.wait_s, 's', units)}</td>
          </tr>
        ))}
      </tbody>
    </ScrollTable>
  );
}
