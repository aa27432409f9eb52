import { formatAmount, formatStated, formatStatedBand, type Plan } from '@furrow/engine';
import type { VNode } from 'preact';
import { ColumnHeads, ScrollTable } from '../../ui/table/index.ts';
import { useUnits } from '../../ui/theme/index.ts';

/** Every pass with its setting and what it takes off. */
export function PassTable({ plan }: { readonly plan: Plan }): VNode {
  const units = useUnits();
  return (
    <ScrollTable
      id="passes"
      title="Passes"
      note="in the order they are run; what each takes off holds for 90 in 100"
    >
      <ColumnHeads
        names={[
          'Pass',
          'Layer',
          'Offset',
          'Current',
          'Arc voltage',
          'Push angle',
          'Travel',
          'Takes off',
          'Dwell',
        ]}
      />
      <tbody>
        {plan.passes.map((pass) => (
          <tr key={pass.number}>
            <th scope="row">{pass.number}</th>
            <td>{pass.layer}</td>
            <td>{formatStated(pass.offset_mm, 'mm', units)}</td>
            <td>{formatStated(pass.current_A, 'A', units)}</td>
            <td>{formatStated(pass.arc_voltage_V, 'V', units)}</td>
            <td>{formatStated(pass.push_angle_deg, 'deg', units)}</td>
            <td>
              {formatStated(pass.travel_mm_per_min, 'mm/min', units)}
              {pass.set_by_gauge ? <span class="aside"> by gauge</span> : null}
            </td>
            <td>{formatStatedBand(pass.depth_mm.p05, pass.depth_mm.p95, 'mm', units)}</td>
            <td>{formatAmount(pass.dwell_s, 'time', units)}</td>
          </tr>
        ))}
      </tbody>
    </ScrollTable>
  );
}
